/** The weather of one draw, from either source. MODEL.md §Weather. */
import type { Streams } from '../chance/streams.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import type { OutageSpec, SiteSpec, WeatherSpec } from '../scenario/schema.ts';
import type { WeatherSource } from '../scenario/scenario.ts';
import { createSunTable } from '../sky/sun-table.ts';
import type { SunTable, SunTrack } from '../sky/sun-table.ts';
import { createDaySkies } from './day-sky.ts';
import type { DaySkies } from './day-sky.ts';
import { fillMinutes } from './fill-minutes.ts';
import { generateHours } from './generate-hours.ts';
import { createHourlyWeather } from './hourly-weather.ts';
import type { HourlyWeather } from './hourly-weather.ts';
import { planNormals } from './normals-plan.ts';
import type { NormalsPlan } from './normals-plan.ts';
import { resampleYear } from './resample-year.ts';
import { fillSnow, planSnow } from './snow-cover.ts';
import type { SnowPlan } from './snow-cover.ts';
import type { WeatherDraw } from './weather-draw.ts';
import { planYear } from './year-plan.ts';
import type { YearPlan } from './year-plan.ts';

/** What the weather needs that does not depend on the draw. */
export interface WeatherPlan {
  /** The site's days, in the source's own local time: mean solar for normals, standard time for a weather year. */
  readonly skies: DaySkies;
  readonly source:
    | { readonly kind: 'normals'; readonly normals: NormalsPlan; readonly windMs: number }
    | {
        readonly kind: 'year';
        readonly year: YearPlan;
        readonly windowDays: number;
        readonly blockDays: number;
      };
  /** The first day comes from this dullest share of days; 1 for any day. */
  readonly dullestFraction: number;
  readonly snow: SnowPlan | undefined;
}

/**
 * @param sunTable of the site, if one is at hand to share.
 */
export function planWeather(
  source: WeatherSource,
  spec: Pick<WeatherSpec, 'windowDays' | 'blockDays' | 'snowCoverDays'>,
  outage: Pick<OutageSpec, 'stormLed' | 'stormDullestFraction'>,
  site: SiteSpec,
  sunTable: SunTable = createSunTable(site),
): WeatherPlan {
  const { windowDays, blockDays } = spec;
  const common = {
    dullestFraction: outage.stormLed ? outage.stormDullestFraction : 1,
    snow: planSnow(spec.snowCoverDays),
  };
  if (source.kind === 'normals') {
    const normals = planNormals(source.monthly);
    const skies = createDaySkies(sunTable, Math.round(4 * site.longitudeDeg));
    return { ...common, skies, source: { kind: 'normals', normals, windMs: site.windMs } };
  }
  const skies = createDaySkies(sunTable, Math.round(60 * source.year.utcOffsetHours));
  const year = planYear(source.year, site);
  return { ...common, skies, source: { kind: 'year', year, windowDays, blockDays } };
}

/**
 * Fills `out` with the weather of one draw. Depends on its arguments alone; a longer outage with the same streams has
 * the same weather as far as the shorter one goes. Allocates a few kilobytes of hours, nothing per minute.
 *
 * @param sun the site's sun over the same minutes.
 * @param out as long as the outage.
 */
export function drawWeather(
  plan: WeatherPlan,
  sun: SunTrack,
  clock: Pick<OutageClock, 'startEpochMinute'>,
  streams: Streams,
  out: WeatherDraw,
): void {
  const hourly = drawHourlyWeather(plan, clock.startEpochMinute, out.minutes, streams);
  fillMinutes(hourly, plan.skies, sun, clock.startEpochMinute, streams('weather/minutes'), out);
  fillSnow(plan.snow, plan.skies, clock.startEpochMinute, streams, out);
}

/** The hours behind one draw, from the local midnight before the outage to the one after it. */
export function drawHourlyWeather(
  plan: WeatherPlan,
  startEpochMinute: number,
  minutes: number,
  streams: Streams,
): HourlyWeather {
  const { skies, source, dullestFraction } = plan;
  const hourly = createHourlyWeather(startEpochMinute, minutes, skies.offsetMinutes);
  const settledDays = beginsAfterSunset(skies, hourly, startEpochMinute) ? 2 : 1;
  if (source.kind === 'normals') {
    generateHours(source.normals, skies, settledDays, dullestFraction, source.windMs, streams, hourly);
  } else {
    const { windowDays, blockDays } = source;
    resampleYear(source.year, { windowDays, blockDays, settledDays, dullestFraction }, streams, hourly);
  }
  return hourly;
}

/** True when the sun does not shine again on the local day the outage starts on: its first day is then the next. */
function beginsAfterSunset(skies: DaySkies, hourly: HourlyWeather, startEpochMinute: number): boolean {
  const { minuteCosZenith } = skies.day(hourly.firstLocalDay);
  const from = startEpochMinute - hourly.startEpochMinute;
  for (let minute = from; minute < 1440; minute++) if (minuteCosZenith[minute]! > 0) return false;
  return true;
}
