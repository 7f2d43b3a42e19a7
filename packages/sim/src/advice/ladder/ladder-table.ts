import type { ColumnTable } from 'arquero';
import { spread, tableOf } from '../../trials/table-rows.ts';
import type { LadderAnswer } from './ladder-answer.ts';

const UNKNOWN = { value: null, low: null, high: null };

/** One row per rung, the start as rung 0: what is taken, its price, days reached and gained. */
export function ladderTable({ start, rungs, currency, confidence }: LadderAnswer): ColumnTable {
  const first = {
    ...start,
    stepIds: [],
    price: 0,
    paid: 0,
    gainDays: UNKNOWN,
    gainMeanDays: UNKNOWN,
    pricePerDay: null,
    told: null,
  };
  return tableOf(
    [first, ...rungs].map((rung, i) => ({
      rung: i,
      steps: rung.stepIds.join(' '),
      title: rung.title,
      currency,
      price: rung.price,
      paid: rung.paid,
      strategy: rung.strategyId,
      strategyTitle: rung.strategyTitle,
      confidence,
      ...spread('days', rung.days),
      meanDays: rung.meanDays,
      ...spread('gainDays', rung.gainDays),
      ...spread('gainMeanDays', rung.gainMeanDays),
      pricePerDay: rung.pricePerDay,
      told: rung.told,
    })),
  );
}
