/** What the strategy allows right now, and the levels at which it would think again. MODEL.md §3. */
import type { PersonSpec } from '../scenario/schema.ts';
import { LOWEST_BANK, type CompiledStrategy } from './compile-rules.ts';
import { minutesToNextDecision, personDay, type PersonDay } from './decision-minutes.ts';
import { gateOf, isOpen, readsCharge, type Gate, type Readings } from './gates.ts';

/** Everything about a strategy and its person that does not change during a run. */
export interface ControlPlan {
  readonly strategy: CompiledStrategy;
  /** The strategy's rules, in the same order. */
  readonly gates: readonly Gate[];
  readonly day: PersonDay;
  readonly nextDecision: Uint16Array;
  readonly tiers: Uint8Array;
  /** Those that the house has, 1 first. */
  readonly tiersThere: readonly number[];
  readonly leastTier: number;
  readonly person: PersonSpec;
  readonly readsSun: boolean;
}

export function planControl(
  strategy: CompiledStrategy,
  person: PersonSpec,
  tiers: readonly number[],
): ControlPlan {
  return {
    strategy,
    gates: strategy.rules.map(gateOf),
    day: personDay(person),
    nextDecision: minutesToNextDecision(strategy, person),
    tiers: Uint8Array.from(tiers),
    tiersThere: [...new Set([1, ...tiers])].sort((a, b) => a - b),
    leastTier: Math.max(...tiers),
    person,
    readsSun: strategy.rules.some((r) => r.by === 'sun'),
  };
}

/** What the control has decided; changed in place. */
export interface ControlState {
  /** 1 for each rule that lets its circuits be on. */
  readonly ruleAllows: Uint8Array;
  /** 1 for each circuit that may be on. */
  readonly allowed: Uint8Array;
  /** Scratch: what it was the time before. */
  readonly allowedBefore: Uint8Array;
  /** The unit put to sleep, or -1. */
  asleepUnit: number;
  /** Its 120 V circuits hang on the other unit. */
  moved: boolean;
  /** Tiers above this stay off after a trip. */
  heldTier: number;
  /** Circuits that changed in `allowed` the last time it was set. */
  thrown: number;
}

export function startControl(plan: ControlPlan): ControlState {
  return {
    ruleAllows: new Uint8Array(plan.strategy.rules.length).fill(1),
    allowed: new Uint8Array(plan.tiers.length).fill(1),
    allowedBefore: new Uint8Array(plan.tiers.length).fill(1),
    asleepUnit: -1,
    moved: false,
    heldTier: plan.leastTier,
    thrown: 0,
  };
}

/**
 * Thinks through every rule with the present readings and sets `allowed`, `asleepUnit` and `moved`.
 * @returns whether anything changed
 */
export function rethink(plan: ControlPlan, state: ControlState, readings: Readings): boolean {
  const { gates } = plan;
  // At bedtime things are set for the night; an outage that begins while people sleep finds them set.
  const { awake, bedtime } = plan.day;
  const minute = readings.localMinuteOfDay;
  const forTheNight = !plan.strategy.bySwitch && (bedtime[minute] === 1 || awake[minute] === 0);
  let asleepUnit = unitStillAsleep(plan, state, readings, forTheNight);
  let moved = false;
  let changed = false;
  for (let r = 0; r < gates.length; r++) {
    const gate = gates[r]!;
    const otherSleeps = gate.by === 'sleep' && asleepUnit >= 0 && asleepUnit !== gate.unit; // one must keep watch
    const allows = otherSleeps || isOpen(gate, state.ruleAllows[r] === 1, readings, forTheNight) ? 1 : 0;
    if (allows !== state.ruleAllows[r]) {
      state.ruleAllows[r] = allows;
      changed = true;
    }
    if (gate.by === 'sleep' && allows === 0) {
      asleepUnit = gate.unit;
      moved = gate.moved;
    }
  }
  state.asleepUnit = asleepUnit;
  state.moved = moved;
  if (changed) setAllowed(plan, state);
  return changed;
}

/** The unit that was put to sleep and still has reason to: the other is not put to sleep before it is woken. */
function unitStillAsleep(
  { gates }: ControlPlan,
  { ruleAllows }: ControlState,
  readings: Readings,
  forTheNight: boolean,
): number {
  for (let r = 0; r < gates.length; r++) {
    const gate = gates[r]!;
    if (gate.by === 'sleep' && ruleAllows[r] === 0 && !isOpen(gate, false, readings, forTheNight))
      return gate.unit;
  }
  return -1;
}

/** A circuit is allowed while every rule that holds it allows it and its tier is not held back after a trip. */
export function setAllowed({ gates, tiers }: ControlPlan, state: ControlState): void {
  const { allowed, allowedBefore, ruleAllows, heldTier } = state;
  for (let c = 0; c < allowed.length; c++) {
    allowedBefore[c] = allowed[c]!;
    allowed[c] = tiers[c]! <= heldTier ? 1 : 0;
  }
  for (let r = 0; r < gates.length; r++) {
    if (ruleAllows[r] === 1) continue;
    const { held } = gates[r]!;
    for (let h = 0; h < held.length; h++) allowed[held[h]!] = 0;
  }
  let thrown = 0;
  for (let c = 0; c < allowed.length; c++) if (allowed[c] !== allowedBefore[c]) thrown++;
  state.thrown = thrown;
}

/**
 * Levels of one bank (fractions of its capacity) at which a switch would think again: the highest armed drop below
 * the present charge and the lowest armed restore above it. A person has none: they look at the clock.
 *
 * @param levels levels[0] = think again below, levels[1] = think again above
 */
export function thinkAgainLevels(
  plan: ControlPlan,
  state: ControlState,
  unit: number,
  charge: number,
  levels: Float64Array,
): void {
  levels[0] = -Infinity;
  levels[1] = Infinity;
  if (!plan.strategy.bySwitch) return;
  const { gates } = plan;
  for (let r = 0; r < gates.length; r++) {
    const gate = gates[r]!;
    if (!readsCharge(gate) || (gate.unit !== unit && gate.unit !== LOWEST_BANK)) continue;
    const allows = state.ruleAllows[r] === 1;
    narrow(levels, allows ? gate.below : -Infinity, allows ? Infinity : gate.above, charge);
  }
}

function narrow(levels: Float64Array, below: number, above: number, charge: number): void {
  if (below > levels[0]! && charge >= below) levels[0] = below;
  if (above < levels[1]! && charge < above) levels[1] = above;
}

/** After a trip: the person brings the unit back with the least essential tiers left off; more of them each time. */
export function holdTiersBack(plan: ControlPlan, state: ControlState): void {
  const { tiersThere } = plan;
  const at = tiersThere.findLastIndex((tier) => tier <= state.heldTier);
  state.heldTier = tiersThere[Math.max(0, at - plan.person.afterTripShedTiers)]!;
  setAllowed(plan, state);
}

export function releaseHeldTiers(plan: ControlPlan, state: ControlState): void {
  state.heldTier = plan.leastTier;
  setAllowed(plan, state);
}
