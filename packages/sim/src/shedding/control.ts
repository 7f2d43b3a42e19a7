/** What the strategy allows right now, and the levels at which it would think again. MODEL.md §3. */
import type { PersonSpec } from '../scenario/schema.ts';
import { LOWEST_BANK, type CompiledRule, type CompiledStrategy } from './compile-rules.ts';
import { minutesToNextDecision, personDay, type PersonDay } from './decision-minutes.ts';

/** Everything about a strategy and its person that does not change during a run. */
export interface ControlPlan {
  readonly strategy: CompiledStrategy;
  readonly day: PersonDay;
  readonly nextDecision: Uint16Array;
  readonly tiers: Uint8Array;
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
    day: personDay(person),
    nextDecision: minutesToNextDecision(strategy, person),
    tiers: Uint8Array.from(tiers),
    leastTier: Math.max(...tiers),
    person,
    readsSun: strategy.rules.some((r) => r.by === 'sun'),
  };
}

/** What the control sees when it thinks. */
export interface Readings {
  /** State of charge of each bank, fraction of capacity. */
  readonly charge: Float64Array;
  /** Mean solar watts of all panels over the last quarter of an hour; read only by sun rules. */
  solarW: number;
  localMinuteOfDay: number;
  /** 1 for each unit that is down (not asleep). */
  readonly down: Uint8Array;
}

/** What the control has decided; changed in place. */
export interface ControlState {
  /** 1 for each rule that lets its circuits be on. */
  readonly ruleAllows: Uint8Array;
  /** 1 for each circuit that may be on. */
  readonly allowed: Uint8Array;
  /** The unit put to sleep, or -1. */
  asleepUnit: number;
  /** Its 120 V circuits hang on the other unit. */
  moved: boolean;
  /** Tiers above this stay off after a trip. */
  heldTier: number;
}

export function startControl(plan: ControlPlan): ControlState {
  return {
    ruleAllows: new Uint8Array(plan.strategy.rules.length).fill(1),
    allowed: new Uint8Array(plan.tiers.length).fill(1),
    asleepUnit: -1,
    moved: false,
    heldTier: plan.leastTier,
  };
}

/**
 * Thinks through every rule with the present readings and sets `allowed`, `asleepUnit` and `moved`.
 * @returns whether anything changed
 */
export function rethink(plan: ControlPlan, state: ControlState, readings: Readings): boolean {
  const { rules, bySwitch } = plan.strategy;
  // At bedtime things are set for the night; an outage that begins while people sleep finds them set.
  const { awake, bedtime } = plan.day;
  const minute = readings.localMinuteOfDay;
  const forTheNight = !bySwitch && (bedtime[minute] === 1 || awake[minute] === 0);
  let asleepUnit = -1;
  let moved = false;
  let changed = false;
  for (let r = 0; r < rules.length; r++) {
    const rule = rules[r]!;
    const otherSleeps = rule.by === 'sleep' && asleepUnit >= 0 && asleepUnit !== rule.unit; // one must keep watch
    const allows = otherSleeps || ruleAllows(rule, state.ruleAllows[r] === 1, readings, forTheNight) ? 1 : 0;
    if (allows !== state.ruleAllows[r]) {
      state.ruleAllows[r] = allows;
      changed = true;
    }
    if (rule.by === 'sleep' && allows === 0) {
      asleepUnit = rule.unit;
      moved = rule.moved;
    }
  }
  state.asleepUnit = asleepUnit;
  state.moved = moved;
  if (changed) setAllowed(plan, state);
  return changed;
}

/** Whether the rule lets its circuits be on, given whether it did so before (hysteresis). */
function ruleAllows(rule: CompiledRule, before: boolean, readings: Readings, forTheNight: boolean): boolean {
  const minute = readings.localMinuteOfDay;
  switch (rule.by) {
    case 'charge': {
      const charge = rule.reads === LOWEST_BANK ? lowest(readings.charge) : readings.charge[rule.reads]!;
      return before ? charge >= rule.dropBelow : charge >= rule.restoreAbove;
    }
    case 'clock':
      return rule.onMinutes[minute] === 1;
    case 'sun':
      return readings.solarW >= rule.solarAboveW;
    case 'ration':
      return forTheNight ? rule.onWhileAsleep : minute % 60 < rule.onMinutesPerHour;
    case 'outage':
      return false;
    case 'sleep':
      return !sleeps(rule, before, readings);
  }
}

/** A unit is not put to sleep, and is woken, while the other one is down. */
function sleeps(
  rule: Extract<CompiledRule, { by: 'sleep' }>,
  awakeBefore: boolean,
  readings: Readings,
): boolean {
  if (readings.down[1 - rule.unit] === 1) return false;
  if (rule.duringMinutes !== undefined) return rule.duringMinutes[readings.localMinuteOfDay] === 1;
  const charge = readings.charge[rule.unit]!;
  return awakeBefore ? charge < rule.sleepBelow : charge < rule.wakeAbove;
}

function lowest(charge: Float64Array): number {
  let least = charge[0]!;
  for (let u = 1; u < charge.length; u++) if (charge[u]! < least) least = charge[u]!;
  return least;
}

/** A circuit is allowed while every rule that holds it allows it and its tier is not held back after a trip. */
export function setAllowed(plan: ControlPlan, state: ControlState): void {
  const { rules } = plan.strategy;
  for (let c = 0; c < state.allowed.length; c++) {
    let allowed = plan.tiers[c]! <= state.heldTier ? 1 : 0;
    for (let r = 0; r < rules.length; r++)
      if (rules[r]!.holds[c] === 1 && state.ruleAllows[r] === 0) allowed = 0;
    state.allowed[c] = allowed;
  }
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
  const { rules } = plan.strategy;
  for (let r = 0; r < rules.length; r++) {
    const rule = rules[r]!;
    const allows = state.ruleAllows[r] === 1;
    if (rule.by === 'charge' && (rule.reads === unit || rule.reads === LOWEST_BANK)) {
      narrow(levels, allows ? rule.dropBelow : -Infinity, allows ? Infinity : rule.restoreAbove, charge);
    } else if (rule.by === 'sleep' && rule.unit === unit && rule.duringMinutes === undefined) {
      narrow(levels, allows ? rule.sleepBelow : -Infinity, allows ? Infinity : rule.wakeAbove, charge);
    }
  }
}

function narrow(levels: Float64Array, below: number, above: number, charge: number): void {
  if (below > levels[0]! && charge >= below) levels[0] = below;
  if (above < levels[1]! && charge < above) levels[1] = above;
}

/** After a trip: the person brings the unit back with the least essential tiers left off; more of them each time. */
export function holdTiersBack(plan: ControlPlan, state: ControlState): void {
  state.heldTier = Math.max(1, state.heldTier - plan.person.afterTripShedTiers);
  setAllowed(plan, state);
}

export function releaseHeldTiers(plan: ControlPlan, state: ControlState): void {
  state.heldTier = plan.leastTier;
  setAllowed(plan, state);
}
