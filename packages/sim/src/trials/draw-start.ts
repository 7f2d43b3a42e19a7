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
  const days = outage.months!.flatMap((month) =>
    Array.from({ length: daysIn(outage.year, month) }, (_, d) => ({ month, day: d + 1 })),
  );
  const { month, day } = days[Math.floor(uniform() * days.length)]!;
  return epochMinuteOfLocal(timeZone, outage.year, month, day, Math.floor(uniform() * 1440));
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
