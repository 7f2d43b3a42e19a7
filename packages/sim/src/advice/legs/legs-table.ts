import type { ColumnTable } from 'arquero';
import { tableOf } from '../../trials/table-rows.ts';
import type { LegsAnswer } from './legs-answer.ts';

/** The panel schedule: one row per circuit, leg by leg, 240 V last. */
export function legsTable({ legs, across }: LegsAnswer): ColumnTable {
  const rows = [
    ...legs.flatMap(({ leg, unitId, circuits }) =>
      circuits.map((circuit) => ({ leg, unit: unitId, ...circuit })),
    ),
    ...across.map((circuit) => ({ leg: 'both', unit: null, ...circuit })),
  ];
  return tableOf(rows.map(({ id, ...row }) => ({ circuit: id, ...row })));
}
