/** Fuel lines, derating and recharge times on paper; outside sources are in tests/published/fuel.test.ts. */
import { describe, expect, it } from 'vitest';
import { deratedShare, heatFactor, heightFactor } from '../../../packages/sim/src/power/engine-derating.ts';
import {
  defaultFuelLine,
  fuelDays,
  fuelLineOf,
  fuelUsedL,
} from '../../../packages/sim/src/power/fuel-use.ts';
import { rechargeHours } from '../../../packages/sim/src/power/recharge-time.ts';
import { sources } from '../../../packages/sim/src/scenario/schema-sources.ts';

const generator = (given: object) =>
  sources.parse({ generator: { ratedW: 4000, volts: 240, tankL: 15, ...given } }).generator!;

describe('a fuel line', () => {
  it('goes through what the label says at half and full load', () => {
    const line = fuelLineOf(generator({ fuelUse: { halfLoadLPerHour: 1.2, fullLoadLPerHour: 1.8 } }));
    expect(line.noLoadLPerHour).toBeCloseTo(0.6, 12);
    expect(fuelUsedL(line, 1, 2)).toBeCloseTo(1.2, 12);
    expect(fuelUsedL(line, 1, 4)).toBeCloseTo(1.8, 12);
  });

  it.each(['gasoline', 'diesel', 'propane'] as const)(
    'of %s burns less a kWh the more it carries',
    (fuel) => {
      const line = defaultFuelLine(fuel, 4000);
      const perKWh = [1, 2, 3, 4].map((kW) => fuelUsedL(line, 1, kW) / kW);
      expect([...perKWh].sort((a, b) => b - a)).toEqual(perKWh);
      expect(line).toEqual(fuelLineOf(generator({ fuel })));
    },
  );

  it('grows with the engine: an idling large one burns more', () => {
    expect(defaultFuelLine('gasoline', 8000).noLoadLPerHour).toBeCloseTo(
      2 * defaultFuelLine('gasoline', 4000).noLoadLPerHour,
      12,
    );
  });

  it('tells how many days of so many hours the fuel lasts', () => {
    const line = { noLoadLPerHour: 0.6, litresPerKWh: 0.3 };
    expect(fuelDays(line, 36, 4, 1000)).toBeCloseTo(36 / (4 * 0.9), 12);
    expect(fuelDays(line, 36, 0, 1000)).toBe(Infinity);
  });
});

describe('derating', () => {
  it('leaves the first 500 ft and a mild day alone, and never goes below nothing', () => {
    expect(heightFactor(152)).toBe(1);
    expect(heightFactor(-100)).toBe(1);
    expect(heatFactor(29.4, 'gasoline')).toBeCloseTo(1, 3);
    expect(heightFactor(20_000)).toBe(0);
  });

  it('multiplies height and heat, and is left out where the rating is that of the place', () => {
    const both = deratedShare({ derating: 'engine', fuel: 'propane' }, 1500, 40);
    expect(both).toBeCloseTo(heightFactor(1500) * heatFactor(40, 'propane'), 12);
    expect(deratedShare({ derating: 'none', fuel: 'diesel' }, 1500, 40)).toBe(1);
  });
});

describe('recharge time', () => {
  const bank = {
    capacityWh: 4800,
    storedWh: 480,
    chargerW: 1500,
    chargerEfficiency: 0.93,
    maxChargeW: 2400,
    chargeEfficiency: 0.97,
  };
  it('is what is missing over what the charger stores an hour', () => {
    expect(rechargeHours(bank)).toBeCloseTo(4320 / (1500 * 0.93 * 0.97), 12);
    expect(rechargeHours({ ...bank, maxChargeW: 1000 }, 0.8)).toBeCloseTo(3360 / 970, 12);
  });
  it('is nothing for a bank that is there already and for ever without a charger', () => {
    expect(rechargeHours({ ...bank, storedWh: 4800 })).toBe(0);
    expect(rechargeHours({ ...bank, chargerW: 0 })).toBe(Infinity);
  });
});
