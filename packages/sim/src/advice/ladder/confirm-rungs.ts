/** What the chosen rungs gain on draws that had no say in choosing them. */
import { streamsOf } from '../../chance/streams.ts';
import type { Ladder, Scenario } from '../../scenario/scenario.ts';
import { compareRuntimes, type RuntimeComparison } from '../../trials/compare-runtimes.ts';
import type { Estimate } from '../../trials/study-summary.ts';
import { toldOf } from '../told.ts';
import { meanDays } from '../reach.ts';
import { priceOf } from './baskets.ts';
import type { Climb } from './climb.ts';
import type { AskCells } from './ladder-cells.ts';
import type { BasketInstead, LadderRung, LadderStand } from './ladder-answer.ts';
import type { Standing } from './standing.ts';

export interface Confirmed {
  readonly start: LadderStand;
  readonly rungs: readonly LadderRung[];
  readonly other: BasketInstead | null;
}

/** @param other a combination to hold against the ladder's end */
export async function confirmRungs(
  scenario: Scenario,
  ladder: Ladder,
  climbed: Climb,
  other: Standing | undefined,
  ask: AskCells,
  seed: string,
): Promise<Confirmed> {
  const standings = [climbed.start, ...climbed.rungs.map((rung) => rung.to), ...(other ? [other] : [])];
  const runtimes = await ask(standings);
  const chance = streamsOf(seed, 0)('advice/ladder');
  const compared = compareRuntimes(runtimes, ladder.confidence, scenario.outage.horizonDays, chance);
  const stand = (title: string, at: number): LadderStand => ({
    title,
    strategyId: standings[at]!.strategyId,
    strategyTitle: ladder.household.strategies.find((s) => s.id === standings[at]!.strategyId)!.title,
    days: compared.reached(at),
    meanDays: meanDays(runtimes[at]!.times),
  });
  return {
    start: stand(ladder.startTitle, 0),
    rungs: climbed.rungs.map(({ taken, price, to }, r) => {
      const gain = compared.gain(r, r + 1);
      const steps = taken.map((at) => ladder.steps[at]!);
      return {
        ...stand(steps.map((step) => step.title).join('; then '), r + 1),
        stepIds: steps.map((step) => step.id),
        price,
        paid: priceOf(ladder, to.counts),
        gainDays: gain.days,
        gainMeanDays: gain.meanDays,
        pricePerDay: pricePerDay(price, gain.days),
        told: toldOf(gain),
      };
    }),
    other: other === undefined ? null : basketInstead(ladder, other, compared, standings.length - 1),
  };
}

function basketInstead(
  ladder: Ladder,
  other: Standing,
  compared: RuntimeComparison,
  at: number,
): BasketInstead {
  const gain = compared.gain(at - 1, at);
  return {
    stepTitles: ladder.steps.flatMap(({ title }, i) => {
      const count = other.counts[i]!;
      return count === 0 ? [] : count === 1 ? title : `${title} (${count} times)`;
    }),
    paid: priceOf(ladder, other.counts),
    days: compared.reached(at),
    gainDays: gain.days,
    gainMeanDays: gain.meanDays,
  };
}

function pricePerDay(price: number, { value }: Estimate): number | null {
  return price === 0 || value === null || value <= 0 ? null : price / value;
}
