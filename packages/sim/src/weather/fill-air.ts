/** Dry-bulb and wind of the minutes: straight lines from hour to hour. */
import type { HourlyWeather } from './hourly-weather.ts';
import type { WeatherDraw } from './weather-draw.ts';

/** Fills dry-bulb and wind of `out` for the minutes from `startEpochMinute`. */
export function fillAir(hourly: HourlyWeather, startEpochMinute: number, out: WeatherDraw): void {
  const firstMinute = hourly.startEpochMinute - startEpochMinute;
  fillLines(hourly.dryBulbC, firstMinute, out.dryBulbC);
  fillLines(hourly.windMs, firstMinute, out.windMs);
}

/**
 * @param atHours values at the starts of hours and the end of the last.
 * @param firstMinute at which hour 0 starts, 0 or before.
 * @param out taken at the middle of each minute.
 */
function fillLines(atHours: Float64Array, firstMinute: number, out: Float32Array): void {
  const hours = atHours.length - 1;
  for (let hour = 0; hour < hours;) {
    const start = atHours[hour]!;
    const first = firstMinute + 60 * hour;
    const step = (atHours[++hour]! - start) / 60;
    // hours without change are laid down together: normals have one wind for all
    if (step === 0) while (hour < hours && atHours[hour + 1] === start) hour++;
    const from = Math.max(0, first);
    const to = Math.min(out.length, firstMinute + 60 * hour);
    if (step === 0) out.fill(start, from, Math.max(from, to));
    else for (let m = from; m < to; m++) out[m] = start + step * (m - first + 0.5);
  }
}
