/** Dark spells: what decides how long a household lasts. Against years of measurements, within their sampling error. */
import { mean, median, quantile, sampleStandardDeviation } from 'simple-statistics';
import type { MonthlyNormals } from '../../../packages/sim/src/scenario/scenario.ts';
import { faoExtraterrestrialDayWhm2 } from '../sky/fao-day.ts';
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';
import type { Check } from './budgets.ts';
import type { Comparison } from './comparison.ts';
import { darkRuns, generateClearness, shareInRuns } from './days.ts';
import { BETWEEN_YEARS, DARK_RUNS, LYNGBY, RUN_LENGTHS, SPELL_DAYS, WORST_SPELLS } from './observed.ts';

const SERIES = 200;
/** The observed figure must lie in this central share of the generated ones. */
const CENTRAL = 0.99;
/** The distribution of daily clearness ends at a floor; the darkest days measured do not. kWh/m². */
const FLOOR_KWH = 0.02;
const PENN_STATE_DEG = 40.72;

export function compareSpells(places: ReadonlyMap<string, NormalsPlace>): Comparison[] {
  const penn = years(places.get('penn-state')!.monthly, DARK_RUNS['penn-state'].years, 'spells penn');
  const lyngby = years(LYNGBY, DARK_RUNS['lyngby-dtu'].years, 'spells lyngby');
  return [
    ...compareRuns('penn-state', penn),
    ...compareRuns('lyngby-dtu', lyngby),
    ...SPELL_DAYS.map((days, index) =>
      sampled(
        'worst spell of a year, median',
        `penn-state, ${days} days`,
        WORST_SPELLS[index]!,
        penn.slice(0, 60).map((series) => median(worstSpells(series.slice(0, 18), days))),
        FLOOR_KWH,
      ),
    ),
    sampled(
      'month means between years, rms',
      'penn-state',
      Math.sqrt(mean(BETWEEN_YEARS.map((sd) => sd * sd))),
      penn.map(betweenYears),
    ),
  ];
}

/** Daily clearness by year, many series as long as the observed one; the years of a series follow one another. */
function years(monthly: MonthlyNormals, length: number, seed: string): Float64Array[][] {
  return Array.from({ length: SERIES }, (_, index) => {
    const all = generateClearness(monthly, length, `${seed} ${index}`);
    return Array.from({ length }, (__, year) => all.subarray(365 * year, 365 * (year + 1)));
  });
}

/** One observed figure against the same figure of many generated series, written as what their mean may be. */
function sampled(
  check: Check,
  where: string,
  observed: number,
  figures: readonly number[],
  slack = 0,
): Comparison {
  const generated = mean([...figures]);
  const [least, most] = [(1 - CENTRAL) / 2, (1 + CENTRAL) / 2].map((share) =>
    quantile([...figures], share),
  ) as [number, number];
  const [low, high] = [observed - (most - generated) - slack, observed + (generated - least) + slack];
  return { check, where, observed, generated, low, high };
}

function compareRuns(id: 'penn-state' | 'lyngby-dtu', series: readonly Float64Array[][]): Comparison[] {
  const runs = series.map((each) => darkRuns(each.flatMap((year) => [...year])));
  return [
    ...RUN_LENGTHS.map((days, index) =>
      sampled(
        'dark runs, share of dark days in runs',
        `${id}, ${days} days or more`,
        DARK_RUNS[id].shares[index]!,
        runs.map((each) => shareInRuns(each, days)),
      ),
    ),
    sampled(
      'longest dark run',
      id,
      DARK_RUNS[id].longest,
      runs.map((each) => Math.max(...each)),
    ),
  ];
}

/** Lowest mean GHI of n days in a row that start in the year, kWh/m² a day. */
function worstSpells(series: readonly Float64Array[], days: number): number[] {
  const ghi = series.flatMap((year) =>
    [...year].map(
      (clearness, day) => (clearness * faoExtraterrestrialDayWhm2(PENN_STATE_DEG, day + 1)) / 1000,
    ),
  );
  return series.map((_, year) => {
    const starts = Array.from({ length: 365 }, (__, day) => 365 * year + day).filter(
      (day) => day + days <= ghi.length,
    );
    return Math.min(...starts.map((day) => mean(ghi.slice(day, day + days))));
  });
}

const MONTH_ENDS = [31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

function betweenYears(series: readonly Float64Array[]): number {
  const variances = MONTH_ENDS.map((end, month) => {
    const means = series.map((year) => mean([...year.subarray(MONTH_ENDS[month - 1] ?? 0, end)]));
    return sampleStandardDeviation(means) ** 2;
  });
  return Math.sqrt(mean(variances));
}
