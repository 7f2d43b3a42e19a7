/** Portable panels: when they lie in the cupboard. MODEL.md E8. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import type { OutageClock } from '../clock/outage-clock.ts';

/** 1 for each minute of the outage outside the windows of local clock time in which the panels are out. */
export function stowedMinutes(outDuring: readonly string[], clock: OutageClock): Uint8Array {
  const out = minutesInWindows(outDuring);
  const stowed = new Uint8Array(clock.minutes);
  for (let m = 0; m < stowed.length; m++) stowed[m] = 1 - out[clock.localMinuteOfDay[m]!]!;
  return stowed;
}
