/** The survival chart in numbers. */
import { intervalCell, percent, reachCell, type StrategySummary } from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import { counted } from './counted.ts';
import type { DataTable } from './data-table.ts';

export function curvesTable(strategies: readonly StrategySummary[], horizonDays: number): DataTable {
  const reach = strategies[0]?.reach.map((r) => r.days) ?? [];
  const number = true;
  return {
    caption:
      'Time the essentials hold, rounded down, with 95 % intervals; and the share of outages that reach so many days.',
    columns: [
      { name: 'Strategy' },
      { name: 'Nine in ten reach', number },
      { name: '95 % interval', number },
      { name: 'Half reach', number },
      { name: '95 % interval', number },
      ...reach.map((days) => ({ name: `On after ${counted(days, 'day')}`, number })),
      { name: 'Still on at the end', number },
    ],
    rows: strategies.map((s) => [
      s.strategyTitle,
      reachCell(s.nineInTenDays.value, horizonDays),
      intervalCell(s.nineInTenDays, horizonDays),
      reachCell(s.medianDays.value, horizonDays),
      intervalCell(s.medianDays, horizonDays),
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
    survival: curve.survival[i]!,
    low: curve.low[i]!,
    high: curve.high[i]!,
  }));
}
