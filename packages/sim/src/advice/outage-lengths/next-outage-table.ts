/** The next outage as an Arquero table. */
import type { ColumnTable } from 'arquero';
import { tableOf, type Row } from '../../trials/table-rows.ts';
import type { NextOutage } from './next-outage.ts';
import type { Bounds } from './ridden-out.ts';

/** One row per alternative and strategy; `Least` and `Most` differ by what the horizon hides. */
export function nextOutageTable({ figures, lengths }: NextOutage): ColumnTable {
  return tableOf(
    figures.map((f) => ({
      alternative: f.alternativeId,
      alternativeTitle: f.alternativeTitle,
      strategy: f.strategyId,
      strategyTitle: f.strategyTitle,
      ...bounds('riddenOut', f.riddenOut),
      ...bounds('hoursWithoutPerYear', f.hoursWithoutPerYear),
      ...bounds('notRiddenOutPerYear', f.notRiddenOutPerYear),
      outagesPerYear: lengths.perYear,
      outageHoursPerYear: lengths.hoursPerYear,
      lengthsFrom: lengths.source,
    })),
  );
}

function bounds(name: string, { least, most, low, high }: Bounds): Row {
  return { [`${name}Least`]: least, [`${name}Most`]: most, [`${name}Low`]: low, [`${name}High`]: high };
}
