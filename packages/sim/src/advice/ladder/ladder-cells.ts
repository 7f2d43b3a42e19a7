/** Runtimes of households on a ladder, asked for once and kept; every one meets the same draws. */
import { householdAfter } from '../../scenario/ladder-plan.ts';
import type { AlternativeSpec, Ladder, Scenario } from '../../scenario/scenario.ts';
import type { Runtimes } from '../../trials/bootstrap.ts';
import { outcomeCells, runtimesOf } from '../../trials/outcome-cells.ts';
import type { AskStudy, StudyQuestion } from '../ask-study.ts';

/** The household once each step was taken so often, living by one strategy. */
export interface Cell {
  readonly counts: readonly number[];
  readonly strategyId: string;
}

export type AskCells = (wanted: readonly Cell[]) => Promise<Runtimes[]>;

/** Steps that only bring a strategy leave the household as it is. */
export function householdKey(ladder: Ladder, counts: readonly number[]): string {
  return counts
    .map((count, i) => {
      const { brings, moves } = ladder.steps[i]!;
      return brings.length + moves.length === 0 ? 0 : count;
    })
    .join('-');
}

/** Each time one study of whatever is not known yet, every cell an alternative of its own with its one strategy. */
export function createCells(
  ask: AskStudy,
  scenario: Scenario,
  ladder: Ladder,
  question: StudyQuestion,
): AskCells {
  const known = new Map<string, Runtimes>();
  const keyOf = ({ counts, strategyId }: Cell) => `${strategyId}-${householdKey(ladder, counts)}`;
  return async (wanted) => {
    const missing = new Map(
      wanted.filter((cell) => !known.has(keyOf(cell))).map((cell) => [keyOf(cell), cell]),
    );
    if (missing.size > 0) {
      const alternatives = [...missing].map(([key, cell]) => alternativeOf(ladder, key, cell));
      const { outline, rows } = await ask(
        { ...scenario, ladder: undefined, alternatives },
        { ...question, rows: 'runtimes' },
      );
      const sorted = outcomeCells(outline, rows);
      [...missing.keys()].forEach((key, a) => known.set(key, runtimesOf(sorted, a, 0)));
    }
    return wanted.map((cell) => known.get(keyOf(cell))!);
  };
}

function alternativeOf(ladder: Ladder, id: string, { counts, strategyId }: Cell): AlternativeSpec {
  const household = householdAfter(ladder.household, ladder, counts);
  const strategies = household.strategies.filter((strategy) => strategy.id === strategyId);
  return { id, title: id, household: { ...household, strategies } };
}
