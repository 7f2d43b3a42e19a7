import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { drawHourlyWeather } from '../../../packages/sim/src/weather/draw-weather.ts';
import { NORMALS, weatherCase, YEAR } from './weather-case.ts';
import type { CaseOptions, WeatherCase } from './weather-case.ts';

const DAY = 1440;
const SOURCES: readonly [string, CaseOptions][] = [
  ['monthly normals', {}],
  ['a weather year', { source: { kind: 'year', year: YEAR } }],
];
const start = fc
  .integer({ min: 0, max: 525_599 })
  .map((minute) => new Date(Date.UTC(2026, 0, 1) + minute * 60_000).toISOString());
const index = fc.integer({ min: 0, max: 1_000_000 });

/** Mean of the elements of `values` from `from` on. */
function meanOf(values: ArrayLike<number>, from: number, count: number): number {
  let sum = 0;
  for (let i = from; i < from + count; i++) sum += values[i]!;
  return sum / count;
}

describe('dry-bulb', () => {
  it('asked to have no spread between days stays near the month’s mean, and is never NaN', () => {
    const monthly = { ...NORMALS, dryBulbSdC: new Array<number>(12).fill(0) };
    const still = weatherCase({ source: { kind: 'normals', name: 'still', monthly } });
    for (let draw = 0; draw < 20; draw++) {
      const { dryBulbC } = still.draw('2026-01-15T05:00Z', DAY, draw);
      expect(Math.abs(meanOf(dryBulbC, 0, DAY) - NORMALS.dryBulbMeanC[0]!)).toBeLessThan(4);
    }
  });
});

describe.each(SOURCES)('drawWeather from %s', (_, options) => {
  const made: WeatherCase = weatherCase(options);

  it('keeps 0 ≤ DHI ≤ GHI ≤ the brightest cloud edge, and dark nights, whenever the outage starts', () => {
    fc.assert(
      fc.property(start, index, (startUtc, draw) => {
        const { ghiWm2, dhiWm2, dryBulbC, windMs, sun } = made.draw(startUtc, 3 * DAY, draw);
        for (let m = 0; m < 3 * DAY; m++) {
          const [ghi, dhi] = [ghiWm2[m]!, dhiWm2[m]!];
          if (!(dhi >= 0 && dhi <= ghi && ghi <= 1500))
            throw new Error(`minute ${m}: GHI ${ghi}, DHI ${dhi}`);
          if (sun.cosZenith[m]! <= 0 && ghi !== 0)
            throw new Error(`minute ${m}: GHI ${ghi} with the sun down`);
          if (!(Math.abs(dryBulbC[m]!) < 60 && windMs[m]! >= 0)) throw new Error(`minute ${m}: air`);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('has the same weather again from the same streams', () => {
    const [first, again] = [
      made.draw('2026-03-08T02:10Z', 4 * DAY, 7),
      made.draw('2026-03-08T02:10Z', 4 * DAY, 7),
    ];
    expect(again).toEqual(first);
    expect(made.draw('2026-03-08T02:10Z', 4 * DAY, 8).ghiWm2).not.toEqual(first.ghiWm2);
  });

  it('goes on from a shorter horizon to a longer one without changing what was before', () => {
    fc.assert(
      fc.property(start, index, fc.integer({ min: 1, max: 3 * DAY }), (startUtc, draw, minutes) => {
        const shorter = made.draw(startUtc, minutes, draw);
        const longer = made.draw(startUtc, 5 * DAY, draw);
        for (const name of ['ghiWm2', 'dhiWm2', 'dryBulbC', 'windMs', 'snowOnPanels'] as const) {
          expect(longer[name].slice(0, minutes)).toEqual(shorter[name]);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('keeps the energy and the diffuse share of every hour', () => {
    const startUtc = '2026-06-10T00:00Z';
    const startEpochMinute = Date.parse(startUtc) / 60_000;
    let compared = 0;
    for (let draw = 0; draw < 5; draw++) {
      const { ghiWm2, dhiWm2, sun } = made.draw(startUtc, 10 * DAY, draw);
      const hourly = drawHourlyWeather(made.plan, startEpochMinute, 10 * DAY, streamsOf('test', draw));
      const above = sun.cosZenith.map((cosine, m) => Math.max(0, cosine) * sun.extraterrestrialNormalWm2[m]!);
      for (let hour = 0; hour < 24 * hourly.days; hour++) {
        const first = hourly.startEpochMinute + 60 * hour - startEpochMinute;
        if (first < 0 || first + 60 > 10 * DAY || meanOf(above, first, 60) === 0) continue;
        const ghi = meanOf(ghiWm2, first, 60);
        const expected = hourly.clearness[hour]! * meanOf(above, first, 60);
        expect(Math.abs(ghi - expected)).toBeLessThan(1e-4 * expected + 1e-3); // single precision of the track
        const dhi = meanOf(dhiWm2, first, 60);
        expect(Math.abs(dhi - hourly.diffuseFraction[hour]! * ghi)).toBeLessThan(0.03 * ghi + 1e-3); // two rounds of levelling
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(700);
  });

  it('has no step in dry-bulb or wind from one minute to the next', () => {
    const largestStep = (values: Float32Array): number =>
      values.reduce(
        (worst, value, m) => (m === 0 ? 0 : Math.max(worst, Math.abs(value - values[m - 1]!))),
        0,
      );
    for (let draw = 0; draw < 10; draw++) {
      const { dryBulbC, windMs } = made.draw('2026-04-28T05:00Z', 14 * DAY, draw);
      expect(largestStep(dryBulbC)).toBeLessThan(0.12); // 7 °C an hour
      expect(largestStep(windMs)).toBeLessThan(0.05);
    }
  });

  it('begins a storm-led outage on a dull day, today or, after sunset, tomorrow', () => {
    const anyDay = made;
    const storm = weatherCase({ ...options, stormDullestFraction: 0.1 });
    const kwh = (of: WeatherCase, startUtc: string, from: number, to: number): number => {
      let sum = 0;
      for (let draw = 0; draw < 60; draw++)
        sum += meanOf(of.draw(startUtc, 3 * DAY, draw).ghiWm2, from, to - from) / 60;
      return sum;
    };
    const morning = '2026-02-10T10:00Z';
    const evening = '2026-02-10T23:30Z';
    expect(kwh(storm, morning, 0, 720)).toBeLessThan(0.45 * kwh(anyDay, morning, 0, 720));
    expect(kwh(storm, evening, 0, DAY)).toBeLessThan(0.45 * kwh(anyDay, evening, 0, DAY));
  });

  it('works through polar night and midnight sun', () => {
    for (const latitudeDeg of [78, -78]) {
      const polar = weatherCase({ ...options, latitudeDeg });
      for (const startUtc of ['2026-01-05T00:00Z', '2026-06-25T00:00Z', '2026-02-12T00:00Z']) {
        const { ghiWm2, dryBulbC } = polar.draw(startUtc, 10 * DAY, 3);
        expect(ghiWm2.every((value) => value >= 0 && value < 1500)).toBe(true);
        expect(dryBulbC.every((value) => Number.isFinite(value))).toBe(true);
      }
    }
  });
});

describe('drawWeather from monthly normals', () => {
  it('takes the wind from the site', () => {
    expect(new Set(weatherCase().draw('2026-01-05T00:00Z', DAY, 1).windMs)).toEqual(new Set([3.5]));
  });

  it('meets the same day in a storm-led draw, only duller: the streams are taken alike', () => {
    const [any, storm] = [weatherCase(), weatherCase({ stormDullestFraction: 0.999999 })];
    const startUtc = '2026-05-01T12:00Z';
    const [a, b] = [any.draw(startUtc, 3 * DAY, 5), storm.draw(startUtc, 3 * DAY, 5)];
    const worst = Math.max(...a.ghiWm2.map((value, m) => Math.abs(value - b.ghiWm2[m]!)));
    expect(worst).toBeLessThan(1);
  });
});
