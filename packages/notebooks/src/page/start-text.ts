/** The moment at which an outage begins, as a reader says it. */
import { clockTimesIn, type Look } from '../charts/look.ts';

const DATE = new Intl.DateTimeFormat('en-GB', {
  timeZone: 'UTC',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
});

/** "2026-01-15T18:00" → "15 January 2026 at 18:00"; what is no such moment stays as it is. */
export function startText(startLocal: string, clock: Look['clock']): string {
  const [date = '', time = ''] = startLocal.split('T');
  const day = dateText(date);
  return day === undefined ? startLocal : `${day} at ${clockTimesIn(time.slice(0, 5), clock)}`;
}

/** "2026-01-15" → "15 January 2026". */
export function dateText(date: string): string | undefined {
  const at = Date.parse(`${date}T00:00Z`);
  return Number.isNaN(at) ? undefined : DATE.format(at);
}
