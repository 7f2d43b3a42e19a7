/** Hourly weather of one draw, as both weather sources hand it to the minutes. */

/** Whole hours of whole local days; hour h starts at `startEpochMinute + 60 h`. */
export interface HourlyWeather {
  /** UTC minutes since 1970-01-01T00:00 at which hour 0 starts: a local midnight at or before the outage's start. */
  readonly startEpochMinute: number;
  readonly firstLocalDay: number;
  readonly days: number;
  /** GHI over extraterrestrial irradiance on the level, one per hour; given for dark hours too, where it is not used. */
  readonly clearness: Float64Array;
  /** DHI over GHI, 0…1, one per hour. */
  readonly diffuseFraction: Float64Array;
  /** °C at the start of each hour and at the end of the last: 24 × days + 1. */
  readonly dryBulbC: Float64Array;
  /** m/s at the same instants. */
  readonly windMs: Float64Array;
}

/** Empty hours for an outage of `minutes` in local time of the given offset. */
export function createHourlyWeather(
  startEpochMinute: number,
  minutes: number,
  offsetMinutes: number,
): HourlyWeather {
  const firstLocalDay = Math.floor((startEpochMinute + offsetMinutes) / 1440);
  const lastLocalDay = Math.floor((startEpochMinute + minutes - 1 + offsetMinutes) / 1440);
  const days = lastLocalDay - firstLocalDay + 1;
  return {
    startEpochMinute: firstLocalDay * 1440 - offsetMinutes,
    firstLocalDay,
    days,
    clearness: new Float64Array(24 * days),
    diffuseFraction: new Float64Array(24 * days),
    dryBulbC: new Float64Array(24 * days + 1),
    windMs: new Float64Array(24 * days + 1),
  };
}
