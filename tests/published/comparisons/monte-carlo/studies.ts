/** From a scenario, by its weather year and its appliances, to the published curve. */
import { runShard, summarise, type Study, type SurvivalCurve } from '../../../../packages/sim/src/index.ts';
import {
  bareCircuit,
  bareStudy,
  bareUnit,
  daysOfSun,
  during,
  FOUR_HOURS,
  NO_SUN,
  steady,
} from '../../bare-household.ts';
import type { Comparison } from '../comparison.ts';
import { autonomyBank, ceilingBank } from './banks.ts';
import { ceilingStore, cloudyRuns, cloudyRunsOfBlocks } from './exact-survival.ts';
import { DAY_LOAD_WH, type DayBank } from './day-bank.ts';
import { dayNumbers, LARGEST_GAP, largestGap, SEEDS } from './gaps.ts';

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
function studyOfYear(
  bank: DayBank,
  sun: number,
  isBright: (day: number) => boolean,
  blockDays: number,
  outage = {},
) {
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

export const studies: readonly Comparison[] = [
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
    claim:
      'a start beyond the surge rating that comes with chance 0.1 a day: whole curve, 0.9 to the power of the days',
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
