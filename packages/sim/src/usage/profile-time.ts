/** The ways a profile may write its times. */

export type TimeStyle = 'date' | 'clock' | 'minutes';

export interface ProfileTime {
  readonly style: TimeStyle;
  /** Minutes on the local clock: since 1970-01-01 for a date, since midnight otherwise. */
  readonly minute: number;
}

const DATE = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?(?:Z|[+-]\d\d:?\d\d)?$/;
const CLOCK = /^(\d{1,2}):(\d\d)(?::(\d\d(?:\.\d+)?))?$/;
const MINUTES = /^\d+(?:\.\d+)?$/;

/**
 * Reads "2026-01-15T18:00", "18:00" or "1080" (minutes after midnight); undefined when it is none of them.
 * The reading on the clock counts; a zone written behind it is not used.
 */
export function profileTime(text: string): ProfileTime | undefined {
  const date = DATE.exec(text);
  if (date !== null) {
    const [year, month, day] = [Number(date[1]), Number(date[2]), Number(date[3])];
    const midnight = Date.UTC(year, month - 1, day);
    if (new Date(midnight).getUTCMonth() !== month - 1 || day === 0) return undefined;
    const minute = minuteOfDay(date[4], date[5], date[6]);
    return minute === undefined ? undefined : { style: 'date', minute: midnight / 60_000 + minute };
  }
  const clock = CLOCK.exec(text);
  if (clock !== null) {
    const minute = minuteOfDay(clock[1], clock[2], clock[3]);
    return minute === undefined ? undefined : { style: 'clock', minute };
  }
  return MINUTES.test(text) ? { style: 'minutes', minute: Number(text) } : undefined;
}

/** Five years: longer than a household is measured (common practice, no source). What goes beyond counts something else. */
const MOST_MINUTES = 5 * 366 * 1440;
/** Times since 1970 are above these from the spring of 1973 on, milliseconds too. */
const LEAST_SECONDS = 1e8;
const LEAST_MILLISECONDS = 1e11;

/** What a number looks like that is too large for minutes after midnight; undefined where it may be minutes. */
export function looksLikeInstead(minute: number, firstMinute: number): string | undefined {
  if (minute <= MOST_MINUTES) return undefined;
  if (minute >= LEAST_MILLISECONDS) return 'milliseconds since 1970';
  if (minute >= LEAST_SECONDS) return 'seconds since 1970';
  return firstMinute <= MOST_MINUTES ? 'seconds' : 'minutes since 1970';
}

function minuteOfDay(hours = '', minutes = '', seconds = '0'): number | undefined {
  const [h, m, s] = [Number(hours), Number(minutes), Number(seconds)];
  return h < 24 && m < 60 && s < 60 ? h * 60 + m + s / 60 : undefined;
}
