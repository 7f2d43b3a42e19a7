/**
 * Streams, draws and Kaplan–Meier together against processes whose survival is known exactly: small stand-ins for
 * "how many days does it last". Exact values: forward recursion over states, and Feller, An Introduction to
 * Probability Theory and its Applications vol. 1, ch. XIII (runs) and XIV (ruin). Every day of every curve must lie
 * within 4.5 Monte Carlo standard errors, sqrt(S (1 − S) / n), at three seeds.
 */
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import type { Stream } from '../../packages/sim/src/chance/streams.ts';
import { timeReachedBy } from '../../packages/sim/src/trials/quantile.ts';
import { restrictedMean } from '../../packages/sim/src/trials/restricted-mean.ts';
import { kaplanMeier } from '../../packages/sim/src/trials/survival.ts';
import type { LifeTable } from '../../packages/sim/src/trials/survival.ts';
import { within } from './within.ts';

const DRAWS = 10_000;
const HORIZON = 60;
const SEEDS = ['one', 'two', 'three'];
const CURVE_POINTS = SEEDS.length * HORIZON;

/** Whole days until a process ends; Infinity when that is past the horizon. */
type Process = (chance: Stream) => number;

/** A store of `size` days' load that gains a day with probability p, spills what it cannot hold, and ends at 0. */
const ceilingStore =
  (p: number, size: number): Process =>
  (chance) => {
    let level = size;
    for (let day = 1; day <= HORIZON; day += 1) {
      level = chance() < p ? Math.min(size, level + 1) : level - 1;
      if (level === 0) return day;
    }
    return Infinity;
  };

/** Ends when `run` cloudy days come in a row; days are a two-state chain started in its stationary law. */
const cloudyRun =
  (afterCloudy: number, afterClear: number, run: number): Process =>
  (chance) => {
    let cloudy = chance() < afterClear / (1 - afterCloudy + afterClear);
    let length = cloudy ? 1 : 0;
    for (let day = 2; day <= HORIZON && length < run; day += 1) {
      cloudy = chance() < (cloudy ? afterCloudy : afterClear);
      length = cloudy ? length + 1 : 0;
      if (length === run) return day;
    }
    return length === run ? 1 : Infinity;
  };

/** Where a state goes in a day and how likely; state −1 is the end. */
type Moves = (state: number) => readonly (readonly [to: number, probability: number])[];

/** Exact P(not ended by the end of day k), k = 0 … days, by carrying the probabilities of the states forward. */
function exactCurve(start: readonly number[], moves: Moves, days: number): number[] {
  let law = [...start];
  const curve = [1];
  for (let day = 1; day <= days; day += 1) {
    const after = law.map(() => 0);
    law.forEach((mass, state) => moves(state).forEach(([to, p]) => (to < 0 ? 0 : (after[to]! += mass * p))));
    law = after;
    curve.push(law.reduce((sum, mass) => sum + mass, 0));
  }
  return curve;
}

function exactCeilingCurve(p: number, size: number): number[] {
  const full = Array.from({ length: size + 1 }, (_, level) => (level === size ? 1 : 0)); // index: level
  const moves: Moves = (level) => [
    [Math.min(size, level + 1), p],
    [level === 1 ? -1 : level - 1, 1 - p],
  ];
  return exactCurve(full, moves, HORIZON);
}

function exactCloudyCurve(afterCloudy: number, afterClear: number, run: number): number[] {
  const share = afterClear / (1 - afterCloudy + afterClear);
  const dayOne = Array.from({ length: run }, (_, row) => [1 - share, share][row] ?? 0); // index: cloudy days in a row
  const moves: Moves = (row) => {
    const q = row > 0 ? afterCloudy : afterClear;
    return [
      [0, 1 - q],
      [row + 1 === run ? -1 : row + 1, q],
    ];
  };
  return [1, ...exactCurve(dayOne, moves, HORIZON - 1)];
}

function survivalAt(table: LifeTable, day: number): number {
  const at = table.time.findLastIndex((time) => time <= day);
  return at < 0 ? 1 : table.survival[at]!;
}

const monteCarloError = (s: number) => Math.sqrt((s * (1 - s)) / DRAWS);

/** Returns how many points were compared. */
function compareWholeCurve(process: Process, exact: readonly number[]): number {
  let compared = 0;
  for (const seed of SEEDS) {
    const days = Array.from({ length: DRAWS }, (_, draw) => process(streamsOf(seed, draw)('process')));
    const cutOff = days.map((d) => (d > HORIZON ? 1 : 0));
    const table = kaplanMeier(
      days.map((d) => Math.min(d, HORIZON)),
      cutOff,
    );
    for (let day = 1; day <= HORIZON; day += 1) {
      const s = exact[day]!;
      within(survivalAt(table, day), s, 4.5 * monteCarloError(s) + 1e-12, `seed ${seed}, day ${day}`);
      compared += 1;
    }
  }
  return compared;
}

describe('whole curves', () => {
  const printedDays = [3, 4, 5, 7, 10, 14, 20, 30, 60];
  it.each([
    [0.5, 3, [0.875, 0.8125, 0.71875, 0.5859375, 0.43066406, 0.2835083, 0.15160561, 0.05343182, 0.00233934]],
    [0.7, 3, [0.973, 0.9541, 0.92953, 0.8860033, 0.82398887, 0.74768571, 0.64630672, 0.50696067, 0.24467029]],
    [0.6, 5, [1, 1, 0.98976, 0.9700992, 0.93497518, 0.88284172, 0.80836838, 0.69763322, 0.44847328]],
  ])('a store with a full-charge ceiling (p = %f, %i days)', (p, size, printed) => {
    const exact = exactCeilingCurve(p, size);
    printed.forEach((s, i) => within(exact[printedDays[i]!], s, 5.1e-9, `printed, day ${printedDays[i]}`));
    expect(compareWholeCurve(ceilingStore(p, size), exact)).toBe(CURVE_POINTS);
  });

  it.each([
    // P(no run of r in 3, 7, 30 days), Feller ch. XIII
    [0.2, 2, [0.928, 0.806912, 0.36144871]],
    [0.3, 3, [0.973, 0.8979103, 0.56305994]],
    [0.4, 2, [0.744, 0.433728, 0.01982352]],
    [0.5, 4, [1, 0.84375, 0.36094285]],
  ])('runs of cloudy days, independent (q = %f, r = %i)', (q, run, printed) => {
    const exact = exactCloudyCurve(q, q, run);
    printed.forEach((s, i) => within(exact[[3, 7, 30][i]!], s, 5.1e-9, `printed ${i}`));
    expect(compareWholeCurve(cloudyRun(q, q, run), exact)).toBe(CURVE_POINTS);
  });

  it.each([
    // cloudy share 0.3: P(cloudy after cloudy), P(cloudy after clear), run, P(no run in 30 days)
    [0.5, 0.2142857143, 2, 0.0510656],
    [0.6, 0.1714285714, 2, 0.04957288],
    [0.5, 0.2142857143, 3, 0.27821292],
    [0.6, 0.1714285714, 3, 0.20570153],
  ])(
    'runs of cloudy days that cling together (%f after cloudy, %f after clear, r = %i)',
    (cc, cs, run, printed) => {
      const exact = exactCloudyCurve(cc, cs, run);
      within(exact[30], printed, 5.1e-8, 'printed, 30 days');
      expect(compareWholeCurve(cloudyRun(cc, cs, run), exact)).toBe(CURVE_POINTS);
    },
  );
});

describe('single figures', () => {
  it('a daily failure chance of 0.1: 0.4782969 last past day 7, the median is 7 and the mean 10 days', () => {
    for (const seed of SEEDS) {
      const days = Array.from({ length: DRAWS }, (_, draw) => {
        const chance = streamsOf(seed, draw)('process');
        let day = 1;
        while (chance() >= 0.1) day += 1;
        return day;
      });
      const table = kaplanMeier(
        days,
        days.map(() => 0),
      );
      within(survivalAt(table, 7), 0.4782969, 4.5 * monteCarloError(0.4782969), 'past day 7');
      expect(timeReachedBy(0.5, table.time, table.survival)).toBe(7);
      const { mean, standardError } = restrictedMean(table, Math.max(...days));
      within(mean, 10, 4.5 * standardError, 'mean');
    }
  });

  it.each([
    // Feller ch. XIV: up probability, start, target, ruin probability, expected duration
    [0.5, 9, 10, 0.1, 9],
    [0.45, 9, 10, 0.2101, 11.0056],
    [0.6, 3, 10, 0.2839, 20.8061],
    [0.52, 5, 10, 0.4013, 24.6847],
  ])(
    'gambler’s ruin (p = %f from %i to %i): chance of ruin and mean duration',
    (p, start, target, ruin, duration) => {
      for (const seed of SEEDS) {
        let ruined = 0;
        const steps = Array.from({ length: DRAWS }, (_, draw) => {
          const chance = streamsOf(seed, draw)('process');
          let [level, count] = [start, 0];
          for (; level > 0 && level < target; count += 1) level += chance() < p ? 1 : -1;
          ruined += level === 0 ? 1 : 0;
          return count;
        });
        const { mean, standardError } = restrictedMean(
          kaplanMeier(
            steps,
            steps.map(() => 0),
          ),
          Math.max(...steps),
        );
        within(ruined / DRAWS, ruin, 4.5 * monteCarloError(ruin) + 5.1e-5, `ruin, seed ${seed}`);
        within(mean, duration, 4.5 * standardError + 5.1e-5, `duration, seed ${seed}`);
      }
    },
  );
});
