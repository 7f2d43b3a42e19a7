/**
 * Making a draw, cut into the stages of `fillDraw` so that each can be timed. The test beside this checks that the
 * stages together leave the same bits as `fillDraw` itself.
 */
import type { Streams } from '../../packages/sim/src/chance/streams.ts';
import { fillClock } from '../../packages/sim/src/clock/fill-clock.ts';
import type { Study } from '../../packages/sim/src/index.ts';
import { fillSunTrack } from '../../packages/sim/src/sky/sun-table.ts';
import { fillAmbient } from '../../packages/sim/src/step/ambient.ts';
import { fillSupply, fillWants } from '../../packages/sim/src/step/prepared-draw.ts';
import { fillPlanes, fillUnitSolar } from '../../packages/sim/src/step/unit-solar.ts';
import { drawStart } from '../../packages/sim/src/trials/draw-start.ts';
import type { Workspace } from '../../packages/sim/src/trials/workspace.ts';
import { drawUsage } from '../../packages/sim/src/usage/draw-usage.ts';
import { drawWeather } from '../../packages/sim/src/weather/draw-weather.ts';

type Stage = (study: Study, work: Workspace, streams: Streams) => void;

const weather: Stage = (
  { scenario: { outage, site }, minutes, planes, sunTable, weatherPlan },
  work,
  streams,
) => {
  fillClock(work.clock, drawStart(outage, site.timeZone, streams('start')));
  fillSunTrack(sunTable, planes, work.clock.startEpochMinute, minutes, work.track);
  drawWeather(weatherPlan, work.track, work.clock, streams, work.weather);
  fillAmbient(work.ambient, work.weather.dryBulbC, site.indoorC, site.indoorFollowsFraction);
};

const usage: Stage = (_, work, streams) => {
  for (const { buffers, owner } of work.usages.values()) {
    drawUsage(owner.usagePlan, work.clock, work.ambient, work.track.cosZenith, streams, buffers);
  }
};

/** Groups of circuits, sun on the panels, banks. */
const preparing: Stage = ({ compiled, planes, scenario }, work, streams) => {
  fillPlanes(planes, work.track, work.weather, scenario.site.groundReflectance, work.planeWm2);
  for (const { buffers, owner } of work.wants.values()) fillWants(buffers, owner.household);
  compiled.forEach(({ household }, a) => {
    const draw = work.draws[a]!;
    household.units.forEach((unit, u) =>
      fillUnitSolar(draw.solar[u]!, unit, planes, work.planeWm2, work.weather),
    );
    fillSupply(draw, household, work.ambient, streams);
  });
};

/** In the order they are done in. */
export const DRAW_STAGES = { weather, usage, preparing } as const;
export type DrawStage = keyof typeof DRAW_STAGES;
export const STAGE_NAMES = Object.keys(DRAW_STAGES) as DrawStage[];

/** Makes the draw stage by stage; returns the milliseconds that the wanted one took. */
export function timeStage(study: Study, work: Workspace, streams: Streams, wanted: DrawStage): number {
  let ms = 0;
  for (const stage of STAGE_NAMES) {
    const from = performance.now();
    DRAW_STAGES[stage](study, work, streams);
    if (stage === wanted) ms = performance.now() - from;
  }
  return ms;
}
