/**
 * A draw made and stepped as `runShard` does it, cut into laps that can be timed: the stages of `fillDraw`, then one
 * run after the other. The test beside this checks that the stages leave the same bits as `fillDraw` itself.
 */
import { streamsOf, type Streams } from '../../packages/sim/src/chance/streams.ts';
import { fillClock } from '../../packages/sim/src/clock/fill-clock.ts';
import type { Study } from '../../packages/sim/src/index.ts';
import { fillSunTrack } from '../../packages/sim/src/sky/sun-table.ts';
import { advance } from '../../packages/sim/src/step/advance.ts';
import { fillAmbient } from '../../packages/sim/src/step/ambient.ts';
import { writeOutcome } from '../../packages/sim/src/step/outcome.ts';
import { fillSupply, fillWants } from '../../packages/sim/src/step/prepared-draw.ts';
import { releaseRun, startRun } from '../../packages/sim/src/step/run.ts';
import { fillPlanes, fillUnitSolar } from '../../packages/sim/src/step/unit-solar.ts';
import { drawStart } from '../../packages/sim/src/trials/draw-start.ts';
import type { Workspace } from '../../packages/sim/src/trials/workspace.ts';
import { drawUsage } from '../../packages/sim/src/usage/draw-usage.ts';
import { drawWeather } from '../../packages/sim/src/weather/draw-weather.ts';
import { processorMs } from './processor-clock.ts';
import { SEED } from './session.ts';

type Stage = (study: Study, work: Workspace, streams: Streams) => void;

const weather: Stage = (
  { scenario: { outage, site }, minutes, planes, sunTable, weatherPlan },
  work,
  streams,
) => {
  fillClock(work.clock, drawStart(outage, site.timeZone, streams('start')));
  fillSunTrack(sunTable, planes, work.clock.startEpochMinute, minutes, work.track);
  drawWeather(weatherPlan, work.track, work.clock, streams, work.weather);
  fillAmbient(work.ambient, site.indoorC, site.indoorFollowsFraction);
};

const usage: Stage = (_, work, streams) => {
  for (const { buffers, owner } of work.usages.values()) {
    drawUsage(owner.usagePlan, work.clock, work.ambient, work.track.cosZenith, streams, buffers);
  }
};

/** Groups of circuits, sun on the panels, banks. */
const preparing: Stage = ({ compiled, planes, scenario }, work, streams) => {
  fillPlanes(planes, work.track, work.weather, scenario.site.groundReflectance, work.planeWm2);
  for (const { buffers } of work.wants.values()) fillWants(buffers);
  for (const { alternative, unit, solar } of work.solars.values()) {
    const spec = compiled[alternative]!.household.units[unit]!;
    fillUnitSolar(solar, spec, planes, work.planeWm2, work.weather, work.track.daylight, work.clock);
  }
  compiled.forEach(({ household }, a) => fillSupply(work.draws[a]!, household, work.ambient, streams));
};

/** In the order they are done in. */
export const DRAW_STAGES = { weather, usage, preparing };

/** Processor milliseconds of each stage, then of each run in order of alternative and strategy. */
export function drawLaps(study: Study, work: Workspace, draw: number): number[] {
  const laps: number[] = [];
  let from = processorMs();
  const lap = () => {
    const now = processorMs();
    laps.push(now - from);
    from = now;
  };
  const streams = streamsOf(SEED, draw);
  for (const stage of Object.values(DRAW_STAGES)) {
    stage(study, work, streams);
    lap();
  }
  stepRuns(study, work, lap);
  return laps;
}

/** Steps the draw in `work` through every alternative and strategy, with a call after each run. */
export function stepRuns(study: Study, work: Workspace, afterRun: () => void): void {
  let written = 0;
  const write = (_: string, value: number) => {
    if (value > 0) written += value;
  };
  study.compiled.forEach(({ household }, alternative) => {
    for (const plan of household.strategies) {
      const run = startRun(household, work.draws[alternative]!, plan);
      advance(run, study.minutes);
      writeOutcome(run, write);
      releaseRun(run);
      afterRun();
    }
  });
  // Looked at, so that no engine may leave the work out.
  if (!(written > 0)) throw new Error('the runs wrote no outcome');
}
