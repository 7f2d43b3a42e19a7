/** Needs and strategies in numbers. */
import { intervalCell, reachCell, type StrategySummary } from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import type { DataTable } from './data-table.ts';
import { enduranceOf } from './need-endurance.ts';

export function needsTable(strategies: readonly StrategySummary[], horizonDays: number): DataTable {
  const number = true;
  const lines = strategies.flatMap((s) => enduranceOf(s).map((endurance) => ({ s, endurance })));
  return {
    caption:
      'Time that a need is met, with 95 % intervals, and hours it goes unmet in a mean outage, to the end of the simulation.',
    columns: [
      { name: 'Strategy' },
      { name: 'Need' },
      { name: 'Nine in ten reach', number },
      { name: '95 % interval', number },
      { name: 'Half reach', number },
      { name: 'Hours unmet', number },
    ],
    rows: lines.map(
      ({ s, endurance: { need, nineInTenDays: n, medianDays: m, meanMinutesUnmet: unmet } }) => [
        s.strategyTitle,
        need,
        reachCell(n.value, horizonDays),
        intervalCell(n, horizonDays),
        reachCell(m.value, horizonDays),
        Number.isNaN(unmet) ? '' : (unmet / 60).toFixed(1),
      ],
    ),
    exact: lines.map(
      ({ s, endurance: { need, nineInTenDays: n, medianDays: m, meanMinutesUnmet: unmet } }) => ({
        ...cellColumns(s),
        need,
        nineInTenDays: n.value,
        low: n.low,
        high: n.high,
        medianDays: m.value,
        meanMinutesUnmet: Number.isNaN(unmet) ? null : unmet,
      }),
    ),
  };
}
