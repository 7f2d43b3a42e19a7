/** The part of a time axis that holds these days, with a little room; for marks whose place counts, not their length. */
const ROOM = 0.08;
const LEAST_DAYS = 1 / 12;

/** First and last day, within 0 and the horizon. */
export function roomAround(days: readonly number[], horizonDays: number): [number, number] {
  const [least, most] = [Math.min(...days), Math.max(...days)];
  const room = Math.max(LEAST_DAYS, (most - least) * ROOM);
  return [Math.max(0, least - room), Math.min(horizonDays * (1 + ROOM), most + room)];
}
