import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { drawHourlyWeather } from '../../../packages/sim/src/weather/draw-weather.ts';
import type { HourlyWeather } from '../../../packages/sim/src/weather/hourly-weather.ts';
import { readWeatherYear } from '../../../packages/sim/src/weather/read-weather-year.ts';
import { weatherYearFile, withoutWeatherYear } from '../../weather-years.ts';
import { weatherCase, YEAR } from './weather-case.ts';
import type { CaseOptions } from './weather-case.ts';

/** Each hour tells its day of the year by its wind. */
const NUMBERED = { ...YEAR, windMs: YEAR.windMs.map((_, hour) => Math.floor(hour / 24)) };

/** @returns a drawer of hours: the plan is made once. */
function drawerOf(options: CaseOptions): (startUtc: string, days: number, index: number) => HourlyWeather {
  const { plan } = weatherCase({ source: { kind: 'year', year: NUMBERED }, ...options });
  return (startUtc, days, index) =>
    drawHourlyWeather(plan, Date.parse(startUtc) / 60_000, days * 1440, streamsOf('resample', index));
}

const sourceDays = (hourly: HourlyWeather): number[] =>
  Array.from({ length: hourly.days }, (_, day) => hourly.windMs[24 * day + 12]!);

describe('resampleYear', () => {
  it('plays the file itself with a window of 0 days', () => {
    const hourly = drawerOf({ windowDays: 0 })('2026-12-30T05:00Z', 4, 1);
    expect(sourceDays(hourly)).toEqual([363, 364, 0, 1]);
    expect(hourly.dryBulbC[0]).toBe(YEAR.dryBulbC[24 * 363 - 1]); // the end of the hour before
    expect([...hourly.dryBulbC.slice(1, 25)]).toEqual(YEAR.dryBulbC.slice(24 * 363, 24 * 364));
  });

  it('takes every day from within the window around its date, around the turn of the year too', () => {
    const drawn = drawerOf({ windowDays: 10, blockDays: 3 });
    for (let draw = 0; draw < 40; draw++) {
      sourceDays(drawn('2026-12-20T05:00Z', 30, draw)).forEach((source, day) => {
        const apart = Math.abs(((source - (353 + day) + 547) % 365) - 182);
        expect(apart).toBeLessThanOrEqual(10);
      });
    }
  });

  it('takes runs of days together whose mean length is blockDays', () => {
    const drawn = drawerOf({ windowDays: 60, blockDays: 5 });
    let joins = 0;
    let days = 0;
    for (let draw = 0; draw < 60; draw++) {
      const sources = sourceDays(drawn('2026-03-01T05:00Z', 60, draw));
      joins += sources.filter((source, day) => day > 0 && source !== sources[day - 1]! + 1).length;
      days += sources.length - 1;
    }
    // a run ends with chance 1/5 and then goes on by chance with 1/121: 0.198 ± 0.0067 standard error
    expect(joins / days).toBeGreaterThan(0.198 - 0.03);
    expect(joins / days).toBeLessThan(0.198 + 0.03);
  });

  it('begins a storm among the dullest days of the window', () => {
    const drawn = drawerOf({ windowDays: 15, stormDullestFraction: 0.2 });
    for (let draw = 0; draw < 30; draw++) {
      const morning = sourceDays(drawn('2026-05-10T12:00Z', 3, draw));
      expect(morning[0]! % 3).toBe(0); // every third day of the file is dull
      const night = sourceDays(drawn('2026-05-11T03:30Z', 3, draw)); // 22:30 standard time on the 10th
      expect(night[1]! % 3).toBe(0);
      expect(night[1]).toBe(night[0]! + 1);
    }
  });

  it('lets the step in dry-bulb between two runs out over six hours', () => {
    const drawn = drawerOf({ windowDays: 90, blockDays: 1 });
    let worst = 0;
    for (let draw = 0; draw < 20; draw++) {
      const { dryBulbC, days } = drawn('2026-07-01T05:00Z', 20, draw);
      for (let end = 7; end <= 24 * days; end++) {
        if (end % 24 > 0 && end % 24 < 7) continue; // the six hours after midnight take up the step
        worst = Math.max(worst, Math.abs(dryBulbC[end]! - dryBulbC[end - 1]! - 0.25));
      }
    }
    expect(worst).toBeLessThan(1e-9);
  });

  it('serves 29 February from the 28th', () => {
    expect(sourceDays(drawerOf({ windowDays: 0 })('2028-02-27T05:00Z', 4, 1))).toEqual([57, 58, 58, 59]);
  });
});

describe('a real weather year kept outside the repository', () => {
  const name = 'boston-725090-tmy3.csv';
  const path = weatherYearFile(name);

  it('comes back hour by hour from its own minutes', ({ skip }) => {
    skip(path === undefined, withoutWeatherYear(name));
    const { year } = readWeatherYear(readFileSync(path!, 'utf8'), 'boston');
    const made = weatherCase({ source: { kind: 'year', year }, windowDays: 0, latitudeDeg: 42.367 });
    const { ghiWm2, dhiWm2 } = made.draw('2026-01-01T05:00Z', 365 * 1440, 1);
    // the case's site lies 7° west of the file: hours at the ends of the day move, the day's energy must not
    const kwh = (values: Float32Array): number => values.reduce((sum, value) => sum + value, 0) / 60_000;
    expect(Math.abs(kwh(ghiWm2) / 1407.8 - 1)).toBeLessThan(0.01); // other sun, same clearness
    expect(Math.abs(kwh(dhiWm2) / 651.8 - 1)).toBeLessThan(0.015);
  });
});
