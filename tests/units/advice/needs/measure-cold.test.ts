/** Food kept cold, minute by minute on paper. MODEL.md §19.1. */
import { describe, expect, it } from 'vitest';
import { measureCold } from '../../../../packages/sim/src/advice/needs/measure-cold.ts';
import type { Sight } from '../../../../packages/sim/src/advice/needs/watch-run.ts';

const LIMIT_C = 4.4;

/** What becomes of stores with these temperatures at the minutes' ends, shown some minutes at a time. */
function outcomeOf(storesC: readonly (readonly number[])[], borneMinutes: number, atOnce: number) {
  const stores = storesC.map((_, i) => i);
  const { look, outcome } = measureCold({ stores, limitC: LIMIT_C, borneMinutes });
  const minutes = storesC[0]!.length;
  for (let minute = 0; minute < minutes; minute += atOnce) {
    const count = Math.min(atOnce, minutes - minute);
    const temperaturesC = (i: number) => Float64Array.from(storesC[i]!.slice(minute, minute + count));
    look({ minute, count, temperaturesC } as Partial<Sight> as Sight);
  }
  return outcome;
}

describe.each([1, 3, 12])('food, looked at %i minutes at a time', (atOnce) => {
  it('at its limit is still cold', () => {
    const outcome = outcomeOf([[4.2, 4.4, 4.4, 4.3]], 0, atOnce);
    expect(outcome).toMatchObject({ minutes: 0, depth: 0, extreme: 4.4, firstMinute: NaN });
  });

  it('adds up its minutes above the limit, a cold spell between them or not', () => {
    // above in minutes 1, 2 and 4: the second of them is borne, the third is not
    const outcome = outcomeOf([[4.4, 4.5, 5, 4.4, 5.4, 4]], 2, atOnce);
    expect(outcome).toMatchObject({ minutes: 3, longestMinutes: 2, firstMinute: 4, extreme: 5.4 });
    expect(outcome.depth).toBeCloseTo((0.1 + 0.6 + 1) / 60, 12);
  });

  it('is as bad as in the worst of its stores, whose minutes do not add up', () => {
    const outcome = outcomeOf(
      [
        [5.4, 4, 5.4, 4, 4],
        [4, 7.4, 4, 4.5, 4],
      ],
      2,
      atOnce,
    );
    expect(outcome).toMatchObject({ minutes: 4, longestMinutes: 4, firstMinute: NaN, extreme: 7.4 });
    expect(outcome.depth).toBeCloseTo((3 + 0.1) / 60, 12);
  });
});
