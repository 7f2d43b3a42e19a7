/** (b) Making draws: the whole of it, and its stages. */
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace, fillDraw } from '../../packages/sim/src/trials/workspace.ts';
import { STAGE_NAMES, timeStage } from './draw-stages.ts';
import { cost, type Figure } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { timeParts, type Part } from './timing.ts';
import { variant } from './variant.ts';

export async function measureDraws(session: Session): Promise<Figure[]> {
  const study = prepareStudy(variant(session.demo, { alternatives: 1 }), { seed: SEED });
  const work = createWorkspace(study);
  const draws = drawNumbers(session.effort.draws);
  const covered = study.unitIds.length * study.minutes * draws.length;
  const measure = async (name: string, part: (draw: number) => ReturnType<Part>) =>
    cost(
      { measurement: 'draws', name },
      draws.length,
      covered,
      await timeParts(
        session,
        draws.map((d) => () => part(d)),
      ),
    );

  const figures = [await measure('making a draw, whole', (draw) => timeWhole(draw))];
  for (const stage of STAGE_NAMES) {
    figures.push(
      await measure(`  of it ${stage}`, (draw) => timeStage(study, work, streamsOf(SEED, draw), stage)),
    );
  }
  return figures;

  function timeWhole(draw: number): number {
    const from = performance.now();
    fillDraw(study, work, streamsOf(SEED, draw));
    return performance.now() - from;
  }
}
