/**
 * Statistics against published tables.
 *
 * Freireich et al. 1963, Blood 21:699–716 (remission weeks), with the estimates printed from it in survival-analysis
 * texts (Klein & Moeschberger 2003, ch. 4 and 7; G. Rodríguez, Princeton survival notes) and recomputed to six figures;
 * Newcombe 1998, Stat. Med. 17:857–872 (Wilson); Hyndman & Fan 1996, Am. Stat. 50:361–365 (quantile types).
 */
import { describe, expect, it } from 'vitest';
import { logRank } from '../../packages/sim/src/trials/log-rank.ts';
import { Z_95 } from '../../packages/sim/src/trials/normal-quantile.ts';
import { daysReachedBy, timeReachedBy } from '../../packages/sim/src/trials/quantile.ts';
import { restrictedMean } from '../../packages/sim/src/trials/restricted-mean.ts';
import { kaplanMeier } from '../../packages/sim/src/trials/survival.ts';
import { wilson } from '../../packages/sim/src/trials/wilson.ts';
import { within } from './within.ts';

/** Weeks as printed: `6+` was still in remission when last seen. */
function weeks(printed: string): { times: number[]; censored: number[] } {
  const entries = printed.split(' ');
  return {
    times: entries.map((entry) => Number.parseInt(entry, 10)),
    censored: entries.map((entry) => (entry.endsWith('+') ? 1 : 0)),
  };
}
const TREATED = weeks('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+');
const PLACEBO = weeks('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23');

const complete = (sample: readonly number[]) =>
  kaplanMeier(
    sample,
    sample.map(() => 0),
  );

describe('remission weeks of Freireich 1963', () => {
  // time, at risk, events, S, Greenwood standard error, log-log 95 % limits
  const treatedRows = [
    [6, 21, 3, 0.857143, 0.07636, 0.6197, 0.9516],
    [7, 17, 1, 0.806723, 0.086935, 0.5631, 0.9228],
    [10, 15, 1, 0.752941, 0.09635, 0.5032, 0.8894],
    [13, 12, 1, 0.690196, 0.106815, 0.4316, 0.8491],
    [16, 11, 1, 0.627451, 0.114054, 0.3675, 0.8049],
    [22, 7, 1, 0.537815, 0.128234, 0.2678, 0.7468],
    [23, 6, 1, 0.448179, 0.134591, 0.188, 0.6801],
  ];
  const placeboRows = [
    [1, 21, 2, 0.904762, 0.064056, 0.67, 0.9753],
    [2, 19, 2, 0.809524, 0.085689, 0.5689, 0.9239],
    [3, 17, 1, 0.761905, 0.092943, 0.5194, 0.8933],
    [4, 16, 2, 0.666667, 0.102869, 0.4253, 0.825],
    [5, 14, 2, 0.571429, 0.10799, 0.338, 0.7492],
    [8, 12, 4, 0.380952, 0.105971, 0.1831, 0.5778],
    [11, 8, 2, 0.285714, 0.098581, 0.1166, 0.4818],
    [12, 6, 2, 0.190476, 0.085689, 0.0595, 0.3774],
    [15, 4, 1, 0.142857, 0.07636, 0.0357, 0.3212],
    [17, 3, 1, 0.095238, 0.064056, 0.0163, 0.2613],
    [22, 2, 1, 0.047619, 0.046471, 0.0033, 0.197],
    [23, 1, 1, 0, 0], // no log-log limits where the curve is at 0
  ];
  // half a unit of the last printed figure; the printed limits take 1.96 for 1.959964, which moves them by up to 5e-6
  const tolerances = [0, 0, 0, 5.1e-7, 5.1e-7, 5.6e-5, 5.6e-5];

  it.each([
    ['6-MP', TREATED, treatedRows, 49],
    ['placebo', PLACEBO, placeboRows, 82],
  ] as const)('Kaplan–Meier, Greenwood and log-log limits equal the table (%s)', (_, data, rows, figures) => {
    const table = kaplanMeier(data.times, data.censored);
    const { time, atRisk, events, survival, standardError, low, high } = table;
    const columns = [time, atRisk, events, survival, standardError, low, high];
    expect(time).toHaveLength(rows.length);
    let compared = 0;
    rows.forEach((row, i) =>
      row.forEach((expected, c) => {
        within(columns[c]![i], expected, tolerances[c]!, `row ${i}, column ${c}`);
        compared += 1;
      }),
    );
    expect(compared).toBe(figures);
  });

  it('the medians are 23 and 8 weeks', () => {
    const medians = [TREATED, PLACEBO].map(
      (d) => daysReachedBy(0.5, kaplanMeier(d.times, d.censored), 1).value,
    );
    expect(medians).toEqual([23, 8]);
  });

  it('the mean restricted to 35 weeks is 23.287395 (6-MP); the mean of the complete placebo sample is 8.6667', () => {
    within(restrictedMean(kaplanMeier(TREATED.times, TREATED.censored), 35).mean, 23.287395, 5.1e-7, '6-MP');
    within(restrictedMean(kaplanMeier(PLACEBO.times, PLACEBO.censored), 23).mean, 8.6667, 5.1e-5, 'placebo');
  });

  it('log-rank: 9 observed against 19.2505 expected, variance 6.2570, chi-square 16.7929', () => {
    const test = logRank(TREATED, PLACEBO);
    expect([test.observedFirst, test.observedSecond]).toEqual([9, 21]);
    within(test.expectedFirst, 19.2505, 1e-4, 'expected, 6-MP');
    within(test.expectedSecond, 10.7495, 1e-4, 'expected, placebo');
    within(test.variance, 6.257, 1e-4, 'variance');
    within(test.chiSquare, 16.7929, 1e-4, 'chi-square');
  });
});

describe('Wilson limits', () => {
  // Newcombe 1998, method 3, for the first four; the others computed once in double precision
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
    [29, 29, 0.883, 1],
    [5, 10, 0.2366, 0.7634],
    [0, 100, 0, 0.037],
    [950, 1000, 0.9347, 0.9619],
  ])('%i in %i: %f to %f', (successes, trials, low, high) => {
    const estimate = wilson(successes, trials);
    within(estimate.low, low, 5.1e-5, 'low');
    within(estimate.high, high, 5.1e-5, 'high');
    expect(estimate.value).toBe(successes / trials);
  });

  it('take the 0.975 quantile of the standard normal law, 1.959964', () => within(Z_95, 1.959964, 5e-7, 'z'));
});

describe('quantile type: Hyndman & Fan type 1, counted from the longest', () => {
  const tens = [1, 2, 4, 7, 11, 16, 22, 29, 37, 46];
  const sixes = [1, 2, 3, 4, 5, 6];
  const reached = (sample: readonly number[], p: number) => {
    const table = complete(sample);
    return timeReachedBy(1 - p, table.time, table.survival);
  };

  it.each([
    [tens, 0.05, 1],
    [tens, 0.25, 4],
    [tens, 0.95, 46],
    [sixes, 0.25, 2],
    [sixes, 0.9, 6],
  ])('equals the printed type 1 where n·p is no whole number (case %#)', (sample, p, type1) => {
    expect(reached(sample, p)).toBe(type1);
  });

  it.each([
    [0.1, 1, 1.5],
    [0.5, 11, 13.5],
    [0.9, 37, 41.5],
  ])('where n·p is whole (p = %f) is the upper of the two values that type 2 averages', (p, type1, type2) => {
    expect(reached(tens, p)).toBe(2 * type2 - type1);
  });
});

describe('interval of the days that a share reach, complete samples: exact coverage', () => {
  /** P(l ≤ Binomial(n, p) ≤ u − 1): how often [x(l), x(u)] holds the p-quantile. */
  function coverage(n: number, p: number, l: number, u: number): number {
    let logTerm = n * Math.log1p(-p);
    let sum = 0;
    for (let k = 0; k < u; k += 1) {
      if (k >= l) sum += Math.exp(logTerm);
      logTerm += Math.log((n - k) / (k + 1)) + Math.log(p / (1 - p));
    }
    return sum;
  }

  /** Which order statistics our limits are: in the sample 1 … n every value is its own rank. */
  function ranks(n: number, share: number): [low: number, high: number] {
    const { low, high } = daysReachedBy(share, complete(Array.from({ length: n }, (_, i) => i + 1)), 1);
    return [low!, high!];
  }

  it.each([
    // exact binomial sums, six figures
    [10, 0.5, 2, 9, 0.978516],
    [20, 0.5, 6, 15, 0.958611],
    [25, 0.5, 8, 18, 0.956715],
    [100, 0.5, 40, 61, 0.9648],
    [100, 0.1, 5, 16, 0.936398],
    [200, 0.1, 12, 30, 0.966884],
    [1000, 0.5, 469, 532, 0.953709],
    [1000, 0.1, 82, 119, 0.949098],
  ])('this test’s own coverage formula equals the table (n = %i, p = %f)', (n, p, l, u, tabulated) => {
    within(coverage(n, p, l, u), tabulated, 6e-7, 'coverage');
  });

  it.each([100, 200, 400, 1000, 2000, 10_000])(
    '%i draws cover 94 to 97 per cent, nine in ten and half',
    (n) => {
      for (const share of [0.9, 0.5])
        within(coverage(n, 1 - share, ...ranks(n, share)), 0.955, 0.015, `share ${share}`);
    },
  );

  it('lies within three ranks of the order-statistic intervals of n = 1000', () => {
    const gaps = [...ranks(1000, 0.9), ...ranks(1000, 0.5)].map((rank, i) =>
      Math.abs(rank - [82, 119, 469, 532][i]!),
    );
    expect(Math.max(...gaps)).toBeLessThanOrEqual(3);
  });
});
