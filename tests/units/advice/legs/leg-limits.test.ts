/** What the legs carry by their nameplates, on paper. MODEL.md §21.1. */
import { describe, expect, it } from 'vitest';
import { withinLimits } from '../../../../packages/sim/src/advice/legs/leg-limits.ts';
import { panelOf } from '../../../../packages/sim/src/advice/legs/panel.ts';
import { tinySpec } from '../../step/tiny-house.ts';
import { scenarioOf } from '../read-written.ts';

/** A refrigerator that starts at 900 W and 300 W of steady load on L1, and units that start so much. */
function fitsTogether(surgeW: number, startingW = 900) {
  const inverter = { continuousW: 600, surgeW };
  const spec = tinySpec({
    units: [{ inverter }, { inverter }],
    circuits: {
      cold: {
        appliances: [{ kind: 'duty-cycled', runningW: 150, startingW, onMinutes: 15, dutyFraction: 0.4 }],
      },
      talk: { watts: 300, leg: 'L2' },
    },
  });
  return withinLimits(panelOf(scenarioOf(spec).alternatives[0]!.household))('11');
}

describe('a leg', () => {
  it('must start the largest of what runs by itself with all of that running: 150 + 300 + 750 W', () => {
    expect(fitsTogether(1200)).toBe(true);
    expect(fitsTogether(1199)).toBe(false);
  });

  it('need not start what starts no higher than it runs', () => {
    expect(fitsTogether(600, 150)).toBe(true);
  });
});
