/** Clearness of the 60 minutes of an hour about the hour’s own. MODEL.md §Weather, W4. */
import { fillNumbers } from '../chance/fill-numbers.ts';
import type { Stream } from '../chance/streams.ts';
import { withinBounds } from './flicker-bounds.ts';
import { FAST_MINUTE_LAG1, hourSpread, slowFlickerFraction, SLOW_MINUTE_LAG1 } from './minute-variability.ts';

/** One hour's minutes, and what runs on from hour to hour. */
export interface Flicker {
  /** The two autoregressions at the end of the hour. */
  slow: number;
  fast: number;
  /** Share of such hours that are steadier than this one. */
  steadier: number;
  /** Mean and standard deviation of the hour's 60 sums of the two. */
  centre: number;
  deviation: number;
  /** The 60 minutes: first the sums, in the end their clearness. */
  readonly minutes: Float64Array;
  /** Sum of the minutes' weights, the sun's height. */
  weightSum: number;
  /** The hour's numbers from the stream. */
  readonly numbers: Float64Array;
}

const SLOW_STEP = Math.sqrt(3 * (1 - SLOW_MINUTE_LAG1 * SLOW_MINUTE_LAG1));
const FAST_STEP = Math.sqrt(3 * (1 - FAST_MINUTE_LAG1 * FAST_MINUTE_LAG1));
/** Clearness under thick cloud and in the gaps, between which broken skies switch. */
const UNDER_CLOUD = 0.2;
const IN_GAPS = 0.8;
/** One for the hour's spread, two for each minute. */
const NUMBERS_PER_HOUR = 121;

/** Before the first hour: both autoregressions begin at their mean. */
export function createFlicker(): Flicker {
  const minutes = new Float64Array(60);
  const numbers = new Float64Array(NUMBERS_PER_HOUR);
  return { slow: 0, fast: 0, steadier: 0, centre: 0, deviation: 0, minutes, weightSum: 0, numbers };
}

/** Goes on by an hour of the given clearness: two autoregressions, slow and fast, added. Takes 121 numbers. */
export function walkFlicker(clearness: number, stream: Stream, flicker: Flicker): void {
  const { minutes, numbers } = flicker;
  fillNumbers(stream, numbers, NUMBERS_PER_HOUR);
  flicker.steadier = numbers[0]!;
  const slowFraction = slowFlickerFraction(clearness);
  const slowWeight = Math.sqrt(slowFraction);
  const fastWeight = Math.sqrt(1 - slowFraction);
  let { slow, fast } = flicker;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < 60; i++) {
    slow = SLOW_MINUTE_LAG1 * slow + SLOW_STEP * (2 * numbers[2 * i + 1]! - 1);
    fast = FAST_MINUTE_LAG1 * fast + FAST_STEP * (2 * numbers[2 * i + 2]! - 1);
    const value = slowWeight * slow + fastWeight * fast;
    minutes[i] = value;
    sum += value;
    squares += value * value;
  }
  flicker.slow = slow;
  flicker.fast = fast;
  flicker.centre = sum / 60;
  flicker.deviation = Math.sqrt(squares / 60 - flicker.centre * flicker.centre);
}

/**
 * Turns the hour just walked into clearness whose mean, weighted by the sun's height, is the hour's exactly: bent into
 * two levels as far as the hour is unsteady (gaps and cloud), centred, scaled to the hour's spread, and scaled down
 * where it would leave the bounds, so that the mean needs no repair.
 *
 * @param minuteCosZenith of the day, 0 with the sun down; the hour is the 60 from `from`.
 */
export function shapeFlicker(
  clearness: number,
  sinElevation: number,
  minuteCosZenith: Float32Array,
  from: number,
  flicker: Flicker,
): void {
  const { minutes } = flicker;
  const spread = hourSpread(clearness, flicker.steadier);
  const { lean, stretch, centre } = bendOf(clearness, spread, flicker);
  let weightSum = 0;
  let valueSum = 0;
  let sunlit = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < 60; i++) {
    const bent = stretch * (minutes[i]! - centre) + lean;
    const value = bent / Math.sqrt(1 + bent * bent);
    minutes[i] = value;
    const weight = minuteCosZenith[from + i]!;
    if (weight <= 0) continue;
    weightSum += weight;
    valueSum += weight * value;
    sum += value;
    squares += value * value;
    sunlit++;
  }
  const mean = valueSum / weightSum;
  const variance = squares / sunlit - (sum / sunlit) * (sum / sunlit);
  const wanted = sunlit > 1 && variance > 1e-12 ? spread / Math.sqrt(variance) : 0;
  const scale = withinBounds(wanted, minutes, mean, minuteCosZenith, from, clearness, sinElevation);
  for (let i = 0; i < 60; i++) minutes[i] = clearness + scale * (minutes[i]! - mean);
  flicker.weightSum = weightSum;
}

/** How the hour's sums are bent into two levels as far as the hour is unsteady: centred, stretched, leaning to one of them. */
function bendOf(clearness: number, spread: number, { centre, deviation }: Flicker) {
  const inGaps = Math.min(0.9, Math.max(0.1, (clearness - UNDER_CLOUD) / (IN_GAPS - UNDER_CLOUD)));
  const lean = 2.5 * (inGaps - 0.5); // the normal number with this share below it, nearly
  const unsteady = spread / ((IN_GAPS - UNDER_CLOUD) * Math.sqrt(inGaps * (1 - inGaps)));
  const strength = 0.2 + 4 * unsteady * unsteady * unsteady;
  return { lean: strength * lean, stretch: strength / deviation, centre };
}
