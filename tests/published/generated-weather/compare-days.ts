/** Days: from each place's normals, 100 generated years against what the place's file holds. */
import { mean } from 'simple-statistics';
import type { MonthlyNormals } from '../../../packages/sim/src/scenario/scenario.ts';
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';
import { near } from './comparison.ts';
import type { Comparison } from './comparison.ts';
import { correlation, DARK, deviations, generateSeries, lag1, rms } from './days.ts';
import type { DaySeries } from './days.ts';
import { DAY_CLASSES, LYNGBY, OBSERVED_YEARS, STAYS_CLEAR, STAYS_DARK } from './observed.ts';

const YEARS = 100;
/** Correction for modelled radiation; see packages/sim/src/weather/typical-year.ts. */
const TYPICAL_YEAR_SPREAD = 1.07;
const CLASS_EDGES = [-Infinity, DARK, 0.5, 0.65, Infinity];

interface Case {
  readonly id: string;
  readonly monthly: MonthlyNormals;
  readonly measured: boolean;
  readonly series: DaySeries;
}

export function compareDays(places: ReadonlyMap<string, NormalsPlace>): Comparison[] {
  const cases: Case[] = [...places.values()].map(({ id, monthly, kind }) => ({
    id,
    monthly,
    measured: kind === 'measured',
    series: generateSeries(monthly, YEARS, `days ${id}`),
  }));
  cases.push({
    id: 'lyngby-dtu',
    monthly: LYNGBY,
    measured: true,
    series: generateSeries(LYNGBY, YEARS, 'days lyngby'),
  });
  const typical = cases.filter((each) => !each.measured && each.id !== 'fairbanks');
  return [
    ...cases.flatMap(monthMeans),
    ...cases.flatMap(wholeYear),
    ...compareClasses('typical years', DAY_CLASSES.typicalYears, typical),
    ...(['penn-state', 'lyngby-dtu'] as const).flatMap((id) => [
      ...compareClasses(
        id,
        DAY_CLASSES[id],
        cases.filter((each) => each.id === id),
      ),
      ...compareStays(id, cases.find((each) => each.id === id)!.series),
    ]),
  ];
}

/** Against the normals themselves: what goes in must come out. */
function monthMeans({ id, monthly, series }: Case): Comparison[] {
  return monthly.clearnessMean.flatMap((clearness, month) => {
    const rows = [...series.month.keys()].filter((day) => series.month[day] === month);
    const sd = monthly.clearnessSd![month]!;
    const where = `${id}, month ${month + 1}`;
    const generated = mean(rows.map((day) => series.clearness[day]!));
    const dryBulbC = mean(rows.map((day) => series.dryBulbC[day]!));
    const dryBulbTolerance = 0.22 * monthly.dryBulbSdC![month]! + 0.1;
    return [
      near('daily clearness, month mean', where, clearness, generated, 0.11 * sd + 0.003),
      near('dry-bulb, month mean', where, monthly.dryBulbMeanC[month]!, dryBulbC, dryBulbTolerance),
    ];
  });
}

/** Against the whole-year figures, deviations taken as they were observed: about each month's own mean in a single year. */
function wholeYear({ id, monthly, measured, series }: Case): Comparison[] {
  const observed = OBSERVED_YEARS[id]!;
  const about = measured ? 'all-years' : 'own-year';
  const clearness = deviations(series, series.clearness, about);
  const dryBulb = deviations(series, series.dryBulbC, about);
  const dark = series.clearness.filter((value) => value < DARK).length / series.clearness.length;
  const sd = observed.sd * (measured ? 1 : TYPICAL_YEAR_SPREAD);
  const darkBand = measured
    ? { expected: observed.dark, tolerance: 0.02 }
    : { expected: observed.dark + 0.01, tolerance: 0.035 };
  const rangeC = mean(monthly.dryBulbDailyRangeC as number[]);
  const compared = [
    near('daily clearness, spread', id, observed.sd, rms(clearness), 0.03 * sd, sd),
    near('daily clearness, lag 1', id, observed.lag1, lag1(series, clearness), 0.05),
    near('dry-bulb, spread of day means', id, observed.dryBulbSdC, rms(dryBulb), 0.05 * observed.dryBulbSdC),
    near('dry-bulb, lag 1', id, observed.dryBulbLag1, lag1(series, dryBulb), 0.07),
    near('dry-bulb tied to clearness', id, observed.tie, correlation(clearness, dryBulb), 0.1),
    near('dry-bulb, daily range', id, rangeC, mean([...series.dailyRangeC]), 0.6),
  ];
  // Fairbanks: the observed figure leaves out the days without sun, the generated one has clearness for them too
  if (id === 'fairbanks') return compared;
  return [
    ...compared,
    near('dark days, share', id, observed.dark, dark, darkBand.tolerance, darkBand.expected),
  ];
}

function classOf(clearness: number): number {
  return CLASS_EDGES.findIndex((edge) => clearness < edge) - 1;
}

function compareClasses(where: string, observed: readonly number[], cases: readonly Case[]): Comparison[] {
  const classes = cases.flatMap(({ series }) => [...series.clearness].map(classOf));
  return observed.map((share, index) => {
    const generated = classes.filter((each) => each === index).length / classes.length;
    const name = `${where}, ${['dark', 'mixed', 'fair', 'clear'][index]!}`;
    return near('classes of days, share', name, share, generated, 0.035);
  });
}

function compareStays(id: 'penn-state' | 'lyngby-dtu', series: DaySeries): Comparison[] {
  const classes = [...series.clearness].map(classOf);
  const stays = (which: number): number => {
    const days = classes
      .slice(0, -1)
      .flatMap((each, day) => (each === which ? [classes[day + 1] === which ? 1 : 0] : []));
    return mean(days);
  };
  const compared = (
    name: string,
    { share, days }: { share: number; days: number },
    generated: number,
  ): Comparison => {
    const tolerance = 3 * 1.2 * Math.sqrt((share * (1 - share)) / days);
    return near('next day the same class', `${id}, ${name}`, share, generated, tolerance);
  };
  return [compared('dark', STAYS_DARK[id], stays(0)), compared('clear', STAYS_CLEAR[id], stays(3))];
}
