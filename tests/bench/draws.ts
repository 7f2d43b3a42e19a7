/** (b) Making draws: the whole of it, and its stages. */
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace } from '../../packages/sim/src/trials/workspace.ts';
import { DRAW_STAGES, drawLaps } from './draw-laps.ts';
import { costPerDraw, inverterMinutesPerRun, type Figure } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { sum, timeParts, type Spread } from './timing.ts';
import { variant } from './variant.ts';

export async function measureDraws(session: Session): Promise<Figure[]> {
  const study = prepareStudy(variant(session.demo, { alternatives: 1 }), { seed: SEED });
  const work = createWorkspace(study);
  const draws = drawNumbers(session.effort.draws);
  const parts = draws.map((draw) => () => drawLaps(study, work, draw));
  const { laps, ...timing } = await timeParts(session, parts);
  const inverterMinutes = inverterMinutesPerRun(study) * draws.length;
  const figure = (name: string, ms: Spread) =>
    costPerDraw({ measurement: 'draws', name }, draws.length, { ...timing, inverterMinutes, ms });
  const stages = Object.keys(DRAW_STAGES);
  return [
    figure('making a draw, whole', sum(laps.slice(0, stages.length))),
    ...stages.map((stage, i) => figure(`  of it ${stage}`, laps[i]!)),
  ];
}
