/** Assignments lived through: asked for once and kept, every one on the same draws. */
import type { HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import type { Runtimes } from '../../trials/bootstrap.ts';
import { outcomeCells, runtimesOf, type OutcomeCells } from '../../trials/outcome-cells.ts';
import type { AskStudy, StudyQuestion } from '../ask-study.ts';
import { lastsLonger, meanDays, reachOf, type Reach } from '../reach.ts';
import { householdOn, type Panel, type Sides } from './panel.ts';

const SHORTEST = 0.2;

export interface Lived extends Runtimes {
  readonly trips: Float64Array;
}

export interface Tried extends Reach {
  readonly sides: Sides;
  readonly lived: Runtimes;
  /** Mean of the shortest fifth of the outages: steadier than the one run that nine in ten outlast. */
  readonly shortestDays: number;
}

/** Lives households to their ends, in the order given. */
export async function liveToTheirEnds(
  scenario: Scenario,
  households: readonly HouseholdSpec[],
  question: StudyQuestion,
  ask: AskStudy,
): Promise<Runtimes[]> {
  const cells = await cellsOf(scenario, households, { ...question, rows: 'runtimes' }, ask);
  return households.map((_, a) => runtimesOf(cells, a, 0));
}

/** Lives households through to the horizon, in the order given. */
export async function liveThrough(
  scenario: Scenario,
  households: readonly HouseholdSpec[],
  question: StudyQuestion,
  ask: AskStudy,
): Promise<Lived[]> {
  const cells = await cellsOf(scenario, households, question, ask);
  return households.map((_, a) => ({ ...runtimesOf(cells, a, 0), trips: cells.column(a, 0, 'trips') }));
}

async function cellsOf(
  scenario: Scenario,
  households: readonly HouseholdSpec[],
  question: StudyQuestion,
  ask: AskStudy,
): Promise<OutcomeCells> {
  const alternatives = households.map((household, i) => ({ id: `try-${i}`, title: `try ${i}`, household }));
  const { outline, rows } = await ask({ ...scenario, ladder: undefined, alternatives }, question);
  return outcomeCells(outline, rows);
}

export type TrySides = (wanted: readonly Sides[]) => Promise<Tried[]>;

export function createTries(
  scenario: Scenario,
  panel: Panel,
  question: StudyQuestion & { readonly share: number },
  ask: AskStudy,
): { readonly tries: ReadonlyMap<Sides, Tried>; readonly trySides: TrySides } {
  const tries = new Map<Sides, Tried>();
  const trySides: TrySides = async (wanted) => {
    const missing = [...new Set(wanted)].filter((sides) => !tries.has(sides));
    if (missing.length > 0) {
      const households = missing.map((sides) => householdOn(panel, sides));
      const lived = await liveToTheirEnds(scenario, households, question, ask);
      missing.forEach((sides, i) => tries.set(sides, tried(sides, lived[i]!, question.share)));
    }
    return wanted.map((sides) => tries.get(sides)!);
  };
  return { tries, trySides };
}

function tried(sides: Sides, lived: Runtimes, share: number): Tried {
  const shortest = lived.times
    .slice()
    .sort()
    .slice(0, Math.ceil(SHORTEST * lived.times.length));
  return { sides, lived, ...reachOf(lived, share), shortestDays: meanDays(shortest) };
}

export function longestOf(tries: readonly Tried[]): Tried {
  return tries.reduce((best, one) => (lastsLonger(one, best) ? one : best));
}

/** By the shortest fifth: among many that hardly differ, the days that nine in ten reach mostly pick the luckiest. */
export function steadiestOf(tries: readonly Tried[]): Tried {
  return tries.reduce((best, one) => (one.shortestDays > best.shortestDays ? one : best));
}
