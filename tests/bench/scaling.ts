/** (e) What an inverter-minute costs against horizon, circuits and strategies: first alternative, all else as in the demo. */
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace } from '../../packages/sim/src/trials/workspace.ts';
import { DRAW_STAGES, drawLaps } from './draw-laps.ts';
import { costPerMinute, inverterMinutesPerDraw, type Figure, type Timed } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { sum, timeParts } from './timing.ts';
import { variant, type VariantOptions } from './variant.ts';

const VARIANTS: readonly { readonly name: string; readonly wanted: VariantOptions }[] = [
  ...[1, 7, 30, 90].map((horizonDays) => ({
    name: horizonDays === 1 ? '1 day' : `${horizonDays} days`,
    wanted: { horizonDays },
  })),
  ...[5, 20, 60].map((circuits) => ({ name: `${circuits} circuits`, wanted: { circuits } })),
  ...[1, 4, 12].map((strategies) => ({
    name: strategies === 1 ? '1 strategy' : `${strategies} strategies`,
    wanted: { strategies },
  })),
];
const STAGES = Object.keys(DRAW_STAGES).length;

interface Measured {
  readonly loop: Timed;
  readonly withDraw: Timed;
}

export async function measureScaling(session: Session): Promise<Figure[]> {
  const known = new Map<string, Measured>();
  const loops: Figure[] = [];
  const wholes: Figure[] = [];
  for (const { name, wanted } of VARIANTS) {
    const { loop, withDraw } = await measureVariant(session, wanted, known);
    loops.push(costPerMinute({ measurement: 'scaling', name: `minute loop, ${name}` }, loop));
    wholes.push(costPerMinute({ measurement: 'scaling', name: `with making the draw, ${name}` }, withDraw));
  }
  return [...loops, ...wholes];
}

/** The demo as it stands is on two of the axes; it is measured once. */
async function measureVariant(
  session: Session,
  wanted: VariantOptions,
  known: Map<string, Measured>,
): Promise<Measured> {
  const study = prepareStudy(variant(session.demo, { ...wanted, alternatives: 1 }), { seed: SEED });
  const before = known.get(study.scenarioHash);
  if (before) return before;
  const work = createWorkspace(study);
  const draws = drawNumbers(Math.ceil(session.effort.draws / 2));
  const parts = draws.map((draw) => () => drawLaps(study, work, draw));
  const { laps, ...timing } = await timeParts(session, parts);
  const timed = { ...timing, inverterMinutes: inverterMinutesPerDraw(study) * draws.length };
  const measured = { loop: { ...timed, ms: sum(laps.slice(STAGES)) }, withDraw: { ...timed, ms: sum(laps) } };
  known.set(study.scenarioHash, measured);
  return measured;
}
