/** (a) The minute loop alone, on draws made just before, as a study meets them. */
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace } from '../../packages/sim/src/trials/workspace.ts';
import { DRAW_STAGES, drawLaps } from './draw-laps.ts';
import { inverterMinutesPerDraw, speed, type Figure } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { sum, timeParts } from './timing.ts';
import { variant } from './variant.ts';

const STAGES = Object.keys(DRAW_STAGES).length;

export async function measureKernel(session: Session): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const alternatives of [1, 2]) {
    const study = prepareStudy(variant(session.demo, { alternatives }), { seed: SEED });
    const work = createWorkspace(study);
    const draws = drawNumbers(session.effort.draws);
    const parts = draws.map((draw) => () => drawLaps(study, work, draw));
    const { laps, ...timing } = await timeParts(session, parts);
    const name = `minute loop, ${alternatives} × ${study.strategies.length}`;
    const inverterMinutes = inverterMinutesPerDraw(study) * draws.length;
    figures.push(
      speed({ measurement: 'kernel', name }, { ...timing, inverterMinutes, ms: sum(laps.slice(STAGES)) }),
    );
  }
  return figures;
}
