/** The clock of one outage. MODEL.md §1. */

/**
 * Minute `m` of an outage is the minute that begins at `startEpochMinute + m` (minutes since 1970-01-01T00:00Z).
 * Arrays hold one value per minute, length `minutes`.
 */
export interface OutageClock {
  readonly startEpochMinute: number;
  readonly minutes: number;
  /** IANA zone the local arrays were made for. */
  readonly timeZone: string;
  /** Local civil minutes after midnight, 0…1439. */
  readonly localMinuteOfDay: Uint16Array;
  /** Local calendar date on which the outage starts, days since 1970-01-01. */
  readonly firstLocalDay: number;
  /** Local calendar days since the day the outage starts on, 0, 1, 2, … */
  readonly localDay: Uint16Array;
}
