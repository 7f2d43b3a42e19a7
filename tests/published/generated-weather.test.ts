/**
 * Weather generated from monthly normals has the statistics of observed weather. Observed figures and their sources are
 * in generated-weather/observed.ts, tolerances and what sets them in generated-weather/budgets.ts; the whole table is
 * printed by scripts/validate-weather.ts from the same code.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lawMean, lawQuantile, publishedClearnessLaw } from '../../packages/sim/src/weather/clearness-law.ts';
import { hourlyLaw, meanHourClearness } from '../../packages/sim/src/weather/hourly-clearness.ts';
import { readNormals } from '../../packages/sim/src/weather/normals-table.ts';
import { BUDGETS } from './generated-weather/budgets.ts';
import type { Check } from './generated-weather/budgets.ts';
import { compareDays } from './generated-weather/compare-days.ts';
import { compareHours } from './generated-weather/compare-hours.ts';
import { compareMinutes } from './generated-weather/compare-minutes.ts';
import { compareSpells } from './generated-weather/compare-spells.ts';
import { holds } from './generated-weather/comparison.ts';
import type { Comparison } from './generated-weather/comparison.ts';

const places = readNormals(readFileSync(new URL('../../data/normals.csv', import.meta.url), 'utf8'));

/** How many comparisons each check must make. */
const SUITES: readonly [string, () => Comparison[], Partial<Record<Check, number>>][] = [
  [
    'days, 25 places of 100 years',
    () => compareDays(places),
    {
      'daily clearness, month mean': 300,
      'daily clearness, spread': 25,
      'daily clearness, lag 1': 25,
      'dark days, share': 24,
      'classes of days, share': 12,
      'next day the same class': 4,
      'dry-bulb, month mean': 300,
      'dry-bulb, spread of day means': 25,
      'dry-bulb, lag 1': 25,
      'dry-bulb tied to clearness': 25,
      'dry-bulb, daily range': 25,
    },
  ],
  [
    'dark spells, against 20 years of Penn State and 4 of Lyngby',
    () => compareSpells(places),
    {
      'dark runs, share of dark days in runs': 12,
      'longest dark run': 2,
      'worst spell of a year, median': 6,
      'month means between years, rms': 1,
    },
  ],
  [
    'hours, 21 places',
    () => compareHours(places),
    {
      'hourly clearness, mean': 8,
      'hourly clearness, 5th percentile': 8,
      'hourly clearness, 95th percentile': 8,
      'hourly clearness, share above 0.7': 8,
      'hourly clearness, residual spread': 8,
      'hourly clearness, residual lag 1': 8,
      'shape of the day': 30,
    },
  ],
  [
    'minutes, 3 places',
    () => compareMinutes(places),
    {
      'minute clearness, spread in the hour': 9,
      'minute clearness, median spread': 9,
      'minute clearness, 90th percentile of spread': 9,
      'minute clearness, correlation after 1 min': 9,
      'minute clearness, correlation after 5 min': 9,
      'minute clearness, correlation after 15 min': 9,
      'minutes below 0.4 of a clear sky': 8,
      'minutes above 0.9 of a clear sky': 8,
      'energy that hourly means hide': 3,
    },
  ],
];

const told = (c: Comparison): string =>
  `${c.where}: generated ${c.generated.toFixed(3)}, observed ${c.observed.toFixed(3)}, allowed ${c.low.toFixed(3)} to ${c.high.toFixed(3)}`;

describe.each(SUITES)('generated weather: %s', (_, compare, counts) => {
  const compared = compare();
  it.each(Object.entries(counts))('%s (%i comparisons)', (check, count) => {
    const ofCheck = compared.filter((each) => each.check === check);
    expect(ofCheck.filter((each) => !holds(each)).map(told), BUDGETS[check as Check]).toEqual([]);
    expect(ofCheck).toHaveLength(count);
  });
});

describe('daily clearness follows the published distribution', () => {
  // Bendt, Collares-Pereira & Rabl 1981 with Hollands & Huget 1983: mean, clearest day, exact slope recomputed by hand
  // from Duffie & Beckman eqs. 2.9.2 to 2.9.6; spread by quadrature with the exact slope
  const LAW: readonly [number, number, number, number | undefined][] = [
    [0.3, 0.69139, -2.1252, 0.17697],
    [0.35, 0.71695, -0.9086, undefined],
    [0.4, 0.73542, 0.1863, 0.19778],
    [0.45, 0.75067, 1.2289, undefined],
    [0.5, 0.76462, 2.272, 0.19361],
    [0.55, 0.77812, 3.374, undefined],
    [0.6, 0.7915, 4.6209, 0.16655],
    [0.65, 0.80485, 6.1696, undefined],
    [0.7, 0.8182, 8.3725, 0.11538],
  ];

  it.each(LAW)('for a monthly mean of %f', (mean, max, gamma, sd) => {
    const law = publishedClearnessLaw(mean);
    expect(Math.abs(law.max - max)).toBeLessThan(1e-5); // printed to five places
    expect(Math.abs(law.gamma - gamma)).toBeLessThan(1e-4); // printed to four places
    expect(Math.abs(lawMean(law) - mean)).toBeLessThan(1e-8);
    const days = Array.from({ length: 20_000 }, (_, day) => lawQuantile(law, (day + 0.5) / 20_000));
    const average = days.reduce((sum, k) => sum + k, 0) / days.length;
    expect(Math.abs(average - mean)).toBeLessThan(1e-5); // midpoint rule on 20,000 quantiles
    if (sd === undefined) return;
    const spread = Math.sqrt(days.reduce((sum, k) => sum + (k - average) ** 2, 0) / days.length);
    expect(Math.abs(spread - sd)).toBeLessThan(2e-5);
  });
});

describe('the mean hour follows the published model', () => {
  // Aguiar & Collares-Pereira 1992, Solar Energy 49:167: λ, ε, κ and the mean at 30°, 60° and 90°, recomputed from the constants
  const TAG: readonly [number, number, number, number, number, number, number][] = [
    [0.2, 0.08246, 0.176, 0.26072, 0.18694, 0.2127, 0.21806],
    [0.3, 0.16777, 0.256, 0.32653, 0.30101, 0.34336, 0.35246],
    [0.4, 0.26778, 0.304, 0.39256, 0.40643, 0.46099, 0.47308],
    [0.5, 0.3744, 0.32, 0.44375, 0.50613, 0.56609, 0.57972],
    [0.6, 0.48398, 0.304, 0.46504, 0.60391, 0.66167, 0.67492],
    [0.7, 0.59489, 0.256, 0.44137, 0.70078, 0.74867, 0.75954],
  ];

  it.each(TAG)('on a day of clearness %f', (clearness, floor, height, thickness, ...means) => {
    const law = hourlyLaw(clearness);
    const made = [law.floor, law.height, law.thickness];
    [0.5, Math.sqrt(0.75), 1].forEach((sinElevation) => made.push(meanHourClearness(law, sinElevation)));
    [floor, height, thickness, ...means].forEach((published, index) => {
      expect(Math.abs(made[index]! - published)).toBeLessThan(1e-5); // printed to five places
    });
  });
});
