/** Minutes: generated years of a cloudy and a dry place against one-minute measurements of two stations. */
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';
import { amid, near } from './comparison.ts';
import type { Comparison } from './comparison.ts';
import { generatedMinuteHours, hiddenSurplus, minuteStatistics } from './minutes.ts';
import type { MinuteHour } from './minutes.ts';
import { CLEAR_SKY_INDEX, HIDDEN_SURPLUS, LYNGBY, MINUTES } from './observed.ts';

const LYNGBY_PLACE = {
  id: 'lyngby',
  name: 'Lyngby',
  latitudeDeg: 55.79,
  longitudeDeg: 12.53,
  elevationM: 50,
  monthly: LYNGBY,
};

export function compareMinutes(places: ReadonlyMap<string, NormalsPlace>): Comparison[] {
  const hours = [
    ...generatedMinuteHours(LYNGBY_PLACE, 3),
    ...generatedMinuteHours(places.get('penn-state')!, 1),
    ...generatedMinuteHours(places.get('golden')!, 1),
  ];
  const lyngby = generatedMinuteHours(LYNGBY_PLACE, 2);
  return [
    ...MINUTES.sd[0].flatMap((_, index) => compareClass(hours, index)),
    ...CLEAR_SKY_INDEX.below04[0].flatMap((_, index) => compareIndex(hours, index)),
    ...HIDDEN_SURPLUS.levelsWm2.map((level, index) => {
      const share = HIDDEN_SURPLUS.shares[index]!;
      return near(
        'energy that hourly means hide',
        `Lyngby, above ${level} W/m²`,
        share,
        hiddenSurplus(lyngby, level),
        0.5 * share,
      );
    }),
  ];
}

function compareClass(hours: readonly MinuteHour[], index: number): Comparison[] {
  const from = index / 10;
  const made = minuteStatistics(
    hours.filter((hour) => hour.hourClearness >= from && hour.hourClearness < from + 0.1),
  );
  const where = `hours of clearness ${from} to ${(from + 0.1).toFixed(1)}`;
  const both = (table: readonly (readonly number[])[]): number[] => table.map((column) => column[index]!);
  const sds = both(MINUTES.sd);
  return [
    amid(
      'minute clearness, spread in the hour',
      where,
      sds,
      made.meanSd,
      Math.max(0.004, 0.15 * Math.max(...sds)),
    ),
    amid('minute clearness, median spread', where, both(MINUTES.p50), made.sdQuantiles[1]!, 0.012),
    amid('minute clearness, 90th percentile of spread', where, both(MINUTES.p90), made.sdQuantiles[2]!, 0.01),
    amid('minute clearness, correlation after 1 min', where, both(MINUTES.r1), made.correlations[0]!, 0.05),
    amid('minute clearness, correlation after 5 min', where, both(MINUTES.r5), made.correlations[1]!, 0.1),
    amid('minute clearness, correlation after 15 min', where, both(MINUTES.r15), made.correlations[2]!, 0.06),
  ];
}

function compareIndex(hours: readonly MinuteHour[], index: number): Comparison[] {
  const from = (index + 2) / 10;
  const minutes = hours
    .filter((hour) => hour.hourClearSkyIndex >= from && hour.hourClearSkyIndex < from + 0.1)
    .flatMap((hour) => [...hour.clearSkyIndex]);
  const share = (test: (value: number) => boolean): number => minutes.filter(test).length / minutes.length;
  const where = `hours at ${from} to ${(from + 0.1).toFixed(1)} of a clear sky`;
  const both = (table: readonly (readonly number[])[]): number[] => table.map((column) => column[index]!);
  return [
    amid(
      'minutes below 0.4 of a clear sky',
      where,
      both(CLEAR_SKY_INDEX.below04),
      share((value) => value < 0.4),
      0.08,
    ),
    amid(
      'minutes above 0.9 of a clear sky',
      where,
      both(CLEAR_SKY_INDEX.above09),
      share((value) => value > 0.9),
      0.08,
    ),
  ];
}
