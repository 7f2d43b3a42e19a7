/**
 * The course of one thermostatic appliance's temperature while nothing switches. MODEL.md §Usage, U9.
 *
 * A heater is a cooler seen upside down: everything here works on `sign × temperature`, so that "too warm" always
 * means above the band. While the surroundings hold, a minute's step `y ← y + (surroundings - y)·drift - pull` has a
 * closed form, `y(k) = h + (y(0) - h)·(1 - drift)^k` with the heading `h = surroundings - pull/drift`. A course goes
 * from one such stretch to the next: they end where the surroundings are taken anew. Stretches are the same wherever
 * somebody asks on the way, so where blocks of minutes end changes no bit.
 */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { LOOK_MINUTES, REACH_MINUTES } from './thermostat-state.ts';
import type { ThermostatParameters, ThermostatState } from './thermostat-state.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

/** True while it draws its running watts. */
export function isRunning(state: ThermostatState): boolean {
  return state.calling && state.powered;
}

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

/** Signed temperature at `time`, a whole number of minutes after the anchor. */
export function signedC(place: ThermostatPlace, state: ThermostatState, time: number): number {
  const running = isRunning(state);
  let y = state.anchorY;
  let from = state.anchorAt;
  while (from < time) {
    const hour = hourOf(place, from);
    const to = Math.min(time, stretchEnd(place, hour, from));
    y = courseC(place, headingOf(place, running, hour), y, to - from);
    from = to;
  }
  return y;
}

/** `minutes` of one stretch. */
export function courseC(place: ThermostatPlace, heading: number, y: number, minutes: number): number {
  return heading + (y - heading) * place.parameters.powers[minutes]!;
}

/** Works out from the anchor, which lies at a whole minute, when it is next beyond its band. */
export function findNext(place: ThermostatPlace, state: ThermostatState): void {
  const { parameters, around, movesAt } = place;
  const { calling } = state;
  const depth = isRunning(state) ? parameters.depth : 0;
  const threshold = calling ? parameters.low : parameters.high;
  const drift = parameters.drift;
  let y = state.anchorY;
  let most = y;
  let minute = state.anchorAt | 0;
  const last = minute + LOOK_MINUTES;
  while (minute < last) {
    const hour = hourOf(place, minute);
    const heading = around[hour]! - depth;
    const end = Math.min(movesAt[hour]!, minute + REACH_MINUTES, last);
    const away = y - heading;
    // It moves by at most |away|·drift a minute: most stretches are seen at a glance not to reach the threshold.
    const room = calling ? y - threshold : threshold - y;
    if (room < Math.abs(away) * drift * (end - minute)) {
      const k = minutesToBeyond(parameters, heading, away, threshold, calling);
      if (k < end - minute) {
        y = heading + away * parameters.powers[k]!;
        if (y > most) most = y;
        minute += k;
        break;
      }
    }
    y = heading + away * parameters.powers[end - minute]!;
    if (y > most) most = y;
    minute = end;
  }
  state.nextAt = minute;
  state.nextY = y;
  state.nextMost = most;
}

/**
 * Whole minutes until it is beyond the threshold, 0…REACH_MINUTES: the first k with `heading + away·(1 - drift)^k`
 * past it. Solved for the power, guessed by the series of the logarithm, made exact on the table of powers.
 */
function minutesToBeyond(
  parameters: ThermostatParameters,
  heading: number,
  away: number,
  threshold: number,
  falling: boolean,
): number {
  if (falling ? heading + away < threshold : heading + away > threshold) return 0;
  if (falling ? heading >= threshold : heading <= threshold) return REACH_MINUTES; // heads for a place within the band
  const power = Math.min(1, (threshold - heading) / away); // beyond where the power of (1 - drift) falls below this, 0 < power ≤ 1
  if (parameters.powers[REACH_MINUTES]! >= power) return REACH_MINUTES;
  const x = 1 - power;
  let k = Math.min(
    REACH_MINUTES,
    Math.floor(parameters.perLog * x * (1 + x * (1 / 2 + x * (1 / 3 + x / 4)))),
  );
  while (parameters.powers[k]! < power) k--;
  while (parameters.powers[k]! >= power) k++;
  return k;
}
