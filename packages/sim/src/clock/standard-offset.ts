import { zoneOffsetMinutes } from './zone-offset.ts';

/** Hours of standard time: the lesser of January's and July's, for clocks go forward in summer, on either half of the Earth. */
export function standardOffsetHours(timeZone: string): number {
  const offsets = [0, 6].map((month) => zoneOffsetMinutes(timeZone, Date.UTC(2025, month, 1) / 60_000));
  return Math.min(...offsets) / 60;
}
