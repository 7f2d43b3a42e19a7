/** Inputs that are figures of the units alone are tried on a world that is drawn once. */
import { describe, expect, it } from 'vitest';
import { loadScenario } from '../../../../packages/sim/src/node.ts';
import { prepareStudy } from '../../../../packages/sim/src/index.ts';
import { inputsOf } from '../../../../packages/sim/src/advice/matters/inputs.ts';
import { variationOf } from '../../../../packages/sim/src/advice/matters/uncertain-values.ts';
import { narrowedTo } from '../../../../packages/sim/src/advice/one-run.ts';
import { mixedStreams } from '../../../../packages/sim/src/chance/mixed-streams.ts';
import { streamsOf, type Streams } from '../../../../packages/sim/src/chance/streams.ts';
import { drawnRuntimeMinutes } from '../../../../packages/sim/src/trials/live-draw.ts';
import { varyStudy } from '../../../../packages/sim/src/trials/vary-study.ts';

const CHOICE = { alternative: 0, strategy: 0 };

describe.each([
  ['data/full-house.yaml', { alternative: 1, strategy: 3 }, 14],
  ['data/energy-back.yaml', { alternative: 1, strategy: 0 }, 60],
])('of %s', (file, choice, horizonDays) => {
  const demo = loadScenario(file).scenario;
  const scenario = { ...demo, outage: { ...demo.outage, horizonDays } };
  const unknowns = {
    ...scenario.unknowns,
    oneWayEfficiency: [0.9, 0.97],
    panelLossFraction: [0.05, 0.3],
    indoorFollowsFraction: [0.1, 0.9],
  } as const satisfies typeof scenario.unknowns;
  const study = prepareStudy({ ...narrowedTo(scenario, choice), unknowns }, { seed: 'kept' });
  const inputs = inputsOf({ ...scenario, unknowns }, choice.alternative);
  const minutes = (streams: Streams, world: 'drawn' | 'kept') =>
    drawnRuntimeMinutes(varyStudy(study, variationOf(unknowns, streams)), streams, CHOICE, study, world);

  it('health, idle watts, efficiency, panel losses and charge keep the world, rooms and the rest do not', () => {
    expect(inputs.filter(({ keepsWorld }) => keepsWorld).map(({ id }) => id)).toEqual([
      'charge',
      'health',
      'idle',
      'efficiency',
      'panel-loss',
    ]);
  });

  it('a runtime on the world of the draw before is the one of the same world drawn anew', () => {
    let differ = 0;
    for (let row = 0; row < 6; row++) {
      const base = streamsOf('kept', 2 * row);
      const other = streamsOf('kept', 2 * row + 1);
      for (const { numbers, keepsWorld } of inputs) {
        if (!keepsWorld) continue;
        const swapped = mixedStreams(base, [{ ...numbers, from: other }]);
        const anew = minutes(swapped, 'drawn');
        const before = minutes(base, 'drawn');
        expect(minutes(swapped, 'kept')).toBe(anew);
        if (anew !== before) differ++;
      }
    }
    expect(differ).toBeGreaterThan(3);
  });
});
