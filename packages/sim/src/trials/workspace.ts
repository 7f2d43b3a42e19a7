/** The buffers that a study's draws are made in, one set per thread; they hold nothing that outlives a draw. */
import type { Streams } from '../chance/streams.ts';
import { createClock, fillClock } from '../clock/fill-clock.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import type { UnitSpec } from '../scenario/schema.ts';
import { createSunTrack, fillSunTrack, type SunTrack } from '../sky/sun-table.ts';
import { createAmbient, fillAmbient, type Ambient } from '../step/ambient.ts';
import {
  createSupply,
  createWants,
  fillSupply,
  fillWants,
  type PreparedDraw,
  type PreparedWants,
  type UnitSolar,
} from '../step/prepared-draw.ts';
import { fillPreparedSources } from '../step/prepared-sources.ts';
import { createUnitSolar, fillPlanes, fillUnitSolar } from '../step/unit-solar.ts';
import { drawUsage } from '../usage/draw-usage.ts';
import { createUsageDraw, type UsageBuffers } from '../usage/usage-buffers.ts';
import { drawWeather } from '../weather/draw-weather.ts';
import { createWeatherDraw, type WeatherDraw } from '../weather/weather-draw.ts';
import { drawStart } from './draw-start.ts';
import type { CompiledAlternative, Study } from './study.ts';

export interface Workspace {
  readonly clock: OutageClock;
  readonly track: SunTrack;
  readonly weather: WeatherDraw;
  readonly ambient: Ambient;
  readonly planeWm2: readonly Float32Array[];
  readonly usages: ReadonlyMap<
    string,
    { readonly buffers: UsageBuffers; readonly owner: CompiledAlternative }
  >;
  readonly wants: ReadonlyMap<
    string,
    { readonly buffers: PreparedWants; readonly owner: CompiledAlternative }
  >;
  /** Distinct panels, shared by the units that have them, and where in the study one such unit is found. */
  readonly solars: ReadonlyMap<
    string,
    { readonly alternative: number; readonly unit: number; readonly solar: UnitSolar }
  >;
  /** One per alternative. */
  readonly draws: readonly PreparedDraw[];
}

export function createWorkspace(study: Study): Workspace {
  const { minutes, compiled, planes, scenario } = study;
  const clock = createClock(scenario.site.timeZone, minutes);
  const weather = createWeatherDraw(minutes);
  const ambient = createAmbient(weather.dryBulbC);
  const usages = byKey(
    compiled,
    (a) => a.usageKey,
    (a) => createUsageDraw(a.usagePlan, minutes),
  );
  const wants = byKey(
    compiled,
    (a) => a.wantsKey,
    (a) => createWants(a.household, ambient, usages.get(a.usageKey)!.buffers),
  );
  const units = compiled.flatMap(({ household }, alternative) =>
    household.units.map((spec, unit) => ({ key: solarKey(spec), alternative, unit })),
  );
  const solars = new Map(
    units.map(({ key, alternative, unit }) => [key, { alternative, unit, solar: createUnitSolar(minutes) }]),
  );
  return {
    clock,
    track: createSunTrack(minutes, planes.length),
    weather,
    ambient,
    planeWm2: planes.map(() => new Float32Array(minutes)),
    usages,
    wants,
    solars,
    draws: compiled.map((a) => {
      const solar = a.household.units.map((unit) => solars.get(solarKey(unit))!.solar);
      return {
        minutes,
        clock,
        ambient,
        ...wants.get(a.wantsKey)!.buffers,
        ...createSupply(a.household, minutes, solar),
      };
    }),
  };
}

/** The same unit with the same panels shares its sun between alternatives, whatever else differs. */
function solarKey(unit: UnitSpec): string {
  return JSON.stringify([unit.id, unit.solar]);
}

function byKey<Buffers>(
  compiled: readonly CompiledAlternative[],
  keyOf: (a: CompiledAlternative) => string,
  make: (a: CompiledAlternative) => Buffers,
) {
  const made = new Map<string, { buffers: Buffers; owner: CompiledAlternative }>();
  for (const a of compiled) if (!made.has(keyOf(a))) made.set(keyOf(a), { buffers: make(a), owner: a });
  return made;
}

/** Makes one draw: when, what weather, what habits, and what every alternative has to meet it with. */
export function fillDraw(study: Study, work: Workspace, streams: Streams): void {
  fillWorld(study, work, streams);
  fillSupplies(study, work, streams);
}

/** When, and what weather. */
export function fillSky(study: Study, work: Workspace, streams: Streams): void {
  const { scenario, planes, minutes } = study;
  fillClock(work.clock, drawStart(scenario.outage, scenario.site.timeZone, streams('start')));
  fillSunTrack(study.sunTable, planes, work.clock.startEpochMinute, minutes, work.track);
  drawWeather(study.weatherPlan, work.track, work.clock, streams, work.weather);
}

/** When, what weather, and what it asks of the household: all but what its units have to meet it with. */
function fillWorld(study: Study, work: Workspace, streams: Streams): void {
  const { planes } = study;
  const { site } = study.scenario;
  fillSky(study, work, streams);
  fillAmbient(work.ambient, site.indoorC, site.indoorFollowsFraction);
  fillPlanes(planes, work.track, work.weather, site.groundReflectance, work.planeWm2);
  for (const { buffers, owner } of work.usages.values()) {
    drawUsage(owner.usagePlan, work.clock, work.ambient, work.track.cosZenith, streams, buffers);
  }
  for (const { buffers } of work.wants.values()) fillWants(buffers);
}

/** What every alternative's units have to meet the world with that was filled last. */
export function fillSupplies(study: Study, work: Workspace, streams: Streams): void {
  const { planes } = study;
  const { site } = study.scenario;
  for (const { alternative, unit, solar } of work.solars.values()) {
    const spec = study.compiled[alternative]!.household.units[unit]!;
    fillUnitSolar(solar, spec, planes, work.planeWm2, work.weather, work.track.daylight, work.clock);
  }
  study.compiled.forEach(({ household }, a) => {
    const draw = work.draws[a]!;
    fillSupply(draw, household, work.ambient, streams);
    if (household.sources !== undefined && draw.sources !== undefined)
      fillPreparedSources(
        draw.sources,
        household.sources,
        work.clock,
        work.ambient.outdoors,
        site.elevationM,
        streams,
      );
  });
}
