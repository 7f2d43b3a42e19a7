/** Needs as an Arquero table. */
import type { ColumnTable } from 'arquero';
import { spread, tableOf, type Row } from '../../trials/table-rows.ts';
import type { NeedsAnswer, Spread } from './needs.ts';

/** One row per need, alternative and strategy. Null days: at least the horizon. */
export function needsEnduranceTable({ needs, figures }: NeedsAnswer): ColumnTable {
  const of = (id: string) => needs.find((need) => need.id === id)!;
  return tableOf(
    figures.map((f) => ({
      need: f.needId,
      needTitle: of(f.needId).title,
      measure: of(f.needId).measure,
      failsWhen: of(f.needId).failsWhen.replaceAll('\u00a0', ' '),
      alternative: f.alternativeId,
      alternativeTitle: f.alternativeTitle,
      strategy: f.strategyId,
      strategyTitle: f.strategyTitle,
      ...spread('neverFails', f.neverFails),
      ...spread('nineInTenDays', f.nineInTenDays),
      ...spread('medianDays', f.medianDays),
      ...spreadRow('hoursUnmet', f.hoursUnmet),
      ...spreadRow('longestHours', f.longestHours),
      ...spreadRow('depth', f.depth),
      depthUnit: of(f.needId).depthUnit,
      extremeMedian: f.extreme?.median ?? null,
      extremeOneInTen: f.extreme?.oneInTen ?? null,
      extremeUnit: of(f.needId).extremeUnit,
      litresPerPersonPerDay: f.litresPerPersonPerDay,
    })),
  );
}

function spreadRow(name: string, figures: Spread | null): Row {
  return {
    [`${name}Mean`]: figures?.mean ?? null,
    [`${name}Median`]: figures?.median ?? null,
    [`${name}NineInTen`]: figures?.nineInTen ?? null,
  };
}
