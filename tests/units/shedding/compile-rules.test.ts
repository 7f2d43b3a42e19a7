import { describe, expect, it } from 'vitest';
import {
  chosenCircuits,
  compileStrategy,
  LOWEST_BANK,
} from '../../../packages/sim/src/shedding/compile-rules.ts';
import type { RuleSpec } from '../../../packages/sim/src/scenario/schema.ts';

const CIRCUITS = [
  { id: 'fridge', leg: 'L1', tier: 1 },
  { id: 'lamp', leg: 'L2', tier: 3 },
  { id: 'pump', leg: 'both', tier: 3 },
] as const;
const UNITS = [
  { id: 'east', leg: 'L1' },
  { id: 'west', leg: 'L2' },
] as const;
const rulesOf = (...rules: RuleSpec[]) =>
  compileStrategy({ id: 's', title: 'S', carriedOutBy: 'switch', rules }, CIRCUITS, UNITS).rules;

describe('a choice of circuits', () => {
  it.each([
    [{ ids: ['pump', 'fridge'] }, [1, 0, 1]],
    [{ tiers: [3] }, [0, 1, 1]],
    [{ legs: ['both' as const] }, [0, 0, 1]],
    [{ tiers: [3], legs: ['L2' as const] }, [0, 1, 0]],
    [{ ids: ['fridge'], tiers: [3] }, [0, 0, 0]],
  ])('%j matches every part given', (choice, matches) => {
    expect(Array.from(chosenCircuits(choice, CIRCUITS))).toEqual(matches);
  });
});

describe('a compiled rule', () => {
  const charge = {
    by: 'charge' as const,
    circuits: { tiers: [1, 3] },
    dropBelowFraction: 0.5,
    restoreAboveFraction: 0.7,
  };

  it('that reads the lowest bank holds all its circuits at once', () => {
    expect(rulesOf({ ...charge, reads: 'lowest' })).toMatchObject([
      { reads: LOWEST_BANK, holds: Uint8Array.from([1, 1, 1]) },
    ]);
  });

  it('that reads each circuit’s own bank is one for each, 240 V reading the lowest', () => {
    expect(rulesOf({ ...charge, reads: 'own' })).toMatchObject([
      { reads: LOWEST_BANK, holds: Uint8Array.from([0, 0, 1]) },
      { reads: 0, holds: Uint8Array.from([1, 0, 0]) },
      { reads: 1, holds: Uint8Array.from([0, 1, 0]) },
    ]);
  });

  it('that puts a unit to sleep holds 240 V, and its own leg only when that is dropped', () => {
    const sleep = { by: 'sleep', unit: 'west', during: ['22:00-05:00'] } as const;
    expect(rulesOf({ ...sleep, during: [...sleep.during], circuits: 'dropped' })).toMatchObject([
      { unit: 1, moved: false, holds: Uint8Array.from([0, 1, 1]) },
    ]);
    expect(rulesOf({ ...sleep, during: [...sleep.during], circuits: 'moved' })).toMatchObject([
      { unit: 1, moved: true, holds: Uint8Array.from([0, 0, 1]) },
    ]);
  });
});
