/** What matters as an Arquero table. */
import type { ColumnTable } from 'arquero';
import { spread, tableOf } from '../../trials/table-rows.ts';
import type { Matters, Swing } from './matters.ts';

/** One row per input, largest total index first; days, and shares of the variance. Null: hidden by the horizon. */
export function mattersTable({ inputs, ...head }: Matters): ColumnTable {
  return tableOf(
    inputs.map((input) => ({
      alternative: head.alternativeId,
      alternativeTitle: head.alternativeTitle,
      strategy: head.strategyId,
      strategyTitle: head.strategyTitle,
      input: input.id,
      inputTitle: input.title,
      isValue: input.isValue,
      low: input.low,
      high: input.high,
      ...swing('nineInTen', input.nineInTen),
      ...swing('median', input.median),
      ...spread('firstOrder', input.firstOrder),
      ...spread('total', input.total),
    })),
  );
}

function swing(name: string, { lowDays, highDays, differenceDays }: Swing) {
  return {
    [`${name}LowDays`]: lowDays,
    [`${name}HighDays`]: highDays,
    ...spread(`${name}DifferenceDays`, differenceDays),
  };
}
