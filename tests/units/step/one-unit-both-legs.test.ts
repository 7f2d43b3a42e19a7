/** One unit through an inlet that joins both sides of the panel. MODEL.md §5.1. */
import { describe, expect, it } from 'vitest';
import { askHere } from '../../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../../packages/sim/src/index.ts';
import { darkSpec, scenarioOf } from '../advice/read-written.ts';
import type { TinyHouse } from './tiny-house.ts';

async function rowOf(spec: ScenarioSpec): Promise<Readonly<Record<string, number>>> {
  const { rows } = await askHere(scenarioOf(spec), { seed: 'both', draws: 1 });
  return Object.fromEntries(Object.entries(rows.columns).map(([name, values]) => [name, values[0]!]));
}

/** The house with its one unit on `leg`. */
function onLeg(house: TinyHouse, leg: 'L1' | 'both'): ScenarioSpec {
  const spec = darkSpec(house);
  return { ...spec, units: spec.units.map((unit) => ({ ...unit, leg })) };
}

const house: TinyHouse = {
  circuits: { a: { watts: 300 }, b: { watts: 200, leg: 'L2' } },
  units: [{ capacityWh: 6000 }],
  hours: 48,
};

describe('a unit on both legs', () => {
  it('carries the circuits of either side: 6 kWh at 300 W and 200 W are 12 hours', async () => {
    const row = await rowOf(onLeg(house, 'both'));
    expect(row['runtimeMinutes']).toBeCloseTo(720, 6);
    expect(row['endCause']).toBe(1);
  });

  it('lasts as long as on one leg with everything there', async () => {
    const one = darkSpec({ ...house, circuits: { a: { watts: 300 }, b: { watts: 200 } } });
    expect((await rowOf(onLeg(house, 'both')))['runtimeMinutes']).toBe((await rowOf(one))['runtimeMinutes']);
  });

  it('trips on the sum of both sides', async () => {
    const weak = { ...house, units: [{ capacityWh: 6000, inverter: { continuousW: 450, surgeW: 900 } }] };
    const row = await rowOf(onLeg(weak, 'both'));
    expect(row['trips']).toBeGreaterThan(0);
    expect(row['endCause']).toBe(2);
  });

  it('gives 240 V circuits nothing, from the first minute', async () => {
    const circuits = { ...house.circuits, pump: { watts: 1000, leg: 'both' as const, tier: 2 } };
    const row = await rowOf(onLeg({ ...house, circuits }, 'both'));
    expect(row['runtimeMinutes']).toBeCloseTo(720, 6);
    expect(row['first240LossMinute']).toBe(0);
    expect(row['servedTier2Wh']).toBe(0);
    expect(row['unservedTier2Wh']).toBeCloseTo(48_000, 6);
  });

  it('reads its own bank for the circuits of both legs', async () => {
    const rules = [
      {
        by: 'charge' as const,
        circuits: { tiers: [2] },
        dropBelowFraction: 0.5,
        restoreAboveFraction: 0.9,
        reads: 'own' as const,
      },
    ];
    const circuits = { a: { watts: 300 }, b: { watts: 300, leg: 'L2' as const, tier: 2 } };
    const row = await rowOf(onLeg({ ...house, circuits, rules }, 'both'));
    // 3 kWh at 600 W are 5 hours, 3 kWh at 300 W are 10.
    expect(row['runtimeMinutes']).toBeGreaterThan(898);
    expect(row['runtimeMinutes']).toBeLessThanOrEqual(900);
    expect(row['servedTier2Wh']! / 300).toBeCloseTo(5, 1);
  });
});
