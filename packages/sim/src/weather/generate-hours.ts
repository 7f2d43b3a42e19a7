/** Hourly weather from monthly normals. MODEL.md §Weather. */
import type { Streams } from '../chance/streams.ts';
import { hourlyDiffuseFraction } from '../sky/diffuse-split.ts';
import { dayOfYear } from './calendar.ts';
import { meanClearness } from './clearness-table.ts';
import type { DaySkies } from './day-sky.ts';
import { dailyRangeC, fillDiurnalDryBulb } from './diurnal-dry-bulb.ts';
import { generateDays } from './generate-days.ts';
import { fillHourlyClearness } from './hourly-clearness.ts';
import type { HourlyWeather } from './hourly-weather.ts';
import { curveAt, monthPosition } from './month-curve.ts';
import type { NormalsPlan } from './normals-plan.ts';

/**
 * @param settledDays, dullestFraction see `generateDays`.
 * @param windMs the site's own figure: monthly normals carry no wind.
 */
export function generateHours(
  plan: NormalsPlan,
  skies: DaySkies,
  settledDays: number,
  dullestFraction: number,
  windMs: number,
  streams: Streams,
  out: HourlyWeather,
): void {
  // one day more than is filled: the last evening falls towards the next morning's coldest hour
  const days = generateDays(plan, out.firstLocalDay, out.days + 1, settledDays, dullestFraction, streams);
  const hours = streams('weather/hours');
  for (let day = 0; day < out.days; day++) {
    fillHourlyClearness(
      days.clearness[day]!,
      skies.day(out.firstLocalDay + day),
      hours,
      out.clearness,
      24 * day,
    );
  }
  for (let hour = 0; hour < 24 * out.days; hour++) {
    out.diffuseFraction[hour] = hourlyDiffuseFraction(out.clearness[hour]!);
  }
  const rangesC = days.clearness.map((clearness, day) => {
    const position = monthPosition(dayOfYear(out.firstLocalDay + day));
    const monthRangeC = curveAt(plan.dryBulb.dailyRangeC, position);
    return dailyRangeC(monthRangeC, clearness, meanClearness(plan.clearness, position));
  });
  fillDiurnalDryBulb(days.dryBulbMeanC, rangesC, out.days, out.dryBulbC);
  out.windMs.fill(windMs);
}
