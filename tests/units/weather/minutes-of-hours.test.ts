/** Hours made of files and minutes made of hours. MODEL.md, Weather, W4 and W6. */
import { describe, expect, it } from 'vitest';
import { fillAir } from '../../../packages/sim/src/weather/fill-air.ts';
import { withinBounds } from '../../../packages/sim/src/weather/flicker-bounds.ts';
import type { HourlyWeather } from '../../../packages/sim/src/weather/hourly-weather.ts';
import { createWeatherDraw } from '../../../packages/sim/src/weather/weather-draw.ts';
import { planYear } from '../../../packages/sim/src/weather/year-plan.ts';
import { yearSun } from '../../../packages/sim/src/weather/year-sun.ts';
import { YEAR } from './weather-case.ts';

describe('air', () => {
  it('goes in straight lines from hour to hour, each minute by its middle', () => {
    const hourly = {
      startEpochMinute: 600,
      dryBulbC: Float64Array.of(0, 6, 3),
      windMs: Float64Array.of(2, 2, 4),
    } as unknown as HourlyWeather;
    const out = createWeatherDraw(80);
    fillAir(hourly, 630, out);
    expect(out.dryBulbC[0]).toBeCloseTo((6 * 30.5) / 60, 6);
    expect(out.dryBulbC[29]).toBeCloseTo((6 * 59.5) / 60, 6);
    expect(out.dryBulbC[30]).toBeCloseTo(6 - (3 * 0.5) / 60, 6);
    expect([out.windMs[0], out.windMs[29]]).toEqual([2, 2]);
    expect(out.windMs[79]).toBeCloseTo(2 + (2 * 49.5) / 60, 6);
  });
});

describe('a minute', () => {
  /** Of an hour with one bright and one dark minute, the scale that is left of `scale`. */
  const scaleOf = (clearness: number, sinElevation: number, bright: number, dark: number, scale = 100) => {
    const minutes = new Float64Array(60);
    minutes[7] = bright;
    minutes[8] = dark;
    return withinBounds(scale, minutes, 0, new Float32Array(60).fill(1), 0, clearness, sinElevation);
  };
  const clearSky = (sinElevation: number) => (1098 / 1367) * Math.exp(-0.057 / sinElevation);

  it('is no clearer than 1.35 of a clear sky, a twentieth more than its hour where that is more', () => {
    expect(0.5 + scaleOf(0.5, 0.6, 1, -0.1)).toBeCloseTo(1.35 * clearSky(0.6), 9);
    expect(0.9 + scaleOf(0.9, 0.05, 1, -0.01)).toBeCloseTo(1.05 * 0.9, 9);
    expect(0.1 + scaleOf(0.1, 0.01, 1, -0.1)).toBeCloseTo(1.35 * clearSky(0.03), 9);
  });

  it('keeps a fifth of its hour, and the scale stays where there is room', () => {
    expect(0.5 - scaleOf(0.5, 0.6, 0.1, -1)).toBeCloseTo(0.1, 9);
    expect(scaleOf(0.5, 0.6, 1, -1, 0.2)).toBe(0.2);
  });
});

describe('a weather year', () => {
  it('has in dark hours the clearness and the diffuse share of the nearest hour with sun', () => {
    const site = { latitudeDeg: 40.7, longitudeDeg: -77.9 };
    const isEarly = (hour: number) => hour % 24 < 12;
    const { clearness, diffuseFraction } = planYear(
      {
        ...YEAR,
        ghiWm2: YEAR.ghiWm2.map((ghi, hour) => (isEarly(hour) ? ghi / 2 : ghi)),
        dhiWm2: YEAR.ghiWm2.map((ghi, hour) => (isEarly(hour) ? ghi / 8 : ghi / 2)),
      },
      site,
    );
    const { aboveWm2 } = yearSun(site, YEAR.utcOffsetHours);
    let unlike = 0;
    for (let day = 0; day < 365; day++) {
      const lit = Array.from({ length: 24 }, (_, h) => 24 * day + h).filter((hour) => aboveWm2[hour]! > 0);
      const [first, last] = [lit[0]!, lit.at(-1)!];
      expect([clearness[24 * day], diffuseFraction[24 * day]]).toEqual([
        clearness[first],
        diffuseFraction[first],
      ]);
      expect([clearness[24 * day + 23], diffuseFraction[24 * day + 23]]).toEqual([
        clearness[last],
        diffuseFraction[last],
      ]);
      if (clearness[first] !== clearness[last] && diffuseFraction[first] !== diffuseFraction[last]) unlike++;
    }
    expect(unlike).toBeGreaterThan(100);
  });

  it('gives what an hour above 1.1 cannot hold to the next hour in: days keep their energy', () => {
    const site = { latitudeDeg: 40.7, longitudeDeg: -77.9 };
    const ghiWm2 = YEAR.ghiWm2.map((ghi, hour) => ([7, 16].includes(hour % 24) ? ghi + 700 : ghi));
    const { clearness } = planYear({ ...YEAR, ghiWm2 }, site);
    const { aboveWm2 } = yearSun(site, YEAR.utcOffsetHours);
    // in summer noon has room for what is carried to it
    expect(Math.max(...clearness.subarray(24 * 80, 24 * 290))).toBeCloseTo(1.1, 9);
    for (let day = 80; day < 290; day++) {
      let [made, given] = [0, 0];
      for (let hour = 24 * day; hour < 24 * day + 24; hour++) {
        made += clearness[hour]! * aboveWm2[hour]!;
        given += ghiWm2[hour]!;
      }
      expect(Math.abs(made / given - 1)).toBeLessThan(1e-9);
    }
  });
});
