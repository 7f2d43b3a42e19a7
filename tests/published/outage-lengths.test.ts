/** Lengths of outages and their weighing against closed forms, and the published figures that they start from. */
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import {
  exponentialLaw,
  listLaw,
  logNormalLaw,
  mixedLaw,
  type LengthLaw,
} from '../../packages/sim/src/advice/outage-lengths/length-law.ts';
import {
  kindsOf,
  PUBLISHED_FIGURES,
} from '../../packages/sim/src/advice/outage-lengths/published-figures.ts';
import { riddenOut } from '../../packages/sim/src/advice/outage-lengths/ridden-out.ts';
import { normalProbability } from '../../packages/sim/src/trials/normal-probability.ts';
import { within } from './within.ts';

describe('the normal probability', () => {
  it.each([
    // M. Abramowitz & I. A. Stegun 1964, Table 26.1
    [0, 0.5],
    [1, 0.84134474606854],
    [2, 0.97724986805182],
    [3, 0.9986501019684],
    [-1.96, 0.02499789514823],
    [5, 0.99999971334843],
  ])('of %d is %d, as tabulated', (x, p) => within(normalProbability(x), p, 1e-13, `Φ(${x})`));
});

describe('laws of length', () => {
  const laws: readonly [string, LengthLaw][] = [
    ['exponential', exponentialLaw(14.6)],
    ['log-normal', logNormalLaw(14.6, 29.2)],
    ['list', listLaw([2, 2, 5, 30, 100])],
    [
      'two kinds',
      mixedLaw([
        { weight: 1, law: exponentialLaw(2) },
        { weight: 0.4, law: logNormalLaw(14.6, 29.2) },
      ]),
    ],
  ];

  it.each(laws)('%s: the mean beyond t is the area under the survival curve past t', (_, law) => {
    const step = 0.01;
    for (const t of [0, 1, 6, 24, 72]) {
      let area = 0;
      for (let k = 0; k < 400_000; k++) area += step * (1 - law.overBy(t + (k + 0.5) * step));
      within(law.meanBeyond(t), area, 0.02, `beyond ${t} h`);
    }
    within(law.meanBeyond(0), law.meanHours, 1e-9, 'beyond 0');
  });

  it('log-normal has the median exp μ and the quantiles of its normal law', () => {
    const law = logNormalLaw(14.6, 29.2);
    const median = 14.6 / Math.sqrt(5); // mean / √(1 + (sd/mean)²)
    within(law.overBy(median), 0.5, 1e-12, 'median');
    within(law.overBy(median * Math.exp(1.959963984540054 * Math.sqrt(Math.log(5)))), 0.975, 1e-9, '97.5 %');
  });
});

describe('a survival curve weighed by lengths', () => {
  it('with exponential runtimes and exponential lengths is a/(a + b), the race of two clocks: 20,000 draws, 4 standard errors', () => {
    // Feller, An Introduction to Probability Theory vol. 2, ch. I: the chance that the clock of rate b stops first
    const [holdsHours, outageHours] = [40, 10];
    const uniform = streamsOf('race', 0)('runtimes');
    const times = Float64Array.from({ length: 20_000 }, () => -holdsHours * Math.log(1 - uniform()));
    const { chance, hoursWithout } = riddenOut(
      { times, censored: new Float64Array(times.length) },
      exponentialLaw(outageHours),
      199,
      streamsOf('race', 1)('resamples'),
    );
    within(chance.least, holdsHours / (holdsHours + outageHours), 0.006, 'ridden out');
    expect(chance.most).toBe(chance.least);
    // E max(L − T, 0) = b²/(a + b), without memory
    within(hoursWithout.most, outageHours ** 2 / (holdsHours + outageHours), 0.07, 'hours without');
    expect(chance.low).toBeLessThan(0.8);
    expect(chance.high).toBeGreaterThan(0.8);
  });

  it('that the horizon cuts lies between the two ends, which are the closed form with the tail lost and kept', () => {
    const [holds, lasts, horizon] = [40, 10, 24];
    const uniform = streamsOf('race', 0)('runtimes');
    const raw = Float64Array.from({ length: 20_000 }, () => -holds * Math.log(1 - uniform()));
    const cut = {
      times: raw.map((t) => Math.min(t, horizon)),
      censored: raw.map((t) => (t >= horizon ? 1 : 0)),
    };
    const { chance, hoursWithout } = riddenOut(cut, exponentialLaw(lasts), 199, streamsOf('race', 1)('x'));
    // rates: ended before the horizon, and still running there
    const both = 1 / holds + 1 / lasts;
    const ended = 1 - Math.exp(-horizon / holds) - (1 / holds / both) * (1 - Math.exp(-both * horizon));
    const running = Math.exp(-horizon / holds);
    within(chance.least, ended + running * (1 - Math.exp(-horizon / lasts)), 0.006, 'least');
    within(chance.most, ended + running, 0.006, 'most');
    expect(chance.least).toBeLessThan(0.8);
    expect(chance.most).toBeGreaterThan(0.8);
    expect(hoursWithout.least).toBeLessThan(2);
    expect(hoursWithout.most).toBeGreaterThan(2);
  });
});

describe('published figures', () => {
  // US EIA, Today in Energy, 30 November 2018 and 1 December 2025, as told in the source of each
  it.each([
    ['us-2017', 1.4, 470 / 60],
    ['us-2024', 1.5, 11],
  ] as const)('%s add up to %d interruptions and %d hours a year', (id, perYear, hoursPerYear) => {
    const { kinds, source } = kindsOf({ published: id });
    within(
      kinds.reduce((sum, k) => sum + k.perYear, 0),
      perYear,
      1e-9,
      'SAIFI',
    );
    within(
      kinds.reduce((sum, k) => sum + k.perYear * k.meanHours!, 0),
      hoursPerYear,
      1e-9,
      'SAIDI',
    );
    expect(source).toContain(PUBLISHED_FIGURES[id].title);
    expect(source).toContain('EIA');
  });
});
