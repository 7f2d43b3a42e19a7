/** Up the ladder: always what brings the most days for its money, free steps first; two steps where one alone gains nothing. */
import type { LadderPlan } from '../../scenario/ladder-plan.ts';
import { affordable, nextBaskets, nextPairs, priceOf, type Basket } from './baskets.ts';
import type { AskStandings, Standing } from './standing.ts';

/** One basket taken. */
export interface Climbed {
  /** Positions of the steps, in order; what a step needed stands before it. */
  readonly taken: readonly number[];
  readonly price: number;
  readonly to: Standing;
}

export interface Climb {
  readonly start: Standing;
  readonly rungs: readonly Climbed[];
  /** Why there is no further rung. */
  readonly ended: 'all taken' | 'no gain' | 'budget' | 'horizon';
}

interface Gain {
  readonly days: number;
  readonly meanDays: number;
}

/** Differences below this are rounding, not time. */
const NOTHING_DAYS = 1e-9;

/** @param isRefused baskets that are not to be taken */
export async function climb(
  plan: LadderPlan,
  ask: AskStandings,
  horizonDays: number,
  budget: number | undefined,
  isRefused: (basket: Basket) => boolean = () => false,
): Promise<Climb> {
  const [start] = await ask([plan.steps.map(() => 0)]);
  const rungs: Climbed[] = [];
  const isWithin = ({ counts }: Basket) => affordable(priceOf(plan, counts), budget);
  let at = start!;
  for (;;) {
    const ended = (why: Climb['ended']): Climb => ({ start: start!, rungs, ended: why });
    if (at.days === null && at.meanDays >= horizonDays - NOTHING_DAYS) return ended('horizon');
    const all = nextBaskets(plan, at.counts);
    if (all.length === 0) return ended('all taken');
    const offered = (baskets: readonly Basket[]) => baskets.filter((b) => isWithin(b) && !isRefused(b));
    const best =
      (await bestOf(offered(all), at, ask, horizonDays)) ??
      (await bestOf(offered(nextPairs(plan, at.counts)), at, ask, horizonDays));
    if (best === undefined) return ended(all.every(isWithin) ? 'no gain' : 'budget');
    rungs.push(best);
    at = best.to;
  }
}

async function bestOf(
  baskets: readonly Basket[],
  from: Standing,
  ask: AskStandings,
  horizonDays: number,
): Promise<Climbed | undefined> {
  const standings = await ask(baskets.map((basket) => basket.counts));
  const offers = baskets.map((basket, i) => ({
    basket,
    to: standings[i]!,
    gain: gainOf(from, standings[i]!, horizonDays),
  }));
  const gainful = offers.filter(({ gain }) => gains(gain));
  if (gainful.length === 0) return undefined;
  const { basket, to } = gainful.reduce((a, b) => (isBetter(b, a) ? b : a));
  return { taken: basket.taken, price: basket.price, to };
}

/** A figure hidden by the horizon counts as the horizon: the gain is then at least what is told. */
function gainOf(from: Standing, to: Standing, horizonDays: number): Gain {
  return {
    days: (to.days ?? horizonDays) - (from.days ?? horizonDays),
    meanDays: to.meanDays - from.meanDays,
  };
}

function gains({ days, meanDays }: Gain): boolean {
  return days > NOTHING_DAYS || (days >= -NOTHING_DAYS && meanDays > NOTHING_DAYS);
}

interface Offer {
  readonly basket: Basket;
  readonly gain: Gain;
}

function isBetter(a: Offer, b: Offer): boolean {
  const [freeA, freeB] = [a.basket.price === 0, b.basket.price === 0];
  if (freeA !== freeB) return freeA;
  const per = ({ basket, gain }: Offer) => {
    const money = basket.price === 0 ? 1 : basket.price;
    return [gain.days / money, gain.meanDays / money] as const;
  };
  const [[daysA, meanA], [daysB, meanB]] = [per(a), per(b)];
  return daysA > daysB || (daysA === daysB && meanA > meanB);
}
