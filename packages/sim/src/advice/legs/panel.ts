/** The panel as the question sees it: which circuits may change sides, and the household with them on other legs. */
import type { Circuit, HouseholdSpec } from '../../scenario/scenario.ts';

/** Which side each movable circuit is on, one letter each: `1` for L1, `2` for L2. */
export type Sides = string;

export interface Panel {
  readonly household: HouseholdSpec;
  /** Positions of the circuits that may move. */
  readonly movable: readonly number[];
  /** As they are now. */
  readonly present: Sides;
}

/**
 * 120 V circuits move unless they are fixed or share a neutral: a multiwire pair must stay on two legs, and parting it
 * is an electrician's work, not a matter of days.
 */
export function panelOf(household: HouseholdSpec): Panel {
  const { circuits } = household;
  const partners = new Set(circuits.flatMap((c) => c.sharedNeutralWith ?? []));
  const movable = circuits.flatMap((circuit, i) => (mayMove(circuit, partners) ? i : []));
  return { household, movable, present: movable.map((i) => sideOf(circuits[i]!)).join('') };
}

function mayMove({ id, leg, legFixed, sharedNeutralWith }: Circuit, partners: ReadonlySet<string>): boolean {
  return leg !== 'both' && !legFixed && sharedNeutralWith === undefined && !partners.has(id);
}

const sideOf = ({ leg }: Circuit): string => (leg === 'L2' ? '2' : '1');

/** The circuits with the movable ones on the given sides. */
export function circuitsOn({ household, movable }: Panel, sides: Sides): Circuit[] {
  const circuits = [...household.circuits];
  movable.forEach((at, i) => {
    circuits[at] = { ...circuits[at]!, leg: sides[i] === '2' ? 'L2' : 'L1' };
  });
  return circuits;
}

export function householdOn(panel: Panel, sides: Sides): HouseholdSpec {
  return { ...panel.household, circuits: circuitsOn(panel, sides) };
}

/** Positions in `movable` of the circuits that are on another side. */
export function movesBetween(from: Sides, to: Sides): number[] {
  return Array.from(from, (_, i) => i).filter((i) => from[i] !== to[i]);
}

export function flipped(sides: Sides, at: number): Sides {
  return sides.slice(0, at) + (sides[at] === '1' ? '2' : '1') + sides.slice(at + 1);
}

/** Every movable circuit on the other side: much the same house when the units are alike. */
export function mirrored(sides: Sides): Sides {
  return Array.from(sides, (side) => (side === '1' ? '2' : '1')).join('');
}

/** Two to the power of `circuits`: exact up to 53 of them. */
export function assignmentCount(circuits: number): number {
  let count = 1;
  for (let i = 0; i < circuits; i++) count *= 2;
  return count;
}

/** Every assignment of so many circuits, all on L1 first. */
export function* everySides(circuits: number): Generator<Sides> {
  const count = assignmentCount(circuits);
  for (let code = 0; code < count; code++)
    yield code.toString(2).padStart(circuits, '0').replaceAll('1', '2').replaceAll('0', '1');
}
