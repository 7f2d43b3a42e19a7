/** Sums of what hangs on a unit, shared by the runs of a draw. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BLOCK_BASE_W,
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_PEAK_START_W,
  BLOCK_ROW,
} from '../../../packages/sim/src/power/hour-figures.ts';
import { blocksUntil, forgetSums } from '../../../packages/sim/src/step/hour-loads.ts';
import { withShare, type LoadPattern } from '../../../packages/sim/src/step/load-pattern.ts';
import type { PreparedDraw } from '../../../packages/sim/src/step/prepared-draw.ts';
import { tinyDraw } from './tiny-house.ts';

const HOURS = 5;

/** Circuits of five kinds of hour: nothing, the same watts, other watts; one in tier each, so that each is a group. */
const { draw } = tinyDraw({
  circuits: {
    steady: { watts: 120, tier: 1 },
    often: { watts: (m) => (m % 7 === 0 ? 900 : 10), tier: 2 },
    evening: { watts: (m) => (m >= 120 && m < 150 ? 600 : 0), tier: 3 },
    never: { watts: 0, tier: 4 },
    pump: {
      tier: 5,
      appliances: [
        { kind: 'scheduled', runningW: 300, startingW: 1500, windows: ['01:10-01:20', '03:30-03:35'] },
      ],
    },
  },
  hours: HOURS,
});
const GROUPS = draw.groupW.length;

const patternOf = ({ hourLoads }: PreparedDraw, groups: readonly number[]) =>
  groups.reduce((pattern, g) => withShare(hourLoads.patterns, pattern, g, 1), hourLoads.patterns.nothing);
const blockOf = (wants: PreparedDraw, pattern: LoadPattern, hour: number) => {
  blocksUntil(wants, pattern, 60 * hour, 60 * hour + 1, -Infinity);
  return pattern.blocks[hour]!;
};
const anyGroups = fc.uniqueArray(fc.integer({ min: 0, max: GROUPS - 1 }));
const anyHour = fc.integer({ min: 0, max: HOURS - 1 });

describe('the sums of an hour', () => {
  it('are those of the groups that the unit carries, minute by minute, whoever asked before', () => {
    let minutes = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(anyGroups, anyHour), { minLength: 1, maxLength: 30 }), (asked) => {
        for (const [groups, hour] of asked) {
          const pattern = patternOf(draw, groups);
          const block = blockOf(draw, pattern, hour);
          const { watts, figures, startExtraW } = draw.hourLoads;
          const figure = (position: number) => figures[block * BLOCK_FIGURES + position]!;
          const varying = Array.from({ length: 60 }, (_, k) => watts[60 * figure(BLOCK_ROW) + k]!);
          const starts = varying.map((_, k) =>
            Math.max(0, ...groups.map((g) => draw.groupExtraW[g]?.[60 * hour + k] ?? 0)),
          );
          varying.forEach((w, k) => {
            const wanted = groups.reduce((total, g) => total + draw.groupW[g]![60 * hour + k]!, 0);
            expect(figure(BLOCK_BASE_W) + w).toBe(wanted);
            expect(startExtraW[60 * block + k]).toBe(starts[k]);
            minutes++;
          });
          expect(figure(BLOCK_LEAST_W)).toBe(Math.min(...varying));
          expect(figure(BLOCK_MOST_W)).toBe(Math.max(...varying));
          expect(figure(BLOCK_PEAK_START_W)).toBe(Math.max(...varying.map((w, k) => w + starts[k]!)));
        }
      }),
      { seed: 5, numRuns: 60 },
    );
    expect(minutes).toBeGreaterThan(10_000);
  });

  it('are one and the same where patterns differ in groups that ask for nothing', () => {
    forgetSums(draw.hourLoads);
    const [steady, often, evening, never] = [0, 1, 2, 3];
    const at = (groups: readonly number[], hour: number) => blockOf(draw, patternOf(draw, groups), hour);
    expect(at([steady, often, never], 0)).toBe(at([steady, often], 0));
    expect(at([steady, often, evening], 0)).toBe(at([steady, often], 0));
    expect(at([steady, often, evening], 2)).not.toBe(at([steady, often], 2));
    expect(draw.hourLoads.used).toBe(1 + 3);
  });

  it('are found again by whatever way groups came and went', () => {
    expect(patternOf(draw, [0, 2, 1])).toBe(patternOf(draw, [1, 0, 2]));
    expect(withShare(draw.hourLoads.patterns, patternOf(draw, [0, 1]), 1, 0)).toBe(patternOf(draw, [0]));
  });
});
