/** When the grid goes in one draw. MODEL.md §1.3. */
import type { Stream } from '../chance/streams.ts';
import { epochMinuteOfLocal } from '../clock/zone-offset.ts';
import type { OutageSpec } from '../scenario/schema.ts';

/** The given start, or any minute of any day of the given months, each as likely as any other. UTC minutes since 1970. */
export function drawStart(outage: OutageSpec, timeZone: string, uniform: Stream): number {
  if (outage.startLocal !== undefined) {
    const [year, month, day, hour, minute] = outage.startLocal.split(/[-T:]/).map(Number);
    return epochMinuteOfLocal(timeZone, year!, month!, day!, hour! * 60 + minute!);
  }
  const months = outage.months!;
  let days = 0;
  for (const month of months) days += daysIn(outage.year, month);
  let day = Math.floor(uniform() * days);
  let at = 0;
  for (; day >= daysIn(outage.year, months[at]!); at++) day -= daysIn(outage.year, months[at]!);
  return epochMinuteOfLocal(timeZone, outage.year, months[at]!, day + 1, Math.floor(uniform() * 1440));
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
