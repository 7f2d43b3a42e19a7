/** Hours from cut-off to full on each source, on paper. MODEL.md E6. */
import { describe, expect, it } from 'vitest';
import { rechargeFromCutOff } from '../../../packages/sim/src/step/recharge.ts';
import { tinyScenario, type TinyHouse, type TinyUnit } from './tiny-house.ts';

const BANK = { battery: { cutOffFraction: 0.1, restartFraction: 0.2 }, module: { chargeEfficiency: 0.97 } };
const EAST: TinyUnit = {
  ...BANK,
  capacityWh: 5000,
  inverter: { idleW: 50 },
  charger: { maxW: 1500, efficiency: 0.93 },
};
const WEST: TinyUnit = {
  ...BANK,
  capacityWh: 4000,
  inverter: { idleW: 20 },
  charger: { maxW: 900, efficiency: 0.9 },
};

function hours(sources: TinyHouse['sources'], units: readonly TinyUnit[] = [EAST, WEST]) {
  return rechargeFromCutOff(
    tinyScenario({ units, circuits: { a: { watts: 1 } }, sources }).alternatives[0]!.household,
  );
}

const generator = (ratedW: number, volts: 120 | 240) => ({
  ratedW,
  volts,
  tankL: 10,
  run: { by: 'charge' as const },
});

describe('hours from cut-off to full', () => {
  it('on the grid are those of the slower bank, each charger at its most', () => {
    const { gridHours, generatorHours, vehicleHours } = hours({ grid: { onHours: 4, offHours: 8 } });
    expect(gridHours).toBeCloseTo(Math.max(4500 / (1500 * 0.93 * 0.97), 3600 / (900 * 0.9 * 0.97)), 9);
    expect([generatorHours, vehicleHours]).toEqual([null, null]);
  });

  it('on a 240 V generator are those of half its watts for each, less what the idling inverter takes', () => {
    // half of 1,400 W: 650 W beside the east inverter's 50, 680 W beside the west one's 20
    const { generatorHours } = hours({ generator: generator(1400, 240) });
    expect(generatorHours).toBeCloseTo(Math.max(4500 / (650 * 0.93 * 0.97), 3600 / (680 * 0.9 * 0.97)), 9);
  });

  it('on a 120 V generator are those of all its watts where it feeds one unit', () => {
    const { generatorHours } = hours({ generator: { ...generator(1000, 120), feeds: ['east'] } });
    expect(generatorHours).toBeCloseTo(4500 / (950 * 0.93 * 0.97), 9);
  });

  it('on a 120 V generator that feeds both units are those of half its watts for each', () => {
    const { generatorHours } = hours({ generator: generator(1000, 120) });
    expect(generatorHours).toBeCloseTo(Math.max(4500 / (450 * 0.93 * 0.97), 3600 / (480 * 0.9 * 0.97)), 9);
  });

  it('on a vehicle are those of its outlet, less what is lost on the way', () => {
    const { vehicleHours } = hours({ vehicle: { unit: 'west', outletW: 300, efficiency: 0.85 } });
    expect(vehicleHours).toBeCloseTo(3600 / (300 * 0.85 * 0.97), 9);
  });

  it('are not told where no unit has a charger', () => {
    const bare = [EAST, WEST].map((unit) => ({ ...unit, charger: undefined }));
    expect(hours({ grid: { onHours: 4, offHours: 8 } }, bare).gridHours).toBeNull();
  });
});
