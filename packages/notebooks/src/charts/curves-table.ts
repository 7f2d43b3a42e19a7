/** The survival chart in numbers. */
import { daysDown, daysInterval, percent, type StrategySummary } from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import { counted } from './counted.ts';
import type { DataTable } from './data-table.ts';

export function curvesTable(strategies: readonly StrategySummary[], horizonDays: number): DataTable {
  const reach = strategies[0]?.reach.map((r) => r.days) ?? [];
  const number = true;
  return {
    caption:
      'Days the essentials hold, rounded down, with 95 % intervals; and the share of outages that reach so many days.',
    columns: [
      { name: 'Strategy' },
      { name: 'Nine in ten reach (days)', number },
      { name: '95 % interval', number },
      { name: 'Half reach (days)', number },
      { name: '95 % interval', number },
      ...reach.map((days) => ({ name: `On after ${counted(days, 'day')}`, number })),
      { name: 'Still on at the end', number },
    ],
    rows: strategies.map((s) => [
      s.strategyTitle,
      daysDown(s.nineInTenDays.value, horizonDays),
      daysInterval(s.nineInTenDays, horizonDays),
      daysDown(s.medianDays.value, horizonDays),
      daysInterval(s.medianDays, horizonDays),
      ...s.reach.map((r) => percent(r.chance.value)),
      percent(s.censoredDraws / s.draws),
    ]),
    exact: strategies.flatMap(curveRows),
  };
}

/** For the file: the whole curve, one row a step. */
function curveRows(summary: StrategySummary) {
  const { curve } = summary;
  return curve.day.map((day, i) => ({
    ...cellColumns(summary),
    day,
    survival: withoutNoise(curve.survival[i]!),
    low: withoutNoise(curve.low[i]!),
    high: withoutNoise(curve.high[i]!),
  }));
}

/** A product of fractions misses 0.9 by its last bits: whoever reads the file for the first day below 0.9 is not to be misled. */
function withoutNoise(share: number): number {
  return Number(share.toFixed(12));
}
