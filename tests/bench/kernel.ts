/** (a) The minute loop alone, on draws that are made already. */
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace } from '../../packages/sim/src/trials/workspace.ts';
import { inverterMinutesPerDraw, speed, type Figure } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { stepRuns, timeLoop } from './step-runs.ts';
import { timeParts } from './timing.ts';
import { variant } from './variant.ts';

export async function measureKernel(session: Session): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const alternatives of [1, 2]) {
    const study = prepareStudy(variant(session.demo, { alternatives }), { seed: SEED });
    const work = createWorkspace(study);
    const draws = drawNumbers(session.effort.draws);
    const timing = await timeParts(
      session,
      draws.map((draw) => () => timeLoop(study, work, draw)),
    );
    const name = `minute loop, ${alternatives} × ${study.strategies.length}`;
    figures.push(
      speed({ measurement: 'kernel', name }, inverterMinutesPerDraw(study) * draws.length, timing),
    );
    if (!(stepRuns(study, work) > 0)) throw new Error('the loop measured wrote no outcome');
  }
  return figures;
}
