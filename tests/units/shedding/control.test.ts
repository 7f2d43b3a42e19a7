/** What a strategy allows, step by step. */
import { describe, expect, it } from 'vitest';
import { compileStrategy } from '../../../packages/sim/src/shedding/compile-rules.ts';
import {
  holdTiersBack,
  planControl,
  releaseHeldTiers,
  rethink,
  startControl,
  thinkAgainLevels,
} from '../../../packages/sim/src/shedding/control.ts';
import type { RuleSpec } from '../../../packages/sim/src/scenario/schema.ts';

const CIRCUITS = [
  { id: 'fridge', leg: 'L1', tier: 1 },
  { id: 'lamp', leg: 'L2', tier: 3 },
  { id: 'spa', leg: 'both', tier: 5 },
] as const;
const UNITS = [
  { id: 'east', leg: 'L1' },
  { id: 'west', leg: 'L2' },
] as const;
const PERSON = {
  awake: '06:30-22:30',
  looksEveryMinutes: 60,
  tripReactionMinutes: 10,
  afterTripShedTiers: 2,
  afterTripHoldMinutes: 60,
};

function control(...rules: RuleSpec[]) {
  return controlOf(PERSON, ...rules);
}

function controlOf(person: typeof PERSON, ...rules: RuleSpec[]) {
  const strategy = compileStrategy({ id: 's', title: 'S', carriedOutBy: 'switch', rules }, CIRCUITS, UNITS);
  const plan = planControl(
    strategy,
    person,
    CIRCUITS.map((c) => c.tier),
  );
  const state = startControl(plan);
  const think = (given: {
    charge?: [number, number];
    solarW?: number;
    minute?: number;
    down?: [number, number];
  }) => {
    const { charge = [1, 1], solarW = 0, minute = 720, down = [0, 0] } = given;
    rethink(plan, state, {
      charge: Float64Array.from(charge),
      solarW,
      localMinuteOfDay: minute,
      down: Uint8Array.from(down),
    });
    return Array.from(state.allowed);
  };
  return { plan, state, think };
}

const lamp = { ids: ['lamp'] };
const byCharge: RuleSpec = {
  by: 'charge',
  circuits: lamp,
  dropBelowFraction: 0.5,
  restoreAboveFraction: 0.7,
  reads: 'lowest',
};

describe('a charge rule', () => {
  it('drops below one level and restores above the other, and stays as it is between them', () => {
    const { think } = control(byCharge);
    const lampOn = [0.6, 0.5, 0.49, 0.6, 0.69, 0.71, 0.6, 0.3].map(
      (charge) => think({ charge: [0.9, charge] })[1],
    );
    expect(lampOn).toEqual([1, 1, 0, 0, 0, 1, 1, 0]);
  });

  it('has a switch think again at the level that is next on each bank', () => {
    const { plan, state, think } = control(byCharge, {
      ...byCharge,
      circuits: { ids: ['spa'] },
      dropBelowFraction: 0.8,
      restoreAboveFraction: 0.9,
    });
    const levels = new Float64Array(2);
    const levelsAt = (charge: number) => {
      think({ charge: [1, charge] });
      thinkAgainLevels(plan, state, 1, charge, levels);
      return Array.from(levels);
    };
    expect(levelsAt(1)).toEqual([0.8, Infinity]);
    expect(levelsAt(0.75)).toEqual([0.5, 0.9]);
    expect(levelsAt(0.4)).toEqual([-Infinity, 0.7]);
  });

  it('has a switch wait below a level that its bank stands at exactly: there it still allows', () => {
    const { plan, state, think } = control(byCharge);
    const levels = new Float64Array(2);
    expect(think({ charge: [1, 0.5] })[1]).toBe(1);
    thinkAgainLevels(plan, state, 1, 0.5, levels);
    expect(Array.from(levels)).toEqual([0.5, Infinity]);
  });
});

describe('a sun rule', () => {
  it('allows from exactly its watts on', () => {
    const { think } = control({ by: 'sun', circuits: lamp, solarAboveW: 300 });
    expect([299.9, 300, 300.1].map((solarW) => think({ solarW })[1])).toEqual([0, 1, 1]);
  });
});

describe('rules together', () => {
  it('have a circuit on while every rule that names it allows it', () => {
    const { think } = control(byCharge, { by: 'sun', circuits: lamp, solarAboveW: 300 });
    expect(think({ solarW: 400 })[1]).toBe(1);
    expect(think({ solarW: 299 })[1]).toBe(0);
    expect(think({ solarW: 300, charge: [0.4, 0.9] })[1]).toBe(0);
  });
});

describe('a sleep rule', () => {
  const sleep: RuleSpec = {
    by: 'sleep',
    unit: 'west',
    sleepBelowFraction: 0.3,
    wakeAboveFraction: 0.6,
    circuits: 'dropped',
  };

  it('takes the unit’s leg and 240 V off between its levels', () => {
    const { state, think } = control(sleep);
    expect(think({ charge: [0.9, 0.35] })).toEqual([1, 1, 1]);
    expect(think({ charge: [0.9, 0.25] })).toEqual([1, 0, 0]);
    expect(state.asleepUnit).toBe(1);
    expect(think({ charge: [0.9, 0.55] })).toEqual([1, 0, 0]);
    expect(think({ charge: [0.9, 0.65] })).toEqual([1, 1, 1]);
    expect(state.asleepUnit).toBe(-1);
  });

  it('leaves the unit awake at exactly its lower level, and wakes it at exactly its upper', () => {
    const { state, think } = control(sleep);
    const sleeper = [0.3, 0.29, 0.59, 0.6].map((charge) => {
      think({ charge: [0.9, charge] });
      return state.asleepUnit;
    });
    expect(sleeper).toEqual([-1, 1, 1, -1]);
  });

  it('does not hold while the partner is down', () => {
    const { think } = control(sleep);
    expect(think({ charge: [0.9, 0.2] })).toEqual([1, 0, 0]);
    expect(think({ charge: [0, 0.2], down: [1, 0] })).toEqual([1, 1, 1]);
  });
});

describe('two units that may sleep', () => {
  const below = (unit: string): RuleSpec => ({
    by: 'sleep',
    unit,
    circuits: 'dropped',
    sleepBelowFraction: 0.5,
    wakeAboveFraction: 0.9,
  });

  it.each([
    ['west', 'east'],
    ['east', 'west'],
  ])('take turns: one that sleeps is not woken for the other (%s written first)', (first, second) => {
    const { think, state } = control(below(first), below(second));
    think({ charge: [0.8, 0.45] });
    expect(state.asleepUnit).toBe(1);
    think({ charge: [0.48, 0.5] }); // the other would sleep, and this one has not come to its level
    expect(state.asleepUnit).toBe(1);
    think({ charge: [0.4, 0.95] });
    expect(state.asleepUnit).toBe(0);
  });
});

describe('tiers held back after a trip', () => {
  it('are the least essential of those that the house has, more each time, never the first, and all come back together', () => {
    const one = controlOf({ ...PERSON, afterTripShedTiers: 1 });
    const allowed = ({ state }: typeof one) => Array.from(state.allowed);
    holdTiersBack(one.plan, one.state);
    expect(allowed(one)).toEqual([1, 1, 0]);
    holdTiersBack(one.plan, one.state);
    expect(allowed(one)).toEqual([1, 0, 0]);
    holdTiersBack(one.plan, one.state);
    expect(allowed(one)).toEqual([1, 0, 0]);
    releaseHeldTiers(one.plan, one.state);
    expect(allowed(one)).toEqual([1, 1, 1]);
    const two = control();
    holdTiersBack(two.plan, two.state);
    expect(allowed(two)).toEqual([1, 0, 0]);
  });
});
