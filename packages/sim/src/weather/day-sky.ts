/** The sun of a whole local day, hour by hour: what clearness is a share of. */
import { MINUTES_PER_DAY } from '../sky/sun-day.ts';
import type { SunTable } from '../sky/sun-table.ts';

/** One day of 24 whole hours of a fixed local time. */
export interface DaySky {
  /** Cosine of the zenith angle at the middle of each minute, 1440; 0 with the sun down. */
  readonly minuteCosZenith: Float32Array;
  /** Mean over each hour of the same, 24. */
  readonly hourCosZenith: Float64Array;
  /** Their sum over the day; 0 in polar night. */
  readonly dayCosZenith: number;
}

export interface DaySkies {
  /** Local time less UTC, minutes. */
  readonly offsetMinutes: number;
  /** The sky of one local day; worked out when first asked for. @param localDay whole days since 1970-01-01. */
  day(localDay: number): DaySky;
}

export function createDaySkies(table: SunTable, offsetMinutes: number): DaySkies {
  const kept = new Map<number, DaySky>();
  return {
    offsetMinutes,
    day(localDay) {
      const found = kept.get(localDay);
      if (found !== undefined) return found;
      const made = computeDaySky(table, localDay * 1440 - offsetMinutes);
      kept.set(localDay, made);
      return made;
    },
  };
}

function computeDaySky(table: SunTable, startEpochMinute: number): DaySky {
  const utcDay = Math.floor(startEpochMinute / MINUTES_PER_DAY);
  const [before, after] = [table.day(utcDay), table.day(utcDay + 1)];
  const from = startEpochMinute - utcDay * MINUTES_PER_DAY;
  const minuteCosZenith = new Float32Array(MINUTES_PER_DAY);
  minuteCosZenith.set(before.up.subarray(from));
  minuteCosZenith.set(after.up.subarray(0, from), MINUTES_PER_DAY - from);
  const hourCosZenith = new Float64Array(24);
  for (let minute = 0; minute < MINUTES_PER_DAY; minute++) {
    if (minuteCosZenith[minute]! < 0) minuteCosZenith[minute] = 0;
    hourCosZenith[Math.floor(minute / 60)]! += minuteCosZenith[minute]! / 60;
  }
  const dayCosZenith = hourCosZenith.reduce((sum, cosine) => sum + cosine, 0);
  return { minuteCosZenith, hourCosZenith, dayCosZenith };
}
