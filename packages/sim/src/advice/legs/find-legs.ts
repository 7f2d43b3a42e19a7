/** Which circuit on which leg lasts longest, and how far any other could be ahead. MODEL.md §21. */
import { streamsOf } from '../../chance/streams.ts';
import { mean } from 'simple-statistics';
import type { AlternativeSpec, HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import type { Runtimes } from '../../trials/bootstrap.ts';
import { compareRuntimes } from '../../trials/compare-runtimes.ts';
import { longestLasting } from '../../trials/longest-lasting.ts';
import { meanPairedDifference } from '../../trials/paired.ts';
import { NINE_IN_TEN } from '../../trials/quantile.ts';
import { summarise } from '../../trials/summarise.ts';
import { freshSeed } from '../fresh-seed.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import type { AskStudy, StudyQuestion } from '../ask-study.ts';
import { isGain, toldOf } from '../told.ts';
import { daysReached, meanDays } from '../reach.ts';
import { drawsBeyond, planBound, type BoundPlan } from './leg-bound.ts';
import { withinLimits } from './leg-limits.ts';
import type { LegsAnswer, LegsBound, LegsSearch } from './legs-answer.ts';
import { assignmentCount, everySides, householdOn, panelOf, type Panel, type Sides } from './panel.ts';
import { probeEnergy } from './probe-energy.ts';
import { createGuess } from './guess-sides.ts';
import { bestGuesses, MOST_EVERY_ONE } from './rank-sides.ts';
import { movesOf, scheduleOf } from './schedule.ts';
import { fewestMoves, improve, simplify } from './search-sides.ts';
import { createTries, liveThrough, liveToTheirEnds, longestOf, type Tried } from './try-sides.ts';

/** What is asked about the legs of a panel. */
export interface LegsQuestion {
  readonly seed: string;
  /** Draws on which the assignment is chosen, ≥ 1. */
  readonly choosingDraws: number;
  /** Fresh draws on which its gain is told, ≥ 1. */
  readonly draws: number;
  /** Position in the scenario's alternatives. */
  readonly alternative?: number | undefined;
  /** Position in its strategies; left out: the one that lasts longest as the panel is now. */
  readonly strategy?: number | undefined;
  /** Up to so many assignments every one is simulated. */
  readonly everyOneUpTo?: number | undefined;
  /** Otherwise so many best guesses are. */
  readonly bestGuesses?: number | undefined;
}

const EVERY_ONE_UP_TO = 64;
const BEST_GUESSES = 24;
const PROBED_DRAWS = 40;

/**
 * Finds which circuit on which leg lasts longest, and tells its gain on fresh draws.
 *
 * @throws RangeError when the household has not two units, or no circuit may move
 */
export async function findLegs(
  scenario: Scenario,
  question: LegsQuestion,
  ask: AskStudy,
): Promise<LegsAnswer> {
  const alternative = scenario.alternatives[question.alternative ?? 0]!;
  const choosing = { seed: question.seed, draws: question.choosingDraws };
  const household = await withStrategy(scenario, alternative, question.strategy, choosing, ask);
  const panel = panelOf(household);
  requireChoice(panel);
  const plan = planBound(panel);
  const bare = plan && (await liveToTheirEnds(scenario, plan.households, choosing, ask));
  const { tries, trySides } = createTries(scenario, panel, { ...choosing, share: NINE_IN_TEN }, ask);
  const found = await search(scenario, panel, question, trySides);
  const present = tries.get(panel.present)!;
  const fresh = { seed: freshSeed(question.seed), draws: question.draws };
  const gained = await gainOf(scenario, panel, found.best.sides, fresh, ask);
  const strategy = household.strategies[0]!;
  const told = toldOf({ days: gained.gainDays, meanDays: gained.gainMeanDays });
  return {
    provenance: adviceProvenance(scenario, question),
    freshSeed: fresh.seed,
    horizonDays: scenario.outage.horizonDays,
    alternativeTitle: alternative.title,
    strategyId: strategy.id,
    strategyTitle: strategy.title,
    ...gained,
    told,
    moves: movesOf(panel, found.best.sides),
    search: {
      movableCircuits: panel.movable.length,
      assignments: assignmentCount(panel.movable.length),
      simulated: tries.size,
      how: found.how,
      presentDays: present.days,
      bestDays: found.best.days,
    },
    bound: plan === undefined ? null : boundOf(plan, bare!, [...tries.values()]),
    ...scheduleOf(panel, isGain(told) ? found.best.sides : panel.present),
  };
}

/** The household with one strategy: the one asked for, or the one that lasts longest as things are. */
async function withStrategy(
  scenario: Scenario,
  alternative: AlternativeSpec,
  position: number | undefined,
  question: StudyQuestion,
  ask: AskStudy,
): Promise<HouseholdSpec> {
  const { strategies } = alternative.household;
  const only = (at: number) => ({ ...alternative.household, strategies: [strategies[at]!] });
  if (position !== undefined || strategies.length === 1) return only(position ?? 0);
  const { outline, rows } = await ask(
    { ...scenario, ladder: undefined, alternatives: [alternative] },
    question,
  );
  const best = longestLasting(summarise(outline, rows).strategies);
  return only(strategies.findIndex((strategy) => strategy.id === best.strategyId));
}

function requireChoice({ household, movable }: Panel): void {
  if (household.units.length !== 2)
    throw new RangeError('one unit feeds whatever it feeds: which leg a circuit is on makes no difference');
  if (movable.length === 0) throw new RangeError('no circuit may change its leg');
}

interface Found {
  readonly best: Tried;
  readonly how: LegsSearch['how'];
}

async function search(
  scenario: Scenario,
  panel: Panel,
  question: LegsQuestion,
  trySides: ReturnType<typeof createTries>['trySides'],
): Promise<Found> {
  const allowed = withinLimits(panel);
  const count = panel.movable.length;
  if (assignmentCount(count) <= (question.everyOneUpTo ?? EVERY_ONE_UP_TO)) {
    const all = [...everySides(count)].filter(allowed);
    const tried = await trySides([panel.present, ...all]);
    return { best: fewestMoves(panel, tried, longestOf(tried)), how: 'every one simulated' };
  }
  const [present] = await trySides([panel.present]);
  const windowDays = Math.max(1 / 4, Math.min(present!.meanDays, scenario.outage.horizonDays));
  const draws = Math.min(PROBED_DRAWS, question.choosingDraws);
  const probed = probeEnergy(scenario, householdOn(panel, panel.present), {
    seed: question.seed,
    draws,
    windowDays,
  });
  const guess = createGuess(panel, probed, NINE_IN_TEN);
  const guesses = bestGuesses(panel, guess, allowed, question.bestGuesses ?? BEST_GUESSES);
  const improved = await improve(
    panel,
    guesses.map((g) => g.sides),
    allowed,
    trySides,
  );
  return {
    best: await simplify(panel, improved, allowed, trySides),
    how: count <= MOST_EVERY_ONE ? 'best guesses of all' : 'best guesses of a search',
  };
}

/** Present and best on draws that had no say in the choice. */
async function gainOf(
  scenario: Scenario,
  panel: Panel,
  best: Sides,
  fresh: StudyQuestion,
  ask: AskStudy,
): Promise<Pick<LegsAnswer, 'present' | 'best' | 'gainDays' | 'gainMeanDays' | 'gainTrips'>> {
  const households = [panel.present, best].map((sides) => householdOn(panel, sides));
  const lived = await liveThrough(scenario, households, fresh, ask);
  const chance = streamsOf(fresh.seed, 0)('advice/legs');
  const compared = compareRuntimes(lived, NINE_IN_TEN, scenario.outage.horizonDays, chance);
  const stand = (at: number) => ({
    days: compared.reached(at),
    meanDays: meanDays(lived[at]!.times),
    tripsPerOutage: mean(Array.from(lived[at]!.trips)),
  });
  const gain = compared.gain(0, 1);
  return {
    present: stand(0),
    best: stand(1),
    gainDays: gain.days,
    gainMeanDays: gain.meanDays,
    gainTrips: meanPairedDifference(lived[1]!.trips, lived[0]!.trips),
  };
}

/** What the bare households say of every assignment, on the draws that chose the best. */
function boundOf(plan: BoundPlan, bare: readonly Runtimes[], tries: readonly Tried[]): LegsBound {
  const best = longestOf(tries);
  const days = bare.map((lived) => daysReached(lived, NINE_IN_TEN));
  const ruledOut = days.filter((d) => d !== null && best.days !== null && d <= best.days).length;
  return {
    days: days.some((d) => d === null) ? null : Math.max(...days.map((d) => d!)),
    kind: plan.kind,
    ruledOutFraction: best.days === null ? 0 : ruledOut / days.length,
    drawsBeyond: tries.reduce((sum, t) => sum + drawsBeyond(t.lived, bare[plan.classOf(t.sides)]!), 0),
    drawsChecked: tries.reduce((sum, t) => sum + t.lived.times.length, 0),
  };
}
