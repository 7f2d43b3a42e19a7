/** How long any assignment could last: the longest of the bare households, one for each way to place what is always on. */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { Runtimes } from '../../trials/bootstrap.ts';
import { alwaysOn, bareHousehold, movesCircuits, pooledHousehold } from './bare-household.ts';
import { everySides, type Panel, type Sides } from './panel.ts';

/** Most movable always-on circuits whose placings are looked at one by one; beyond, both banks count as one. */
const MOST_PLACED = 6;

export type BoundKind = 'placings' | 'pooled';

export interface BoundPlan {
  readonly kind: BoundKind;
  readonly households: readonly HouseholdSpec[];
  /** Position in `households` of the one that an assignment cannot outlast. */
  readonly classOf: (sides: Sides) => number;
}

/** @returns undefined when nothing is always on, or power comes from elsewhere too: then nothing is known */
export function planBound(panel: Panel): BoundPlan | undefined {
  const kept = alwaysOn(panel.household);
  if (kept.length === 0 || panel.household.sources !== undefined) return undefined;
  const placed = panel.movable.flatMap((circuit, i) => (kept.includes(circuit) ? i : []));
  if (placed.length > MOST_PLACED || movesCircuits(panel.household)) return pooledPlan(panel);
  const placings = [...everySides(placed.length)];
  return {
    kind: 'placings',
    households: placings.map((placing) => {
      const sides = Array.from(panel.present, (side, i) => placing[placed.indexOf(i)] ?? side).join('');
      return bareHousehold(panel, sides);
    }),
    classOf: (sides) => placings.indexOf(placed.map((at) => sides[at]!).join('')),
  };
}

function pooledPlan(panel: Panel): BoundPlan | undefined {
  const household = pooledHousehold(panel);
  if (household.circuits.length === 0) return undefined;
  return { kind: 'pooled', households: [household], classOf: () => 0 };
}

/** Draws in which a run outlasted its bare household: 0 where the bound holds. */
export function drawsBeyond(lived: Runtimes, bare: Runtimes): number {
  let beyond = 0;
  for (let d = 0; d < lived.times.length; d++) if (lived.times[d]! > bare.times[d]! + 1e-6) beyond++;
  return beyond;
}
