/** What is told of a ladder that was climbed, from runtimes and standings made up on paper. */
import { describe, expect, it } from 'vitest';
import type { Climb, Climbed } from '../../../../packages/sim/src/advice/ladder/climb.ts';
import { confirmRungs } from '../../../../packages/sim/src/advice/ladder/confirm-rungs.ts';
import { lookAtAll } from '../../../../packages/sim/src/advice/ladder/look-at-all.ts';
import type { Standing } from '../../../../packages/sim/src/advice/ladder/standing.ts';
import type { LadderStep } from '../../../../packages/sim/src/scenario/ladder-plan.ts';
import type { Ladder } from '../../../../packages/sim/src/scenario/scenario.ts';
import { tinyScenario } from '../../step/tiny-house.ts';

const scenario = tinyScenario({ circuits: { a: { watts: 100 } }, hours: 240 });
const { household } = scenario.alternatives[0]!;
const strategyId = household.strategies[0]!.id;
const step = (title: string, price: number, atMost = 1): LadderStep => ({
  id: title.toLowerCase(),
  title,
  price,
  brings: [],
  moves: [],
  strategyId: undefined,
  needs: [],
  atMost,
});
const ladder: Ladder = {
  household,
  startTitle: 'Start',
  startStrategyId: strategyId,
  without: [],
  startMoves: [],
  steps: [step('Module', 300, 3), step('Panels', 500)],
  currency: '¤',
  budget: undefined,
  confidence: 0.9,
};

/** Days of a hundred outages after each number of modules and panels: a first half, and the rest. */
const DAYS: Readonly<Record<string, readonly [number, number]>> = {
  '0,0': [1, 1],
  '1,0': [1, 2], // longer on average alone
  '1,1': [3, 3],
  '2,0': [4, 4],
};
const standing = (...counts: number[]): Standing => ({ counts, strategyId, days: null, meanDays: 0 });
const rung = (taken: number, price: number, to: Standing): Climbed => ({ taken: [taken], price, to });
const climbed: Climb = {
  start: standing(0, 0),
  rungs: [rung(0, 300, standing(1, 0)), rung(1, 500, standing(1, 1))],
  ended: 'no gain',
};

const { rungs, other } = await confirmRungs(
  scenario,
  ladder,
  climbed,
  standing(2, 0),
  (cells) =>
    Promise.resolve(
      cells.map(({ counts }) => {
        const [first, rest] = DAYS[String(counts)]!;
        const times = Float64Array.from({ length: 100 }, (_, i) => 1440 * (i < 50 ? first : rest));
        return { times, censored: new Float64Array(100) };
      }),
    ),
  'paper',
);

describe('a rung', () => {
  it('has a price for each day that it gains, and none where it gains on average alone', () => {
    expect(rungs.map(({ gainDays, told }) => [gainDays.value, told])).toEqual([
      [0, 'on average'],
      [2, 'clear'],
    ]);
    expect(rungs.map(({ pricePerDay }) => pricePerDay)).toEqual([null, 250]);
    expect(rungs.map(({ price, paid }) => [price, paid])).toEqual([
      [300, 300],
      [500, 800],
    ]);
  });
});

describe('another set of steps', () => {
  it('is told step by step, with how often, and held against the end of the ladder', () => {
    expect(other!.stepTitles).toEqual(['Module (2 times)']);
    expect([other!.paid, other!.days.value, other!.gainDays.value]).toEqual([600, 4, 1]);
  });
});

describe('the best of all combinations', () => {
  const stands = (days: number, ...counts: number[]): Standing => ({
    ...standing(...counts),
    days,
    meanDays: days,
  });
  const all = [stands(1, 0, 0), stands(2, 1, 0), stands(3, 0, 1), stands(3, 2, 0), stands(3.5, 1, 1)];
  const oneModule: Climb = { start: all[0]!, rungs: [rung(0, 300, all[1]!)], ended: 'budget' };
  const within = (budget: number | undefined) =>
    lookAtAll(ladder, oneModule, all, { budget, mostRuns: 100, horizonDays: 10 });

  it('is the one that the whole budget buys, not only the ladder’s own money; without one it is that', () => {
    expect(within(800).best.counts).toEqual([1, 1]);
    expect(within(undefined).best.counts).toEqual([1, 0]);
  });

  it('is the cheaper of two that last as long: panels for 500, not two modules for 600', () => {
    expect(within(600).best.counts).toEqual([0, 1]);
    const reversed = lookAtAll(ladder, oneModule, [...all].reverse(), {
      budget: 600,
      mostRuns: 100,
      horizonDays: 10,
    });
    expect(reversed.best.counts).toEqual([0, 1]);
  });
});
