import { describe, expect, it } from 'vitest';
import { inputsOf } from '../../../../packages/sim/src/advice/matters/inputs.ts';
import { variationOf, VALUE_PURPOSES } from '../../../../packages/sim/src/advice/matters/uncertain-values.ts';
import type { Streams } from '../../../../packages/sim/src/chance/streams.ts';
import { tinyScenario } from '../../step/tiny-house.ts';

const { alternatives, site } = tinyScenario({
  circuits: { a: { watts: 1 } },
  units: [{ inverter: { idleW: 40 }, battery: { healthFraction: 0.98 } }],
});
const unit = alternatives[0]!.household.units[0]!;
const everyWhere =
  (place: number): Streams =>
  () =>
  () =>
    place;

describe('variationOf', () => {
  it('without ranges moves health by 0.05, 1 at most, and idle watts by a quarter, and nothing else', () => {
    const low = variationOf({}, everyWhere(0));
    const high = variationOf({}, everyWhere(1));
    expect(low.unit(unit).battery.healthFraction).toBeCloseTo(0.93, 12);
    expect(high.unit(unit).battery.healthFraction).toBe(1);
    expect([low.unit(unit).inverter.idleW, high.unit(unit).inverter.idleW]).toEqual([30, 50]);
    const { inverter, battery, ...rest } = high.unit(unit);
    const { inverter: itsInverter, battery: itsBattery, ...itsRest } = unit;
    expect(rest).toEqual(itsRest);
    expect({ ...inverter, idleW: 40 }).toEqual(itsInverter);
    expect({ ...battery, healthFraction: 0.98 }).toEqual(itsBattery);
    expect(high.site(site)).toEqual(site);
  });

  it('with ranges puts every value at its place in its own', () => {
    const unknowns = {
      healthFraction: [0.8, 0.9],
      idleW: [10, 30],
      oneWayEfficiency: [0.9, 1],
      panelLossFraction: [0.1, 0.3],
      indoorFollowsFraction: [0, 0.6],
    } satisfies Parameters<typeof variationOf>[0];
    const places: Record<string, number> = {
      [VALUE_PURPOSES.health]: 0,
      [VALUE_PURPOSES.idle]: 0.25,
      [VALUE_PURPOSES.efficiency]: 0.5,
      [VALUE_PURPOSES.panelLoss]: 0.75,
      [VALUE_PURPOSES.rooms]: 1,
    };
    const varied = variationOf(unknowns, (purpose) => () => places[purpose]!);
    const { inverter, battery, solar } = varied.unit(unit);
    expect(battery.healthFraction).toBe(0.8);
    expect(inverter.idleW).toBe(15);
    expect(battery.module.chargeEfficiency).toBe(0.95);
    expect(battery.module.dischargeEfficiency).toBe(0.95);
    expect(solar!.arrays[0]!.lossFraction).toBeCloseTo(0.25, 12);
    expect(varied.site(site).indoorFollowsFraction).toBe(0.6);
  });
});

describe('inputsOf(scenario, alternative)', () => {
  it('says what each value at its low and its high means, with its unit', () => {
    const scenario = {
      ...tinyScenario({
        circuits: { a: { watts: 1 } },
        units: [{ inverter: { idleW: 40 }, battery: { healthFraction: 0.95 } }],
      }),
      unknowns: {
        oneWayEfficiency: [0.94, 0.975] as [number, number],
        indoorFollowsFraction: [0, 0.6] as [number, number],
      },
    };
    const said = inputsOf(scenario, 0)
      .filter(({ isValue }) => isValue)
      .map(({ id, ends }) => [id, ends.low, ends.high].join(': ').replaceAll('\u00a0', ' '));
    expect(said).toEqual([
      'health: 90 % of nameplate left: 100 %',
      'idle: 30 W: 50 W',
      'efficiency: 94 % comes through: 97.5 %',
      'rooms: 0 % of the way to the outdoor mean: 60 %',
    ]);
  });
});
