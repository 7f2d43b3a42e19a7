/** The empty, the edge and the absurd case of the small sky functions. */
import { describe, expect, it } from 'vitest';
import { fullTurn, halfTurn } from '../../../packages/sim/src/sky/angles.ts';
import { clearSkyGhiWm2 } from '../../../packages/sim/src/sky/clear-sky.ts';
import { hourlyDiffuseFraction } from '../../../packages/sim/src/sky/diffuse-split.ts';
import { refractionDeg, standardPressureHPa } from '../../../packages/sim/src/sky/refraction.ts';
import { sunTimes } from '../../published/sky/sunrise.ts';

it('fullTurn and halfTurn wrap into [0, 360) and [-180, 180)', () => {
  expect([-360, -90, 0, 359, 360, 725, -1e-20].map(fullTurn)).toEqual([0, 270, 0, 359, 0, 5, 0]);
  expect([-180, 180, 190, 540, -170].map(halfTurn)).toEqual([-180, -180, -170, -180, -170]);
});

it('clearSkyGhiWm2 is 0 with the sun at or below the horizon', () => {
  expect([0, -0.3].map(clearSkyGhiWm2)).toEqual([0, 0]);
  expect(clearSkyGhiWm2(1e-6)).toBe(0);
});

it('the diffuse fraction stays within 0 and 1 for any clearness, and all light is diffuse at none', () => {
  for (let k = -0.5; k < 1.5; k += 0.01) {
    expect(hourlyDiffuseFraction(k)).toBeGreaterThan(0);
    expect(hourlyDiffuseFraction(k)).toBeLessThanOrEqual(1);
  }
  expect(hourlyDiffuseFraction(0)).toBe(1);
});

it('refractionDeg is about 0.48° at the horizon at sea level, falls upwards, is 0 once the sun is wholly down', () => {
  expect(refractionDeg(0, 1010, 10)).toBeCloseTo(0.483, 3);
  expect(refractionDeg(-0.84, 1010, 10)).toBe(0);
  const rising = [0, 1, 5, 20, 45, 89].map((elevation) => refractionDeg(elevation, 1010, 10));
  expect([...rising].sort((a, b) => b - a)).toEqual(rising);
});

it('standardPressureHPa is 1013.25 at sea level and 540 at 5,000 m (ISO 2533 table)', () => {
  expect(standardPressureHPa(0)).toBe(1013.25);
  expect(Math.abs(standardPressureHPa(5000) - 540.2)).toBeLessThan(0.2);
});

describe('sunTimes', () => {
  const tromso = { latitudeDeg: 69.65, longitudeDeg: 18.95 };
  const solarMidnight2026 = (day: number): number => Date.UTC(2026, 0, 1 + day) / 60_000 - 4 * 18.95;

  it('through a year at 69.65° N meets all five kinds of day, each with the times it promises', () => {
    const met = new Map<string, number>();
    for (let day = 0; day < 365; day++) {
      const from = solarMidnight2026(day);
      const { sunriseEpochMinute: up, sunsetEpochMinute: down, what } = sunTimes(tromso, from);
      met.set(what, (met.get(what) ?? 0) + 1);
      expect(up !== null).toBe(what === 'rises and sets' || what === 'rises only');
      expect(down !== null).toBe(what === 'rises and sets' || what === 'sets only');
      for (const time of [up, down]) {
        if (time === null) continue;
        expect(time).toBeGreaterThanOrEqual(from);
        expect(time).toBeLessThanOrEqual(from + 1440);
      }
    }
    expect([...met.values()].reduce((a, b) => a + b)).toBe(365);
    expect(met.get('up throughout')).toBeGreaterThan(60);
    expect(met.get('down throughout')).toBeGreaterThan(40);
    expect([...met.keys()].sort()).toEqual(
      ['down throughout', 'rises and sets', 'rises only', 'sets only', 'up throughout'].sort(),
    );
  });

  it('takes spans shorter than a day: a night holds nothing', () => {
    const midnight = Date.UTC(2026, 5, 21, 4) / 60_000; // Boston
    expect(sunTimes({ latitudeDeg: 42.4, longitudeDeg: -71 }, midnight, 120).what).toBe('down throughout');
    expect(sunTimes({ latitudeDeg: 42.4, longitudeDeg: -71 }, midnight, 720).what).toBe('rises only');
  });
});
