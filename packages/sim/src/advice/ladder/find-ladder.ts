/** What to buy next, and after that: the order that brings the most days for the money. MODEL.md §22. */
import type { Ladder, Scenario } from '../../scenario/scenario.ts';
import { freshSeed } from '../fresh-seed.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import type { AskStudy } from '../ask-study.ts';
import { affordable, nextBaskets, priceOf, sameCounts } from './baskets.ts';
import { climb, type Climb } from './climb.ts';
import { confirmRungs } from './confirm-rungs.ts';
import type { LadderAnswer, LadderRung, StepLeft } from './ladder-answer.ts';
import { createCells } from './ladder-cells.ts';
import { lookAtAll, standingsOfAll } from './look-at-all.ts';
import { createStandings } from './standing.ts';

/** What is asked of the ladder of a scenario. */
export interface LadderQuestion {
  readonly seed: string;
  /** Draws on which the order is chosen, ≥ 1. */
  readonly choosingDraws: number;
  /** Fresh draws on which every rung's gain is told, ≥ 1. */
  readonly draws: number;
  /** Instead of the scenario's. */
  readonly budget?: number | undefined;
  /** Instead of the scenario's, 0 < confidence < 1. */
  readonly confidence?: number | undefined;
  /** Every combination is looked at when that is no more than so many households times strategies. */
  readonly mostRuns?: number | undefined;
}

const MOST_RUNS = 200;

/**
 * Finds the order of steps that brings the most days for the money; tells its gains on fresh draws.
 *
 * @throws RangeError when the scenario has no ladder
 */
export async function findLadder(
  scenario: Scenario,
  question: LadderQuestion,
  ask: AskStudy,
): Promise<LadderAnswer> {
  if (scenario.ladder === undefined) throw new RangeError('the scenario has no ladder');
  const confidence = question.confidence ?? scenario.ladder.confidence;
  const budget = question.budget ?? scenario.ladder.budget;
  const ladder: Ladder = { ...scenario.ladder, confidence, budget };
  const { horizonDays } = scenario.outage;
  const choosing = { seed: question.seed, draws: question.choosingDraws };
  const standings = createStandings(ladder, createCells(ask, scenario, ladder, choosing));
  const limits = { budget, mostRuns: question.mostRuns ?? MOST_RUNS, horizonDays };
  const everyOne = await standingsOfAll(ladder, standings, limits);
  const fresh = { seed: freshSeed(question.seed), draws: question.draws };
  const freshCells = createCells(ask, scenario, ladder, fresh);
  const takenBack: TakenBack[] = [];
  for (;;) {
    const climbed = await climb(ladder, standings, horizonDays, budget, ({ counts }) =>
      takenBack.some((back) => sameCounts(back.counts, counts)),
    );
    const all = everyOne && lookAtAll(ladder, climbed, everyOne, limits);
    const end = climbed.rungs.at(-1)?.to ?? climbed.start;
    const isOther = all !== undefined && (all.best.days ?? horizonDays) > (end.days ?? horizonDays);
    const other = isOther ? all.best : undefined;
    const confirmed = await confirmRungs(scenario, ladder, climbed, other, freshCells, fresh.seed);
    const lost = confirmed.rungs.findIndex(({ told }) => told === 'a loss');
    if (lost >= 0) {
      takenBack.push({ rung: confirmed.rungs[lost]!, counts: climbed.rungs[lost]!.to.counts });
      continue;
    }
    return {
      provenance: adviceProvenance(scenario, question),
      freshSeed: fresh.seed,
      horizonDays,
      currency: ladder.currency,
      budget: budget ?? null,
      confidence,
      start: confirmed.start,
      rungs: confirmed.rungs,
      ended: climbed.ended,
      left: stepsLeft(ladder, climbed, budget, takenBack),
      takenBack: takenBack.map(({ rung }) => rung),
      all:
        all === undefined
          ? null
          : {
              combinations: all.combinations,
              mostBehindDays: Math.max(0, ...all.behindDays),
              other: confirmed.other,
            },
    };
  }
}

/** A rung that loses on the fresh draws, and where it led to: how often each step was taken. */
interface TakenBack {
  readonly rung: LadderRung;
  readonly counts: readonly number[];
}

function stepsLeft(
  ladder: Ladder,
  climbed: Climb,
  budget: number | undefined,
  takenBack: readonly TakenBack[],
): StepLeft[] {
  const { counts } = climbed.rungs.at(-1)?.to ?? climbed.start;
  const baskets = nextBaskets(ladder, counts);
  return ladder.steps.flatMap((step, i) => {
    if (counts[i]! >= step.atMost) return [];
    const basket = baskets.find(({ taken }) => taken.at(-1) === i);
    const within = basket === undefined || affordable(priceOf(ladder, basket.counts), budget);
    const wasBack = takenBack.some(({ rung }) => rung.stepIds.at(-1) === step.id);
    const why = (): StepLeft['why'] => {
      if (!within) return 'over the budget';
      if (climbed.ended === 'horizon') return 'not needed within the horizon';
      return wasBack ? 'taken back' : 'no gain found';
    };
    return { id: step.id, title: step.title, price: step.price, why: why() };
  });
}
