/** The sun of a whole local day, hour by hour: what clearness is a share of. */
import { createSunTrack, fillSunTrack } from '../sky/sun-table.ts';
import type { SunTable } from '../sky/sun-table.ts';

/** One day of 24 whole hours of a fixed local time. Extraterrestrial irradiance on the level is normalWm2 × cosine. */
export interface DaySky {
  /** Cosine of the zenith angle at the middle of each minute, 1440; 0 with the sun down. */
  readonly minuteCosZenith: Float32Array;
  /** Mean over each hour of the same, 24. */
  readonly hourCosZenith: Float64Array;
  /** Their sum over the day; 0 in polar night. */
  readonly dayCosZenith: number;
  /** W/m² on a plane facing the sun, above the air, at the day's middle. */
  readonly normalWm2: number;
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
  const track = createSunTrack(1440, 0);
  fillSunTrack(table, [], startEpochMinute, 1440, track);
  const minuteCosZenith = track.cosZenith;
  const hourCosZenith = new Float64Array(24);
  for (let minute = 0; minute < 1440; minute++) {
    if (minuteCosZenith[minute]! < 0) minuteCosZenith[minute] = 0;
    hourCosZenith[Math.floor(minute / 60)]! += minuteCosZenith[minute]! / 60;
  }
  const dayCosZenith = hourCosZenith.reduce((sum, cosine) => sum + cosine, 0);
  return { minuteCosZenith, hourCosZenith, dayCosZenith, normalWm2: track.extraterrestrialNormalWm2[720]! };
}
