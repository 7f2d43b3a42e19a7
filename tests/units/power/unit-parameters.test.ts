import { describe, expect, it } from 'vitest';
import {
  bankCapacityWh,
  keptPerHour,
  unitParameters,
} from '../../../packages/sim/src/power/unit-parameters.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const unit = tinyScenario({
  circuits: { a: { watts: 1 } },
  units: [
    {
      capacityWh: 3200,
      battery: { modules: 3, healthFraction: 0.9, cutOffFraction: 0.1, restartFraction: 0.25 },
      module: { maxDischargeW: 1500, selfDischargePerMonthFraction: 0.03 },
    },
  ],
}).alternatives[0]!.household.units[0]!;

describe('a unit as numbers', () => {
  it('has its modules’ energy and power together, the energy as far as their health goes', () => {
    expect(bankCapacityWh(unit.battery)).toBeCloseTo(3 * 3200 * 0.9, 9);
    const parameters = unitParameters(unit);
    expect(parameters.capacityWmin).toBeCloseTo(3 * 3200 * 0.9 * 60, 6);
    expect(parameters.dischargeLimitW).toBe(4500);
    expect(parameters.restartWmin).toBeCloseTo(0.25 * 3 * 3200 * 0.9 * 60, 6);
    expect(Object.values(parameters).every(Number.isFinite)).toBe(true);
  });

  it('loses its monthly self-discharge in the hours of a mean month: 30.4375 days', () => {
    expect(1 - keptPerHour(0.03)).toBeCloseTo(0.03 / (30.4375 * 24), 15);
    expect(unitParameters(unit).keptPerHour).toBe(keptPerHour(0.03));
    expect(keptPerHour(0)).toBe(1);
  });
});
