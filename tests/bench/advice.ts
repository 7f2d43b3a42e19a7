/** (d) What advice asks of a draw, beside the whole outcomes of the same study. */
import { openJob, type DrawJob } from '../../packages/sim/src/index.ts';
import { plain, type Figure } from './figure.ts';
import { processorMs } from './processor-clock.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { sum, timeParts } from './timing.ts';
import { variant } from './variant.ts';

export async function measureAdvice(session: Session): Promise<Figure[]> {
  const scenario = variant(session.demo, { alternatives: 2 });
  const frugal = { alternative: 1, strategy: 3 };
  const jobs: Readonly<Record<string, DrawJob>> = {
    'study, whole outcomes of 8 runs': { job: 'study', scenario, seed: SEED },
    'study, runtimes alone of 8 runs': { job: 'study', scenario, seed: SEED, rows: 'runtimes' },
    'needs of 8 runs': { job: 'needs', scenario, seed: SEED },
    'matters, a row of indices': { job: 'matters', task: 'indices', scenario, seed: SEED, ...frugal },
  };
  const figures: Figure[] = [];
  for (const [name, job] of Object.entries(jobs)) figures.push(await measureJob(session, name, job));
  return figures;
}

async function measureJob(session: Session, name: string, job: DrawJob): Promise<Figure> {
  const run = openJob(job);
  const draws = drawNumbers(session.effort.draws);
  const timeDraw = (draw: number) => {
    const from = processorMs();
    run(draw, draw + 1);
    return [processorMs() - from];
  };
  const { laps, samples } = await timeParts(
    session,
    draws.map((draw) => () => timeDraw(draw)),
  );
  const { best, median } = sum(laps);
  const perDraw = { best: best / draws.length, median: median / draws.length };
  return plain({ measurement: 'advice', name }, 'ms/draw', perDraw, samples);
}
