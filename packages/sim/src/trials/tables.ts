/**
 * The figures of a study as Arquero tables. Ids and titles stand beside each other; "did not happen" and "hidden by
 * the horizon" are null. Columns are plain arrays, one value per row; TABLES.md says what each holds.
 */
import { table } from 'arquero';
import type { ColumnTable } from 'arquero';
import { columnOf, outcomeCells } from './outcome-cells.ts';
import { END_CAUSES } from './outcome-rows.ts';
import type { OutcomeRows } from './outcome-rows.ts';
import { DOWN_COLUMNS } from './place-units.ts';
import type { StrategySummary, StudySummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { spread, tableOf, type Cell, type Row } from './table-rows.ts';

/**
 * One row per draw, alternative and strategy, in that order whatever the order of `rows`. Columns: those of
 * `OUTCOME_COLUMNS` and the needs', with `alternative`, `strategy` and `endUnit` as ids, `endCause` in words,
 * `censored` as true or false, minutes down by the unit's id, and the titles added.
 *
 * @throws RangeError as `outcomeCells`.
 */
export function outcomesTable(outline: StudyOutline, rows: OutcomeRows): ColumnTable {
  const { order } = outcomeCells(outline, rows);
  const inOrder = (name: string, cell: (value: number) => Cell): Cell[] => {
    const values = columnOf(rows, name);
    return Array.from(order, (row) => cell(values[row]!));
  };
  const columns: Record<string, Cell[]> = {};
  for (const name of Object.keys(rows.columns)) {
    const heading = headingOf(outline, name);
    if (heading === undefined) continue;
    columns[heading] = inOrder(name, wordedAs(outline, name));
    if (name === 'alternative')
      columns['alternativeTitle'] = inOrder(name, (a) => outline.alternatives[a]!.title);
    if (name === 'strategy') columns['strategyTitle'] = inOrder(name, (s) => outline.strategies[s]!.title);
  }
  return table(columns);
}

/** Undefined: of a unit that the study does not have. */
function headingOf({ unitIds }: StudyOutline, column: string): string | undefined {
  const at = DOWN_COLUMNS.findIndex((name) => name === column);
  if (at < 0) return column;
  return unitIds[at] && `unit.${unitIds[at]}.downMinutes`;
}

function wordedAs(outline: StudyOutline, column: string): (value: number) => Cell {
  if (column === 'alternative') return (a) => outline.alternatives[a]!.id;
  if (column === 'strategy') return (s) => outline.strategies[s]!.id;
  if (column === 'endCause') return (c) => END_CAUSES[c] ?? null;
  if (column === 'endUnit') return (u) => outline.unitIds[u] ?? null;
  if (column === 'censored') return (c) => c === 1;
  return (value) => (Number.isNaN(value) ? null : value);
}

/** One row per alternative and strategy: days reached, chances, energies and means, each estimate with its limits. */
export function summaryTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.strategies.map((strategy) => ({
      ...named(strategy),
      draws: strategy.draws,
      censoredDraws: strategy.censoredDraws,
      ...spread('nineInTenDays', strategy.nineInTenDays),
      ...spread('medianDays', strategy.medianDays),
      ...merge(strategy.reach.map(({ days, chance }) => spread(`reach${days}Days`, chance))),
      ...byTier('served', strategy.servedKWhByTier),
      ...byTier('unserved', strategy.unservedKWhByTier),
      ...merge(Object.entries(strategy.meanByColumn).map(([name, value]) => ({ [`mean:${name}`]: value }))),
    })),
  );
}

/** One row per step of every survival curve. */
export function survivalTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.strategies.flatMap((strategy) =>
      strategy.curve.day.map((day, i) => ({
        ...named(strategy),
        day,
        survival: strategy.curve.survival[i]!,
        low: strategy.curve.low[i]!,
        high: strategy.curve.high[i]!,
      })),
    ),
  );
}

/** One row per alternative, strategy, cause and unit that ended a run. */
export function endsTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.strategies.flatMap((strategy) =>
      strategy.ends.map(({ cause, unitId, fraction }) => ({
        ...named(strategy),
        cause,
        unit: unitId,
        fraction,
      })),
    ),
  );
}

/** One row per alternative, strategy and need. */
export function needsTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.strategies.flatMap((strategy) =>
      strategy.needs.map(({ need, nineInTenDays, medianDays, meanMinutesUnmet }) => ({
        ...named(strategy),
        need,
        ...spread('nineInTenDays', nineInTenDays),
        ...spread('medianDays', medianDays),
        meanMinutesUnmet,
      })),
    ),
  );
}

/** One row per alternative with a source and strategy: energy that came in, hours, starts, litres, fuel days. */
export function sourcesTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.strategies.flatMap((strategy) => {
      const { sources } = strategy;
      if (sources === undefined) return [];
      const { generator, recharge } = sources;
      const none = { value: null, low: null, high: null };
      return [
        {
          ...named(strategy),
          sourceInKWh: sources.sourceInKWh,
          gridHours: sources.gridHours,
          generatorHours: generator?.hours ?? null,
          generatorStarts: generator?.starts ?? null,
          generatorTrips: generator?.trips ?? null,
          fuelL: generator?.fuelL ?? null,
          fuelOnHandL: generator?.fuelOnHandL ?? null,
          ...spread('nineInTenFuelDays', generator?.nineInTenFuelDays ?? none),
          ...spread('medianFuelDays', generator?.medianFuelDays ?? none),
          rechargeOnGridHours: recharge.gridHours,
          rechargeOnGeneratorHours: recharge.generatorHours,
          rechargeOnVehicleHours: recharge.vehicleHours,
        },
      ];
    }),
  );
}

/** One row per paired comparison, first less second. */
export function differencesTable(summary: StudySummary): ColumnTable {
  return tableOf(
    summary.differences.map((d) => ({
      firstAlternative: d.first.alternativeId,
      firstStrategy: d.first.strategyId,
      secondAlternative: d.second.alternativeId,
      secondStrategy: d.second.strategyId,
      ...spread('meanDays', d.meanDays),
      ...spread('nineInTenDays', d.nineInTenDays),
      firstLongerFraction: d.firstLongerFraction,
      secondLongerFraction: d.secondLongerFraction,
    })),
  );
}

function named({ alternativeId, alternativeTitle, strategyId, strategyTitle }: StrategySummary): Row {
  return { alternative: alternativeId, alternativeTitle, strategy: strategyId, strategyTitle };
}

function byTier(name: string, kWh: readonly number[]): Row {
  return merge(kWh.map((value, i) => ({ [`${name}Tier${i + 1}KWh`]: value })));
}

function merge(parts: readonly Row[]): Row {
  return Object.assign({}, ...parts) as Row;
}
