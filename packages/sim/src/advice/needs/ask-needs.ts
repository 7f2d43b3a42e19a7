/** How each need fares under each strategy, over the study's own draws. MODEL.md §19. */
import { mean, quantileSorted } from 'simple-statistics';
import type { Scenario } from '../../scenario/scenario.ts';
import type { NeedSpec } from '../../scenario/schema-needs.ts';
import { firstMinutesTable } from '../../trials/first-minutes.ts';
import { nineInTenAndMedian } from '../../trials/quantile.ts';
import { wilson } from '../../trials/wilson.ts';
import type { AskDraws } from '../draw-job.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import { failsWhen, needTitle, needUnits } from './need-words.ts';
import { scenarioNeeds } from './needs-job.ts';
import type { NeedFigures, NeedsAnswer, Spread } from './needs.ts';

/** What is asked about the needs of a household. */
export interface NeedsQuestion {
  readonly seed: string;
  /** Draws 0 to draws - 1, ≥ 1: those of a study with the same seed. */
  readonly draws: number;
  readonly onProgress?: ((done: number, draws: number) => void) | undefined;
}

/**
 * Finds when each need first fails under every strategy, and for how long it is unmet.
 *
 * @throws RangeError when the scenario has no needs
 */
export async function askNeeds(
  scenario: Scenario,
  { seed, draws, onProgress }: NeedsQuestion,
  ask: AskDraws,
): Promise<NeedsAnswer> {
  const needs = scenarioNeeds(scenario);
  if (needs.length === 0) throw new RangeError('no needs: no circuit says what it serves');
  const { columns } = await ask({ job: 'needs', scenario, seed }, draws, (done) => onProgress?.(done, draws));
  const { horizonDays } = scenario.outage;
  const strategies = scenario.alternatives[0]!.household.strategies;
  const cells = strategies.length * scenario.alternatives.length;
  const columnAt = (cell: number) => (name: string) =>
    Float64Array.from({ length: draws }, (_, d) => columns[name]![d * cells * needs.length + cell]!);
  return {
    provenance: adviceProvenance(scenario, { seed, draws }),
    horizonDays,
    needs: needs.map((need) => ({
      id: need.id,
      title: needTitle(need),
      measure: need.measure,
      failsWhen: failsWhen(need),
      ...needUnits(need),
    })),
    figures: needs.flatMap((need, n) =>
      scenario.alternatives.flatMap((alternative, a) =>
        strategies.map((strategy, s): NeedFigures => ({
          alternativeId: alternative.id,
          alternativeTitle: alternative.title,
          strategyId: strategy.id,
          strategyTitle: strategy.title,
          needId: need.id,
          ...figuresOf(need, columnAt((a * strategies.length + s) * needs.length + n), horizonDays),
        })),
      ),
    ),
  };
}

function figuresOf(need: NeedSpec, column: (name: string) => Float64Array, horizonDays: number) {
  const first = column('firstMinute');
  const never = first.map((minute) => (Number.isNaN(minute) ? 1 : 0));
  const inHours = (name: string) => spreadOf(column(name).map((minutes) => minutes / 60));
  return {
    neverFails: wilson(
      never.reduce((sum, x) => sum + x, 0),
      never.length,
    ),
    ...nineInTenAndMedian(firstMinutesTable(first, horizonDays)),
    hoursUnmet: inHours('minutes'),
    longestHours: inHours('longestMinutes'),
    depth: need.measure === 'power' ? null : spreadOf(column('depth')),
    extreme: extremeOf(need, column('extreme')),
    litresPerPersonPerDay:
      need.measure === 'water' ? mean(Array.from(column('litresRaised'))) / need.persons / horizonDays : null,
  };
}

function spreadOf(values: Float64Array): Spread {
  const sorted = Array.from(values).sort((a, b) => a - b);
  return {
    mean: mean(sorted),
    median: quantileSorted(sorted, 0.5),
    nineInTen: quantileSorted(sorted, 0.9),
  };
}

/** The bad tenth lies at the warm end for food and coolth, at the low end for warmth and water. */
function extremeOf({ measure }: NeedSpec, values: Float64Array): NeedFigures['extreme'] {
  if (measure === 'power') return null;
  const sorted = Array.from(values).sort((a, b) => a - b);
  const badEnd = measure === 'cold' || measure === 'coolth' ? 0.9 : 0.1;
  return { median: quantileSorted(sorted, 0.5), oneInTen: quantileSorted(sorted, badEnd) };
}
