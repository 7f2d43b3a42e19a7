/** Charts over minutes, in numbers: a row an hour, or six hours, or a day, as long as the part looked at asks for. */
import type { DataTable } from './data-table.ts';
import { momentText } from './local-clock.ts';
import { minuteBuckets, type Bucket } from './minute-buckets.ts';
import type { OutageView } from './outage-view.ts';

export interface MinutesColumn {
  readonly name: string;
  /** Its name in the file. */
  readonly id: string;
  readonly values: ArrayLike<number>;
  readonly take: 'mean' | 'min' | 'max';
  readonly show: (value: number) => string;
}

const PERIODS = [60, 360, 1440];
const ROWS = 30;

export function minutesTable(outage: OutageView, what: string, columns: readonly MinutesColumn[]): DataTable {
  const { from, to, trace, clock } = outage;
  const period = PERIODS.find((minutes) => (to - from) / minutes <= ROWS) ?? PERIODS[PERIODS.length - 1]!;
  const buckets = columns.map(({ values }) =>
    minuteBuckets(values, from, to, Math.ceil((to - from) / period)),
  );
  const times = buckets[0] ?? [];
  const value = (row: number, column: number): number => {
    const bucket: Bucket = buckets[column]![row]!;
    return bucket[columns[column]!.take];
  };
  return {
    caption: `${what} In each row, ${period === 60 ? 'an hour' : `${period / 60} hours`} from the time given.`,
    columns: [{ name: 'From' }, ...columns.map(({ name }) => ({ name, number: true }))],
    rows: times.map((time, row) => [
      momentText(trace, time.from, clock),
      ...columns.map(({ show }, column) => show(value(row, column))),
    ]),
    exact: times.map((time, row) => ({
      minute: time.from,
      localTime: momentText(trace, time.from, 24),
      ...Object.fromEntries(columns.map(({ id }, column) => [id, value(row, column)])),
    })),
  };
}
