/**
 * One stretch of a thermostatic appliance's course: its surroundings hold. MODEL.md §Usage, U9.
 *
 * A heater is a cooler seen upside down: everything here works on `sign × temperature`, so that "too warm" always
 * means above the band. A minute's step `y ← y + (surroundings - y)·drift - pull` has a closed form,
 * `y(k) = h + (y(0) - h)·(1 - drift)^k` with the heading `h = surroundings - pull/drift`.
 */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { REACH_MINUTES, type ThermostatParameters } from './thermostat-parameters.ts';
import type { BeyondLimit } from './thermostat-state.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

/** The hour of the outage whose surroundings hold at `minute`; past the horizon those of the last hour do. */
export function hourOf({ around }: ThermostatPlace, minute: number): number {
  const hour = (minute / MINUTES_PER_HOUR) | 0;
  return hour < around.length ? hour : around.length - 1;
}

/** Where the temperature is heading in that hour: the surroundings, or as far below them as its pull can hold it. */
export function headingOf({ parameters, around }: ThermostatPlace, running: boolean, hour: number): number {
  return running ? around[hour]! - parameters.depth : around[hour]!;
}

/** End of the stretch that begins at `minute`. */
export function stretchEnd({ movesAt }: ThermostatPlace, hour: number, minute: number): number {
  return Math.min(movesAt[hour]!, minute + REACH_MINUTES);
}

/** `minutes` of one stretch. */
export function afterMinutes(place: ThermostatPlace, heading: number, y: number, minutes: number): number {
  return heading + (y - heading) * place.parameters.powers[minutes]!;
}

/** From `time` to `later` within one minute: its share of the minute's step. */
export function afterShare(
  place: ThermostatPlace,
  running: boolean,
  y: number,
  time: number,
  later: number,
): number {
  const heading = headingOf(place, running, hourOf(place, time));
  return y + (heading - y) * place.parameters.drift * (later - time);
}

/**
 * Whole minutes until it is beyond the threshold, 0…REACH_MINUTES: the first k with `heading + away·(1 - drift)^k`
 * past it. Solved by the series of the logarithm, `-ln p = 2·artanh((1 - p)/(1 + p))`, made exact on the table of powers.
 */
export function minutesToBeyond(
  { powers, perLog }: ThermostatParameters,
  away: number,
  thresholdAway: number,
): number {
  const distance = Math.abs(away);
  let beyond = Math.abs(thresholdAway); // of the heading, once it is nearer than that
  if (beyond > distance) beyond = distance;
  const z = (distance - beyond) / (distance + beyond);
  const z2 = z * z;
  const guess = 2 * perLog * z * (1 + z2 * (1 / 3 + z2 * (1 / 5 + z2 / 7)));
  let k = guess < REACH_MINUTES ? guess | 0 : REACH_MINUTES;
  while (distance * powers[k]! < beyond) k--;
  while (k < REACH_MINUTES && distance * powers[k]! >= beyond) k++;
  return k;
}

/**
 * Minutes from `from` to `to` that it would run to hold its setting. A refrigerator left off for a week calls all week,
 * but it goes without a third of that: what it wanted is what holding would have taken.
 */
export function heldMinutes(place: ThermostatPlace, from: number, to: number): number {
  let held = 0;
  let time = from;
  while (time < to) {
    const hour = hourOf(place, time);
    const end = Math.min(to, place.movesAt[hour]!);
    held += heldShare(place, hour) * (end - time);
    time = end;
  }
  return held;
}

/** Share of that hour that it would run to hold its setting. */
export function heldShare({ parameters, around }: ThermostatPlace, hour: number): number {
  const set = (parameters.high + parameters.low) / 2;
  const share = (around[hour]! - set) / parameters.depth;
  return share < 0 ? 0 : share > 1 ? 1 : share;
}

/** Counts into `tally` the minutes of a stretch that end past the limit; through it the temperature runs in one direction. */
export function countStretchBeyond(
  place: ThermostatPlace,
  heading: number,
  y: number,
  from: number,
  minutes: number,
  tally: BeyondLimit,
): void {
  const first = endsBeyond(place, heading, y, 1);
  const last = endsBeyond(place, heading, y, minutes);
  if (!first && !last) return;
  if (first && last) {
    noteBeyond(tally, from, minutes);
    return;
  }
  let low = 0; // ends like the first minute
  let high = minutes - 1; // ends like the last
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (endsBeyond(place, heading, y, middle + 1) === first) low = middle;
    else high = middle;
  }
  if (first) noteBeyond(tally, from, high);
  else noteBeyond(tally, from + high, minutes - high);
}

/** Whether the `k`th minute of the stretch ends past the limit. */
function endsBeyond(place: ThermostatPlace, heading: number, y: number, k: number): boolean {
  return afterMinutes(place, heading, y, k) > place.parameters.limit;
}

export function noteBeyond(tally: BeyondLimit, time: number, minutes: number): void {
  tally.beyondMinutes += minutes;
  if (tally.beyondFirst < 0) tally.beyondFirst = time;
}
