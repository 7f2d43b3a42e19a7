/** What one typical year leaves out of its own statistics, put back. MODEL.md §Weather, W2. */
import { driftVariance } from './drift-variance.ts';
import { meanKeepingNodes } from './month-curve.ts';
import type { ObservedNormals } from './observed-normals.ts';

/**
 * Days in the stretch that a single month's statistics rest on.
 */
const DAYS = 30;

/**
 * Measured over modelled spread of daily clearness at the same place, both about one year's own month means: 1.13 at
 * Penn State (SURFRAD 1998–2017, less what differs between years, against TMY3 725128) and 1.00 at Golden (SRRL 2013
 * against TMY3 724666). The radiation of TMY3 is modelled from cloud reports and satellite pictures and hardly knows a
 * day darker than 0.1. Their mean is used everywhere.
 */
const MEASURED_OVER_MODELLED_SPREAD = 1.07;

/**
 * The statistics of a month of one year are about that month's own mean, and typical months are chosen to have
 * ordinary means; so what differs from year to year is missing from spread and persistence, by amounts that follow
 * from the persistence. On top of that, modelled radiation is too tame. Sampling noise (one month has 30 days) is
 * taken down by one persistence for the whole year and by smoothing the spreads and ties over neighbouring months.
 * Means are left as they are.
 */
export function correctTypicalYear(observed: ObservedNormals): ObservedNormals {
  const clearnessLag1 = longRunLag1(pooled(observed.clearnessLag1, observed.clearnessSd));
  const clearnessGain = MEASURED_OVER_MODELLED_SPREAD / Math.sqrt(1 - monthMeanVariance(clearnessLag1));
  return {
    ...observed,
    clearnessSd: smoothed(observed.clearnessSd).map((sd) => sd * clearnessGain),
    clearnessLag1: observed.clearnessLag1.map(() => clearnessLag1),
    ...correctDryBulb(observed),
    clearnessDryBulbCorrelation: smoothed(observed.clearnessDryBulbCorrelation),
  };
}

/** The seasonal drift inside a month is no weather: it is set aside before and put back after. */
function correctDryBulb(observed: ObservedNormals): Pick<ObservedNormals, 'dryBulbSdC' | 'dryBulbLag1'> {
  const nodes = meanKeepingNodes(observed.dryBulbMeanC);
  const drifts = nodes.map((_, month) => driftVariance(nodes, month));
  const spreads = smoothed(observed.dryBulbSdC);
  const lag1s = observed.dryBulbLag1;
  const aboutCurve = spreads.map((sd, month) => Math.max(sd * sd - drifts[month]!, 0.25 * sd * sd));
  const own = lag1s.map((lag1, month) => {
    const sd = spreads[month]!;
    return (lag1 * sd * sd - drifts[month]!) / aboutCurve[month]!;
  });
  const lag1 = longRunLag1(pooled(own, aboutCurve.map(Math.sqrt)));
  const variances = aboutCurve.map((variance) => variance / (1 - monthMeanVariance(lag1)));
  const total = variances.map((variance, month) => variance + drifts[month]!);
  return {
    dryBulbSdC: total.map(Math.sqrt),
    dryBulbLag1: total.map((sum, month) => (lag1 * variances[month]! + drifts[month]!) / sum),
  };
}

/**
 * Variance of the mean of a month over the variance of its days, for a first-order sequence with lag-1 correlation ρ:
 * [(1 + ρ)/(1 − ρ) − 2ρ(1 − ρⁿ)/(n(1 − ρ)²)] / n; ρⁿ is nothing here.
 */
function monthMeanVariance(lag1: number): number {
  const rest = 1 - lag1;
  return ((1 + lag1) / rest - (2 * lag1) / (DAYS * rest * rest)) / DAYS;
}

/** The lag-1 correlation ρ whose month-by-month estimate is r = (ρ − v)/(1 − v), with v the variance of the month's mean. */
function longRunLag1(withinMonths: number): number {
  let lag1 = Math.min(withinMonths, 0.95);
  for (let round = 0; round < 50; round++) {
    const variance = monthMeanVariance(lag1);
    lag1 = Math.min(0.95, withinMonths * (1 - variance) + variance);
  }
  return lag1;
}

/** One correlation from twelve, each counting with its variance. */
function pooled(correlations: readonly number[], spreads: readonly number[]): number {
  const weights = spreads.map((spread) => spread * spread);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return correlations.reduce((total, value, month) => total + value * weights[month]!, 0) / sum;
}

/** A quarter of the month before, a half of the month, a quarter of the month after. */
function smoothed(values: readonly number[]): number[] {
  return values.map(
    (value, month) => (values[(month + 11) % 12]! + 2 * value + values[(month + 1) % 12]!) / 4,
  );
}
