/**
 * The simulator's chances against processes whose survival is known exactly. Every day of every curve is compared; the
 * figure shown is the largest gap in Monte Carlo standard errors, √(S(1 − S)/n), which must stay below 4.5 (some
 * hundreds of points are looked at, so the largest of them is commonly near 3).
 */
import { streamsOf, type Stream } from '../../packages/sim/src/chance/streams.ts';
import { runShard, summarise, type Study, type SurvivalCurve } from '../../packages/sim/src/index.ts';
import { bareCircuit, bareStudy, bareUnit, daysOfSun, during, FOUR_HOURS, NO_SUN, steady } from './bare-household.ts';
import { atMost, near, type Comparison, type Comparisons } from './comparison.ts';
import { ceilingStore, cloudyRuns, cloudyRunsOfBlocks, depthAbove } from './exact-survival.ts';
import { createDayBank, DAY_LOAD_WH, type DayBank } from './made-days.ts';

export const SEEDS = ['one', 'two', 'three'] as const;
const LARGEST_GAP = atMost(4.5);
/** Stores are this much short of whole loads, so that the day a store would come to exactly nothing is the day it ends. */
const SHORT = 0.01;

/** Largest gap between found and exact shares, in standard errors. Where the exact share is 0 or 1, any gap is too large. */
function largestGap(found: readonly number[], exact: readonly number[], n: number): number {
  return Math.max(
    ...exact.map((share, i) => {
      const gap = Math.abs(found[i]! - share);
      if (gap < 1e-9) return 0;
      return gap / Math.sqrt((share * (1 - share)) / n);
    }),
  );
}

const dayNumbers = (days: number) => Array.from({ length: days }, (_, k) => k + 1);

/** Chance of ending later than day k, k = 1 … days. */
function sharesPast(endedOnDay: readonly (number | undefined)[], days: number): number[] {
  return dayNumbers(days).map((k) => endedOnDay.filter((day) => day === undefined || day > k).length / endedOnDay.length);
}

/* ---- through the minute loop, the sun of each day put in by hand ---- */

const HAND_DRAWS = 800;

/** Ends of HAND_DRAWS runs a seed. @param sunOf loads of sun by day, made anew for each run from its own stream */
function endsOf(bank: DayBank, sunOf: (chance: Stream) => (day: number) => number, seed: string) {
  const live = createDayBank(bank);
  return Array.from({ length: HAND_DRAWS }, (_, draw) => live(sunOf(streamsOf(seed, draw)('days'))));
}

function worstOverSeeds(bank: DayBank, sunOf: (chance: Stream) => (day: number) => number, exact: readonly number[]): number {
  const bySeed = SEEDS.map((seed) => endsOf(bank, sunOf, seed).map((lived) => lived.endedOnDay));
  const samples = [...bySeed, bySeed.flat()]; // each seed, and all of them together
  return Math.max(...samples.map((ends) => largestGap(sharesPast(ends, bank.days), exact.slice(1), ends.length)));
}

/** Two loads of sun on bright days, of which the evening takes one: up a day, or down a day. */
const upOrDown = (p: number) => (chance: Stream) => () => (chance() < p ? 2 : 0);

const ceilingBank = (size: number, start: number, days: number): DayBank => ({
  capacity: size + 1 - SHORT,
  start: start - SHORT,
  loadHours: '18:00-22:00',
  days,
});

const ceilings: readonly Comparison[] = (
  [
    [0.5, 3],
    [0.7, 3],
    [0.6, 5],
  ] as const
).map(([p, size]) => ({
  claim: `a store of ${size} days that gains one with chance ${p} and spills at the brim: whole curve, 40 days`,
  source: 'chances carried forward (C; Feller vol. 1)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => worstOverSeeds(ceilingBank(size, size, 40), upOrDown(p), ceilingStore(p, size, size, 40)),
}));

/** Mean lifetimes; the horizon is far enough out for what lies past it not to show. */
const lifetimes: readonly Comparison[] = (
  [
    [0.5, 3, 1, 6],
    [0.5, 3, 3, 12],
    [0.5, 5, 2, 18],
    [0.6, 3, 3, 20.625],
  ] as const
).map(([p, size, start, mean]) => ({
  claim: `the same (${size} days, chance ${p}) started with ${start}: mean lifetime of ${mean} days`,
  source: 'expected days to the first empty; for one half, z(2N + 1 − z) (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const days = endsOf(ceilingBank(size, start, 250), upOrDown(p), 'means').map((lived) => lived.days);
    const found = days.reduce((sum, d) => sum + d, 0) / days.length;
    const variance = days.reduce((sum, d) => sum + (d - found) ** 2, 0) / (days.length - 1);
    return Math.abs(found - mean) / Math.sqrt(variance / days.length);
  },
}));

/** A bank that any bright day fills; it holds out `run - 1` dull evenings after one, and not another. */
const autonomyBank = (run: number, days: number): DayBank => ({
  capacity: run + 1 - SHORT,
  start: run - SHORT,
  loadHours: '18:00-22:00',
  days,
});

/** Bright and dull days that cling together: a two-state chain started in its long-run law. */
const clinging = (afterCloudy: number, afterClear: number, run: number) => (chance: Stream) => {
  let cloudy = chance() < afterClear / (1 - afterCloudy + afterClear);
  return (day: number) => {
    if (day > 0) cloudy = chance() < (cloudy ? afterCloudy : afterClear);
    return cloudy ? 0 : run + 1;
  };
};

const runsOfCloud: readonly Comparison[] = (
  [
    [0.3, 0.3, 2, 0.10813132],
    [0.3, 0.3, 3, 0.56305994],
    [0.5, 0.2142857143, 3, 0.27821292],
    [0.6, 0.1714285714, 3, 0.20570153],
  ] as const
).flatMap(([afterCloudy, afterClear, run, printed]) => {
  const exact = cloudyRuns(afterCloudy, afterClear, run, 30);
  const days = `${run} cloudy days in a row (${afterCloudy.toFixed(2)} after cloudy, ${afterClear.toFixed(2)} after clear)`;
  return [
    {
      claim: `${days}: chance of none in 30, by our recursion`,
      source: 'Feller vol. 1 ch. XIII (C)',
      unit: 'share',
      band: near(printed, 5.1e-8),
      ours: () => exact[30]!,
    },
    {
      claim: `${days}: whole curve, 30 days`,
      source: 'Feller vol. 1 ch. XIII (C)',
      unit: 'standard errors',
      band: LARGEST_GAP,
      ours: () => worstOverSeeds(autonomyBank(run, 30), clinging(afterCloudy, afterClear, run), exact),
    },
  ];
});

const ruins: readonly Comparison[] = (
  [
    [0.5, 9, 10, 0.1],
    [0.45, 9, 10, 0.2101],
    [0.6, 3, 10, 0.2839],
    [0.52, 5, 10, 0.4013],
  ] as const
).map(([p, start, target, ruin]) => ({
  claim: `gambler’s ruin from ${start} of ${target} with chance ${p}: an empty bank before the target in ${ruin} of runs`,
  source: 'Feller vol. 1 ch. XIV (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const live = createDayBank(ceilingBank(target + 2, start, 300));
    const ruined = Array.from({ length: HAND_DRAWS }, (_, draw) => {
      const sun = upOrDown(p)(streamsOf('ruin', draw)('days'));
      return live(sun, (level) => level > target - 0.5).endedOnDay !== undefined ? 1 : 0;
    }).reduce<number>((sum, one) => sum + one, 0);
    return largestGap([ruined / HAND_DRAWS], [ruin], HAND_DRAWS);
  },
}));

const DEPTHS = [0, 0.5, 1, 1.5, 2, 3] as const;

const depths: readonly Comparison[] = [0.5, 0.7].map((rho) => ({
  claim: `a load a day and exponential sun of mean 1/${rho}: share of nights deeper than ${DEPTHS.join(', ')} loads`,
  source: 'waiting time of the queue M/D/1, Erlang 1909 (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const capacity = 80;
    const bank: DayBank = { capacity, start: capacity, loadHours: '02:00-06:00', days: 60 };
    const exponential = (chance: Stream) => () => -Math.log(1 - chance()) / rho;
    const levels = endsOf(bank, exponential, 'depths').map((lived) => capacity - lived.level);
    const found = DEPTHS.map((x) => levels.filter((depth) => depth > x + 1e-6).length / levels.length);
    return largestGap(
      found,
      DEPTHS.map((x) => depthAbove(rho, x)),
      HAND_DRAWS,
    );
  },
}));

/* ---- from a scenario to the published curve ---- */

const STUDY_DRAWS = 350;
const STUDY_DAYS = 12;

function curveAt(curve: SurvivalCurve, day: number): number {
  return curve.survival[curve.day.findLastIndex((d) => d <= day)]!;
}

/** Whole curve of a study's summary against the exact one: the worst of three seeds and of all together. */
function worstOfStudies(studyOf: (seed: string) => Study, exact: readonly number[]): number {
  // up to the day before the horizon: at the horizon itself every run that is left is cut off
  const days = dayNumbers(STUDY_DAYS - 1);
  const curves = SEEDS.map((seed) => {
    const study = studyOf(seed);
    const { curve } = summarise(study, runShard(study, 0, STUDY_DRAWS)).strategies[0]!;
    return days.map((day) => curveAt(curve, day));
  });
  const together = days.map((_, i) => curves.reduce((sum, curve) => sum + curve[i]!, 0) / curves.length);
  const gaps = curves.map((found) => largestGap(found, exact.slice(1, STUDY_DAYS), STUDY_DRAWS));
  return Math.max(...gaps, largestGap(together, exact.slice(1, STUDY_DAYS), STUDY_DRAWS * SEEDS.length));
}

/** Days of a made year, drawn again by blocks of a mean length; bright days bring `sun` loads. */
function studyOfYear(bank: DayBank, sun: number, isBright: (day: number) => boolean, blockDays: number, outage = {}) {
  return (seed: string) =>
    bareStudy({
      units: [
        bareUnit({
          capacityWh: bank.capacity * DAY_LOAD_WH,
          sunW: (sun * DAY_LOAD_WH) / 4,
          battery: { startFraction: bank.start / bank.capacity },
        }),
      ],
      circuits: [bareCircuit('load', 'L1', during(DAY_LOAD_WH / 4, bank.loadHours))],
      days: STUDY_DAYS,
      year: daysOfSun((day) => (isBright(day) ? FOUR_HOURS : NO_SUN)),
      weather: { windowDays: 182, blockDays },
      outage,
      seed,
    });
}

/** Exactly `fifths` fifths of a year's 365 days. */
const fifthsOfDays = (fifths: number) => (day: number) => day % 5 < fifths;
/** Four dull days, six bright ones, over and over. */
const inSpells = (day: number) => day % 10 >= 4;

const studies: readonly Comparison[] = [
  {
    claim: 'six tenths of the days bright, drawn one by one: a store of 5 days',
    source: 'chances carried forward (C; Feller vol. 1)',
    ours: () =>
      worstOfStudies(
        studyOfYear(ceilingBank(5, 5, STUDY_DAYS), 2, fifthsOfDays(3), 1),
        ceilingStore(0.6, 5, 5, STUDY_DAYS),
      ),
  },
  {
    claim: 'two fifths dull, drawn one by one: three dull days in a row',
    source: 'Feller vol. 1 ch. XIII (C)',
    ours: () =>
      worstOfStudies(
        studyOfYear(autonomyBank(3, STUDY_DAYS), 4, fifthsOfDays(3), 1),
        cloudyRuns(0.4, 0.4, 3, STUDY_DAYS),
      ),
  },
  {
    claim: 'the same, begun by a storm: the first day is a dull one',
    source: 'Feller vol. 1 ch. XIII (C)',
    ours: () =>
      worstOfStudies(
        studyOfYear(autonomyBank(3, STUDY_DAYS), 4, fifthsOfDays(3), 1, { stormLed: true }),
        cloudyRuns(0.4, 0.4, 3, STUDY_DAYS, 1),
      ),
  },
  {
    claim: 'spells of four dull and six bright days, drawn in blocks of three days: three dull days in a row',
    source: 'stationary bootstrap (Politis & Romano 1994), chances carried forward (C)',
    ours: () =>
      worstOfStudies(
        studyOfYear(autonomyBank(3, STUDY_DAYS), 4, inSpells, 3),
        cloudyRunsOfBlocks(
          Array.from({ length: 365 }, (_, day) => !inSpells(day)),
          1 / 3,
          3,
          STUDY_DAYS,
        ),
      ),
  },
  {
    claim: 'a start beyond the surge rating that comes with chance 0.1 a day: whole curve, 0.9 to the power of the days',
    source: 'independent daily failures (C)',
    ours: () =>
      worstOfStudies(
        (seed) =>
          bareStudy({
            units: [bareUnit({ capacityWh: 1e5, inverter: { surgeW: 2000, continuousW: 1500 } })],
            circuits: [
              bareCircuit('light', 'L1', steady(10)),
              bareCircuit('pump', 'L1', {
                kind: 'events',
                runningW: 1,
                startingW: 3000,
                usesPerDay: -Math.log(0.9),
                minutesPerUse: 0.01,
                hourWeights: new Array<number>(24).fill(1),
              }),
            ],
            days: STUDY_DAYS,
            seed,
          }),
        dayNumbers(STUDY_DAYS + 1).map((k) => 0.9 ** (k - 1)),
      ),
  },
].map((each) => ({ ...each, unit: 'standard errors', band: LARGEST_GAP }));

export const monteCarloComparisons: Comparisons = {
  'a store with a brim': ceilings,
  'mean lifetimes': lifetimes,
  'runs of cloudy days': runsOfCloud,
  'ruin before a target': ruins,
  'depth of discharge': depths,
  'from a scenario to the curve': studies,
};
