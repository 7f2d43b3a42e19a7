/** (e) What an inverter-minute costs against horizon, circuits and strategies. First alternative, all else as in the demo. */
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { createWorkspace, fillDraw } from '../../packages/sim/src/trials/workspace.ts';
import { costPerMinute, inverterMinutesPerDraw, type Figure } from './figure.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { stepRuns, timeLoop } from './step-runs.ts';
import { timeParts, type Timing } from './timing.ts';
import { variant, type VariantOptions } from './variant.ts';

const AXES: readonly { readonly name: string; readonly options: readonly VariantOptions[] }[] = [
  { name: 'days', options: [1, 7, 30, 90].map((horizonDays) => ({ horizonDays })) },
  { name: 'circuits', options: [5, 20, 60].map((circuits) => ({ circuits })) },
  { name: 'strategies', options: [1, 4, 12].map((strategies) => ({ strategies })) },
];

interface Measured {
  readonly loop: Timing;
  readonly whole: Timing;
  readonly inverterMinutes: number;
}

export async function measureScaling(session: Session): Promise<Figure[]> {
  const loops: Figure[] = [];
  const wholes: Figure[] = [];
  for (const { name, options } of AXES) {
    for (const wanted of options) {
      const { loop, whole, inverterMinutes } = await measureVariant(session, wanted);
      const label = (what: string) => ({
        measurement: 'scaling',
        name: `${what}, ${Object.values(wanted)[0]} ${name}`,
      });
      loops.push(costPerMinute(label('minute loop'), inverterMinutes, loop));
      wholes.push(costPerMinute(label('with its draw'), inverterMinutes, whole));
    }
  }
  return [...loops, ...wholes];
}

async function measureVariant(session: Session, wanted: VariantOptions): Promise<Measured> {
  const study = prepareStudy(variant(session.demo, { ...wanted, alternatives: 1 }), { seed: SEED });
  const work = createWorkspace(study);
  const draws = drawNumbers(Math.ceil(session.effort.draws / 2));
  const timeWhole = (draw: number) => {
    const from = performance.now();
    fillDraw(study, work, streamsOf(SEED, draw));
    stepRuns(study, work);
    return performance.now() - from;
  };
  return {
    loop: await timeParts(
      session,
      draws.map((draw) => () => timeLoop(study, work, draw)),
    ),
    whole: await timeParts(
      session,
      draws.map((draw) => () => timeWhole(draw)),
    ),
    inverterMinutes: inverterMinutesPerDraw(study) * draws.length,
  };
}
