/** Hours: one generated year of each of 21 places, by class of daily clearness, against typical years and measurements. */
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';
import { amid } from './comparison.ts';
import type { Comparison } from './comparison.ts';
import { addGeneratedHours, classStatistics, emptyHours, residuals } from './hours.ts';
import type { SunlitHours } from './hours.ts';
import { DAY_CLASS_EDGES, DAY_SHAPE, ELEVATION_EDGES_DEG, HOURS } from './observed.ts';

/** As observed: Fairbanks and Honolulu are left out, their files label irradiance an hour early in some months. */
const LEFT_OUT = new Set(['fairbanks', 'honolulu']);

export function compareHours(places: ReadonlyMap<string, NormalsPlace>): Comparison[] {
  const hours = emptyHours();
  for (const place of places.values()) {
    if (place.kind === 'typical-year' && !LEFT_OUT.has(place.id)) addGeneratedHours(place, 1, hours);
  }
  const residual = residuals(hours);
  const classes = DAY_CLASS_EDGES.slice(0, -1).flatMap((from, index) => {
    const to = DAY_CLASS_EDGES[index + 1]!;
    const made = classStatistics(hours, residual, from, to);
    const where = `days of clearness ${from} to ${to}`;
    const observed = (table: readonly (readonly number[])[]): number[] =>
      table.map((column) => column[index]!);
    const sds = observed(HOURS.sdResidual);
    const widening = Math.max(0.004, 0.12 * Math.max(...sds.filter((sd) => !Number.isNaN(sd))));
    return [
      amid('hourly clearness, mean', where, observed(HOURS.mean), made.mean, 0.015),
      amid('hourly clearness, 5th percentile', where, observed(HOURS.p5), made.quantiles[0]!, 0.04),
      amid('hourly clearness, 95th percentile', where, observed(HOURS.p95), made.quantiles[4]!, 0.035),
      amid('hourly clearness, share above 0.7', where, observed(HOURS.above07), made.above07, 0.06),
      amid('hourly clearness, residual spread', where, sds, made.sdResidual, widening),
      amid('hourly clearness, residual lag 1', where, observed(HOURS.lag1), made.lag1, 0.06),
    ];
  });
  return [...classes, ...compareShape(hours)];
}

/** Mean hourly over daily clearness, by class of day from 0.2 and elevation. */
function compareShape(hours: SunlitHours): Comparison[] {
  return DAY_SHAPE.flatMap((byPlace, index) => {
    const [from, to] = [DAY_CLASS_EDGES[index + 2]!, DAY_CLASS_EDGES[index + 3]!];
    return ELEVATION_EDGES_DEG.slice(0, -1).map((low, band) => {
      const high = ELEVATION_EDGES_DEG[band + 1]!;
      let sum = 0;
      let count = 0;
      hours.clearness.forEach((clearness, i) => {
        const day = hours.dayClearness[i]!;
        const elevation = hours.elevationDeg[i]!;
        if (day < from || day >= to || elevation < low || elevation >= high) return;
        sum += clearness / day;
        count++;
      });
      const where = `days of clearness ${from} to ${to}, sun at ${low} to ${high}°`;
      return amid(
        'shape of the day',
        where,
        byPlace.map((row) => row[band]!),
        sum / count,
        0.07,
      );
    });
  });
}
