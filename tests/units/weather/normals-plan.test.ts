/** What monthly normals leave out, and how days begin. MODEL.md, Weather, W1 and W5. */
import { normalsNotes } from '../../../packages/sim/src/weather/normals-notes.ts';
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import type { MonthlyNormals } from '../../../packages/sim/src/scenario/scenario.ts';
import { generateDays } from '../../../packages/sim/src/weather/generate-days.ts';
import { planNormals } from '../../../packages/sim/src/weather/normals-plan.ts';
import { NORMALS } from './weather-case.ts';

const twelve = (value: number) => new Array<number>(12).fill(value);

describe('normalsNotes', () => {
  const twelve = (value: number) => new Array<number>(12).fill(value);
  const normals = { clearnessMean: twelve(0.5), dryBulbMeanC: twelve(10) };

  it('tells of days that follow each other, or scatter, more than they can', () => {
    expect(normalsNotes({ ...normals, clearnessLag1: twelve(0.3), clearnessSd: twelve(0.2) })).toEqual([]);
    expect(normalsNotes({ ...normals, clearnessLag1: [0.95, ...twelve(0.3).slice(1)] })).toEqual([
      'weather.monthly.clearnessLag1: 0.95 in January is beyond what the generator makes of such a month; about 0.68 stands in.',
    ]);
    expect(normalsNotes({ ...normals, clearnessLag1: twelve(-0.5) })[0]).toMatch(
      /-0\.5 in \w+.*about -0\.19 stands in, and 11 months more/,
    );
    expect(normalsNotes({ ...normals, clearnessSd: twelve(0.35) })[0]).toMatch(
      /^weather\.monthly\.clearnessSd: 0\.35.*about 0\.3/,
    );
  });
});

describe('normals that leave something out', () => {
  const defaults: readonly (readonly [string, Partial<MonthlyNormals>])[] = [
    ['clearness has a lag-1 of 0.27', { clearnessLag1: twelve(0.27) }],
    ['dry-bulb scatters by 0.7 and 0.135 of the year’s range', { dryBulbSdC: twelve(0.7 + 0.135 * 24) }],
    ['dry-bulb has a lag-1 of 0.73', { dryBulbLag1: twelve(0.73) }],
    ['clearness and dry-bulb are not tied', { clearnessDryBulbCorrelation: twelve(0) }],
  ];
  it.each(defaults)('%s', (_, written) => {
    expect(planNormals(NORMALS)).toEqual(planNormals({ ...NORMALS, ...written }));
  });

  it('the day’s range is 19 times the clearness', () => {
    const { dailyRangeC } = planNormals({ ...NORMALS, clearnessMean: twelve(0.45) }).dryBulb;
    for (const range of dailyRangeC) expect(range).toBeCloseTo(19 * 0.45, 9);
  });
});

describe('the first day', () => {
  it('is as warm, as scattered and as tied to its sun as any later one', () => {
    const plan = planNormals({
      clearnessMean: twelve(0.45),
      clearnessSd: twelve(0.17),
      dryBulbMeanC: twelve(10),
      dryBulbSdC: twelve(5),
      dryBulbLag1: twelve(0.73),
      clearnessDryBulbCorrelation: twelve(-0.6),
    });
    const draws = 3000;
    const days = Array.from({ length: draws }, (_, i) =>
      generateDays(plan, 0, 15, 1, 1, streamsOf('begin', i)),
    );
    const of = (day: number) => {
      const warm = days.map(({ dryBulbMeanC }) => dryBulbMeanC[day]! - 10);
      const bright = days.map(({ clearness }) => clearness[day]! - 0.45);
      const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / draws;
      const spread = Math.sqrt(mean(warm.map((w) => w * w)));
      const tie =
        mean(warm.map((w, i) => w * bright[i]!)) / (spread * Math.sqrt(mean(bright.map((b) => b * b))));
      return { mean: mean(warm), spread, tie };
    };
    const [first, later] = [of(0), of(14)];
    expect(Math.abs(first.mean)).toBeLessThan(0.3); // three standard errors, as below
    expect(Math.abs(first.spread / later.spread - 1)).toBeLessThan(0.055);
    expect(first.tie).toBeLessThan(-0.4);
    expect(Math.abs(first.tie - later.tie)).toBeLessThan(0.06);
  });
});
