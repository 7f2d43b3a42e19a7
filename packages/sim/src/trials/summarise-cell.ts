import { firstMinutesTable } from './first-minutes.ts';
import { MINUTES_PER_DAY } from './minutes-per-day.ts';
import { meanWhereItHappened } from './mean-where-it-happened.ts';
import type { OutcomeCells } from './outcome-cells.ts';
import { END_CAUSES, OUTCOME_COLUMNS } from './outcome-rows.ts';
import type { OutcomeColumn } from './outcome-rows.ts';
import { nineInTenAndMedian } from './quantile.ts';
import type { StrategySummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { summariseSources } from './summarise-sources.ts';
import { kaplanMeier, survivalCurve } from './survival.ts';
import { wilson } from './wilson.ts';

/** Days whose chance of being reached is told. */
const ASKED_DAYS = [1, 3, 7, 14];
const TIERS = [1, 2, 3, 4, 5];
/** Columns that name or date a row: a mean of them says nothing. */
const LABELS: readonly OutcomeColumn[] = [
  'draw',
  'alternative',
  'strategy',
  'startEpochMinute',
  'endCause',
  'endUnit',
];

/** The figures of one alternative and strategy, by their positions in the outline. */
export function summariseCell(
  outline: StudyOutline,
  cells: OutcomeCells,
  alternative: number,
  strategy: number,
): StrategySummary {
  const column = (name: string) => cells.column(alternative, strategy, name);
  const meanKWh = (name: string) => (meanWhereItHappened(column(name)) ?? 0) / 1000;
  const runtime = column('runtimeMinutes');
  const censored = column('censored');
  const table = kaplanMeier(runtime, censored);
  const sources = summariseSources(outline, alternative, column);
  return {
    alternativeId: outline.alternatives[alternative]!.id,
    alternativeTitle: outline.alternatives[alternative]!.title,
    strategyId: outline.strategies[strategy]!.id,
    strategyTitle: outline.strategies[strategy]!.title,
    draws: runtime.length,
    censoredDraws: count(censored, (c) => c === 1),
    curve: survivalCurve(table, MINUTES_PER_DAY),
    ...nineInTenAndMedian(table),
    reach: chancesOfReaching(runtime, outline.horizonDays),
    ends: endShares(outline, column('endCause'), column('endUnit')),
    servedKWhByTier: TIERS.map((tier) => meanKWh(`servedTier${tier}Wh`)),
    unservedKWhByTier: TIERS.map((tier) => meanKWh(`unservedTier${tier}Wh`)),
    meanByColumn: Object.fromEntries(
      OUTCOME_COLUMNS.filter((name) => !LABELS.includes(name)).map((name) => [
        name,
        meanWhereItHappened(column(name)),
      ]),
    ),
    needs: outline.needs.map((need) => needEndurance(outline, need, column)),
    ...(sources === undefined ? {} : { sources }),
  };
}

/** Share of draws with T ≥ each asked-for day; a run cut off at the horizon reaches the horizon. */
function chancesOfReaching(runtime: Float64Array, horizonDays: number): StrategySummary['reach'] {
  return ASKED_DAYS.filter((days) => days <= horizonDays).map((days) => ({
    days,
    chance: wilson(
      count(runtime, (minutes) => minutes >= days * MINUTES_PER_DAY),
      runtime.length,
    ),
  }));
}

/** Why runs ended, commonest first; equally common ones in the order of END_CAUSES, then of the units. */
function endShares(
  outline: StudyOutline,
  endCause: Float64Array,
  endUnit: Float64Array,
): StrategySummary['ends'] {
  const units = [NaN, ...outline.unitIds.keys()];
  const shares = END_CAUSES.flatMap((cause, c) =>
    units.map((unit) => {
      const draws = endCause.filter((value, i) => value === c && Object.is(endUnit[i], unit)).length;
      return { cause, unitId: outline.unitIds[unit] ?? null, fraction: draws / endCause.length };
    }),
  );
  return shares.filter((share) => share.fraction > 0).sort((a, b) => b.fraction - a.fraction);
}

function needEndurance(
  outline: StudyOutline,
  need: string,
  column: (name: string) => Float64Array,
): StrategySummary['needs'][number] {
  return {
    need,
    ...nineInTenAndMedian(firstMinutesTable(column(`need:${need}:firstMinute`), outline.horizonDays)),
    meanMinutesUnmet: meanWhereItHappened(column(`need:${need}:minutes`)) ?? 0,
  };
}

function count(values: Float64Array, holds: (value: number) => boolean): number {
  let n = 0;
  for (let i = 0; i < values.length; i += 1) if (holds(values[i]!)) n += 1;
  return n;
}
