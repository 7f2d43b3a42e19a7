/** One place's plan and a function that draws from it, for the tests of the draw. */
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import type { SiteSpec } from '../../../packages/sim/src/scenario/schema.ts';
import type {
  MonthlyNormals,
  WeatherSource,
  WeatherYear,
} from '../../../packages/sim/src/scenario/scenario.ts';
import { createSunTable, createSunTrack, fillSunTrack } from '../../../packages/sim/src/sky/sun-table.ts';
import type { SunTrack } from '../../../packages/sim/src/sky/sun-table.ts';
import { drawWeather, planWeather } from '../../../packages/sim/src/weather/draw-weather.ts';
import type { WeatherPlan } from '../../../packages/sim/src/weather/draw-weather.ts';
import { createWeatherDraw } from '../../../packages/sim/src/weather/weather-draw.ts';
import type { WeatherDraw } from '../../../packages/sim/src/weather/weather-draw.ts';

export const NORMALS: MonthlyNormals = {
  clearnessMean: [0.39, 0.45, 0.46, 0.48, 0.49, 0.51, 0.52, 0.52, 0.52, 0.46, 0.42, 0.35],
  dryBulbMeanC: [-2, -1, 4, 10, 16, 20, 22, 21, 18, 11, 6, 1],
};

/** A year whose days differ: dull on every third, clear otherwise; warmer by day. */
export const YEAR: WeatherYear = (() => {
  const hours = Array.from({ length: 8760 }, (_, hour) => hour);
  const sun = hours.map((hour) => Math.max(0, Math.sin(((hour % 24) - 5.5) * (Math.PI / 13))));
  const dull = (hour: number): boolean => Math.floor(hour / 24) % 3 === 0;
  const ghi = hours.map((hour) => Math.round(sun[hour]! * (dull(hour) ? 60 : 300)));
  return {
    name: 'made up',
    utcOffsetHours: -5,
    ghiWm2: ghi,
    dniWm2: hours.map(() => 0),
    dhiWm2: hours.map((hour) => (dull(hour) ? ghi[hour]! : Math.round(0.3 * ghi[hour]!))),
    dryBulbC: hours.map((hour) => Math.floor(hour / 24) / 10 + (hour % 24) / 4),
    windMs: hours.map((hour) => 2 + (hour % 24) / 12),
  };
})();

export interface CaseOptions {
  readonly source?: WeatherSource;
  readonly latitudeDeg?: number;
  readonly stormDullestFraction?: number;
  readonly windowDays?: number;
  readonly blockDays?: number;
  readonly snow?: { perMonth: number[]; untilCleared: boolean };
}

export interface WeatherCase {
  readonly plan: WeatherPlan;
  /** @param startUtc such as '2026-01-15T23:10Z'. */
  draw(startUtc: string, minutes: number, index: number): WeatherDraw & { readonly sun: SunTrack };
}

export function weatherCase(options: CaseOptions = {}): WeatherCase {
  const site: SiteSpec = {
    place: '',
    latitudeDeg: options.latitudeDeg ?? 40.7,
    longitudeDeg: -77.9,
    elevationM: 300,
    timeZone: 'America/New_York',
    groundReflectance: 0.2,
    windMs: 3.5,
    indoorC: 21,
    indoorFollowsFraction: 0.3,
  };
  const table = createSunTable(site);
  const spec = {
    windowDays: options.windowDays ?? 15,
    blockDays: options.blockDays ?? 5,
    snowCoverDays: options.snow,
  };
  const outage = {
    stormLed: options.stormDullestFraction !== undefined,
    stormDullestFraction: options.stormDullestFraction ?? 0.2,
  };
  const source = options.source ?? { kind: 'normals', name: 'made up', monthly: NORMALS };
  const plan = planWeather(source, spec, outage, site, table);
  return {
    plan,
    draw(startUtc, minutes, index) {
      const startEpochMinute = Date.parse(startUtc) / 60_000;
      const sun = createSunTrack(minutes, 0);
      fillSunTrack(table, [], startEpochMinute, minutes, sun);
      const out = createWeatherDraw(minutes);
      drawWeather(plan, sun, { startEpochMinute }, streamsOf('test', index), out);
      return { ...out, sun };
    },
  };
}
