/** Months as a reader says them: [12, 1, 2] → "December to February", [3, 7] → "March, July". */
import { listed } from '@rideout/sim';

const NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

export function monthsText(months: readonly number[]): string {
  return monthsJoined(months, (names) => names.join(', '));
}

/** The same within a sentence: [3, 7] → "March or July". */
export function anyOfMonths(months: readonly number[]): string {
  return monthsJoined(months, (names) => listed(names, 'or'));
}

function monthsJoined(months: readonly number[], joined: (names: readonly string[]) => string): string {
  if (months.length === 12) return 'any month';
  const name = (month: number) => NAMES[month - 1] ?? `month ${month}`;
  const running = months.every((m, i) => i === 0 || m === (months[i - 1]! % 12) + 1);
  if (months.length > 2 && running) return `${name(months[0]!)} to ${name(months[months.length - 1]!)}`;
  return joined(months.map(name));
}
