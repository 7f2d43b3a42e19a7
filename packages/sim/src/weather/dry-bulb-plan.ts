/** Dry-bulb normals made ready for drawing. MODEL.md §Weather, W5. */
import { power } from '../portable/elementary.ts';
import type { MonthlyNormals } from '../scenario/scenario.ts';
import type { ClearnessTable } from './clearness-table.ts';
import { driftVariance } from './drift-variance.ts';
import { dayMeanWeights } from './diurnal-dry-bulb.ts';
import { meanKeepingNodes } from './month-curve.ts';
import { SPELL_LAG1, SPELL_VARIANCE_FRACTION } from './spells.ts';

/** Twelve mid-month values each. */
export interface DryBulbPlan {
  readonly meanC: readonly number[];
  /** Spread of the daily mean about the curve through the year, °C. */
  readonly sdC: readonly number[];
  readonly lag1: readonly number[];
  /** Correlation of its daily innovation with the clearness innovation. */
  readonly innovationTie: readonly number[];
  readonly dailyRangeC: readonly number[];
}

/** Least squares over the 24 places of data/normals.csv, left 0.6 °C: the spread grows with the year's own range. */
const DEFAULT_SD = { baseC: 0.7, perYearlyRange: 0.135 };
/** Mean of the same places, corrected for short series. */
const DEFAULT_LAG1 = 0.73;
/** The same, left 2 °C: clear climates have the larger daily range. °C per unit of clearness. */
const DEFAULT_RANGE_PER_CLEARNESS = 19;
const DEFAULT_CORRELATION = 0;
const LARGEST_TIE = 0.97;
/** The ratios below need some spread: no spread at all is taken as this little. */
const LEAST_SD_C = 0.01;

export function planDryBulb(
  monthly: MonthlyNormals,
  clearness: ClearnessTable,
  quickLag1: readonly number[],
): DryBulbPlan {
  const means = monthly.dryBulbMeanC;
  const meanC = meanKeepingNodes(means);
  const yearlyRangeC = Math.max(...means) - Math.min(...means);
  const defaultSdC = DEFAULT_SD.baseC + DEFAULT_SD.perYearlyRange * yearlyRangeC;
  const weights = dayMeanWeights();
  const sdC: number[] = [];
  const lag1: number[] = [];
  const innovationTie: number[] = [];
  for (let month = 0; month < 12; month++) {
    const givenSdC = Math.max(LEAST_SD_C, monthly.dryBulbSdC?.[month] ?? defaultSdC);
    const drift = driftVariance(meanC, month); // the generator follows the curve, so its drift is taken out here
    const variance = Math.max(givenSdC * givenSdC - drift, 0.25 * givenSdC * givenSdC);
    const given = monthly.dryBulbLag1?.[month] ?? DEFAULT_LAG1;
    const persistence = clamp((given * givenSdC * givenSdC - drift) / variance, -0.5, 0.97);
    const correlation = monthly.clearnessDryBulbCorrelation?.[month] ?? DEFAULT_CORRELATION;
    const aboutCurve = correlation * (givenSdC / Math.sqrt(variance));
    const level = sharpened(persistence, weights);
    sdC.push(Math.sqrt(variance) * level.gain);
    lag1.push(level.lag1);
    innovationTie.push(tieFor(aboutCurve / clearness.tie, level.lag1, quickLag1[month]!));
  }
  const dailyRangeC =
    monthly.dryBulbDailyRangeC ?? clearness.means.map((mean) => DEFAULT_RANGE_PER_CLEARNESS * mean);
  return { meanC, sdC, lag1, innovationTie, dailyRangeC };
}

/**
 * Correlation of two first-order sequences (lag-1 correlations p and q) whose innovations are the same:
 * √[(1 − p²)(1 − q²)] / (1 − p q), from their moving-average forms.
 */
export function innovationReach(p: number, q: number): number {
  return Math.sqrt((1 - p * p) * (1 - q * q)) / (1 - p * q);
}

/** The tie of innovations that gives dry-bulb the wanted correlation with the sum of quick part and spell. */
function tieFor(wanted: number, lag1: number, quickLag1: number): number {
  const reach =
    (1 - SPELL_VARIANCE_FRACTION) * innovationReach(lag1, quickLag1) +
    SPELL_VARIANCE_FRACTION * innovationReach(lag1, SPELL_LAG1);
  return clamp(wanted / reach, -LARGEST_TIE, LARGEST_TIE);
}

/**
 * The daily cycle runs on into the next morning, so the mean of a day's hours is an average over the levels of three
 * days. Finds the levels' lag-1 correlation and spread (over the wanted spread) whose averages are as wanted.
 */
function sharpened(wantedLag1: number, weights: readonly number[]): { lag1: number; gain: number } {
  const covariance = (lag1: number, lag: number): number =>
    weights.reduce(
      (sum, a, i) =>
        sum +
        weights.reduce((inner, b, j) => inner + a * b * power(Math.abs(lag1), Math.abs(i - j + lag)), 0),
      0,
    );
  let low = 0;
  let high = 0.99;
  while (high - low > 1e-9) {
    const lag1 = (low + high) / 2;
    if (covariance(lag1, 1) / covariance(lag1, 0) < wantedLag1) low = lag1;
    else high = lag1;
  }
  return { lag1: low, gain: 1 / Math.sqrt(covariance(low, 0)) };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
