/** The demo of energy coming back stands on the demo pair: whoever changes the one must change the other. */
import { describe, expect, it } from 'vitest';
import { loadScenario } from '../../../packages/sim/src/node.ts';
import { fileURLToPath } from 'node:url';
import type { HouseholdSpec } from '../../../packages/sim/src/index.ts';

const household = (name: string, id: string): HouseholdSpec => {
  const path = fileURLToPath(new URL(`../../../data/${name}.yaml`, import.meta.url));
  return loadScenario(path).scenario.alternatives.find((a) => a.id === id)!.household;
};

/** What the minute loop reads of a unit: not how it is wired. */
const unitAsLived = ({ id, leg, inverter, battery, solar, charger }: HouseholdSpec['units'][number]) => ({
  id,
  leg,
  inverter,
  battery,
  inputLimitW: solar?.inputLimitW,
  arrays: solar?.arrays.map(({ peakW, tiltDeg, azimuthDeg }) => ({ peakW, tiltDeg, azimuthDeg })),
  chargerW: charger?.maxW,
});

describe('data/energy-back.yaml', () => {
  const pair = household('full-house', 'two-modules');
  const back = household('energy-back', 'two-modules');

  it('has the units of the demo pair with two modules each', () => {
    expect(back.units.map(unitAsLived)).toEqual(pair.units.map(unitAsLived));
    expect(back.pair).toEqual(pair.pair);
  });

  it('has its circuits, its people and two of its strategies', () => {
    const asLived = ({ circuits }: HouseholdSpec) =>
      circuits.map(({ id, leg, tier, graceMinutes, need, appliances }) => ({
        id,
        leg,
        tier,
        graceMinutes,
        need,
        appliances,
      }));
    expect(asLived(back)).toEqual(asLived(pair));
    expect([back.person, back.usage]).toEqual([pair.person, pair.usage]);
    const ids = back.strategies.map((s) => s.id);
    expect(back.strategies).toEqual(pair.strategies.filter((s) => ids.includes(s.id)));
    expect(ids).toEqual(['tiers-by-hand', 'frugal']);
  });
});
