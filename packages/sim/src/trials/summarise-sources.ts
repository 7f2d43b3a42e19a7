/** What came back besides the panels: figures of one alternative and strategy. MODEL.md E1–E6. */
import { rechargeFromCutOff } from '../step/recharge.ts';
import { firstMinutesTable } from './first-minutes.ts';
import { meanWhereItHappened } from './mean-where-it-happened.ts';
import { nineInTenAndMedian } from './quantile.ts';
import type { GeneratorSummary, SourcesSummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';

/** Undefined where the alternative has no source. */
export function summariseSources(
  outline: StudyOutline,
  alternative: number,
  column: (name: string) => Float64Array,
): SourcesSummary | undefined {
  const household = outline.scenario.alternatives[alternative]?.household;
  const sources = household?.sources;
  if (household === undefined || sources === undefined) return undefined;
  const mean = (name: string) => meanWhereItHappened(column(name)) ?? 0;
  return {
    sourceInKWh: mean('sourceInWh') / 1000,
    gridHours: mean('gridMinutes') / 60,
    generator:
      sources.generator === undefined
        ? undefined
        : {
            hours: mean('generatorMinutes') / 60,
            starts: mean('generatorStarts'),
            trips: mean('generatorTrips'),
            fuelL: mean('fuelUsedL'),
            fuelOnHandL: sources.generator.tankL + sources.generator.cansL,
            ...fuelDays(column('fuelGoneMinute'), outline.horizonDays),
          },
    recharge: rechargeFromCutOff(household),
  };
}

function fuelDays(
  goneMinute: Float64Array,
  horizonDays: number,
): Pick<GeneratorSummary, 'nineInTenFuelDays' | 'medianFuelDays'> {
  const { nineInTenDays, medianDays } = nineInTenAndMedian(firstMinutesTable(goneMinute, horizonDays));
  return { nineInTenFuelDays: nineInTenDays, medianFuelDays: medianDays };
}
