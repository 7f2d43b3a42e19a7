/** How unsteady the sky is inside an hour, from one-minute measurements. */

/**
 * Standard deviation of minute clearness within an hour, by hourly clearness 0.05, 0.15, … 0.85 (rows) and by the
 * share of hours that are steadier: none, 10 %, 50 %, 90 %, all (columns). The middle three columns are means of the
 * measured percentiles of Lyngby, Denmark (DTU, 12,992 hours) and Golden, Colorado (NREL SRRL, 850 hours), sun above
 * 10°; the outer two are set so that the mean over the row is the measured mean.
 */
const HOUR_SPREADS: readonly (readonly number[])[] = [
  [0.002, 0.007, 0.02, 0.049, 0.09],
  [0.004, 0.015, 0.037, 0.082, 0.13],
  [0.006, 0.021, 0.054, 0.162, 0.22],
  [0.01, 0.033, 0.087, 0.236, 0.31],
  [0.02, 0.062, 0.162, 0.271, 0.33],
  [0.02, 0.054, 0.19, 0.286, 0.34],
  [0.005, 0.016, 0.114, 0.246, 0.31],
  [0.001, 0.003, 0.0145, 0.158, 0.2],
  [0.001, 0.008, 0.03, 0.13, 0.2],
];
const SHARES = [0, 0.1, 0.5, 0.9, 1] as const;
const ROWS = HOUR_SPREADS.length;

/** @param clearness of the hour. @param share 0…1: the share of such hours that are steadier than this one. */
export function hourSpread(clearness: number, share: number): number {
  const at = Math.min(Math.max(10 * clearness - 0.5, 0), ROWS - 1.001);
  const row = Math.floor(at);
  let column = 0;
  while (column < 3 && share >= SHARES[column + 1]!) column++;
  const across = (share - SHARES[column]!) / (SHARES[column + 1]! - SHARES[column]!);
  const below = HOUR_SPREADS[row]!;
  const above = HOUR_SPREADS[row + 1]!;
  const inRow = below[column]! * (1 - across) + below[column + 1]! * across;
  const inNext = above[column]! * (1 - across) + above[column + 1]! * across;
  const towardsNext = Math.min(1, Math.max(0, 3 * (at - row) - 1)); // classes have a width: the change is kept to its edge
  return inRow + (inNext - inRow) * towardsNext;
}

/** Persistence from one minute to the next of the slow and the fast part of the flicker. */
export const SLOW_MINUTE_LAG1 = 0.98;
export const FAST_MINUTE_LAG1 = 0.7;

/**
 * Share of the flicker's variance in the slow part: heavy cloud drifts, broken cloud flickers. Fitted to the measured
 * correlations at 1, 5 and 15 minutes of the same two stations.
 */
export function slowFlickerFraction(clearness: number): number {
  return Math.min(1, Math.max(0.5, 1.2 - 0.6 * clearness));
}
