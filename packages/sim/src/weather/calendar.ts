/** Days of the common year: what monthly normals and weather years are laid out by. */

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export const DAYS_PER_YEAR = 365;

/** Day of the common year on which each month starts, 0…334, January first. */
export const MONTH_STARTS: readonly number[] = MONTH_LENGTHS.map((_, month) =>
  MONTH_LENGTHS.slice(0, month).reduce((sum, days) => sum + days, 0),
);

/** Days in a month of the common year. @param month 0…11. */
export const monthLength = (month: number): number => MONTH_LENGTHS[month]!;

/** The month, 0…11, of a day of the common year, 0…364. */
export function monthOfDay(dayOfYear: number): number {
  let month = 11;
  while (MONTH_STARTS[month]! > dayOfYear) month--;
  return month;
}

/**
 * Day of the common year, 0…364; 29 February counts as the 28th.
 *
 * @param epochDay whole days since 1970-01-01, in whatever local time the caller keeps.
 */
export function dayOfYear(epochDay: number): number {
  const date = new Date(epochDay * 86_400_000);
  const month = date.getUTCMonth();
  return MONTH_STARTS[month]! + Math.min(date.getUTCDate(), MONTH_LENGTHS[month]!) - 1;
}
