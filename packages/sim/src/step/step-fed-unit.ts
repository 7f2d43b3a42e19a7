/** One unit that a source feeds, through some steps: which of the two ways. MODEL.md E4. */
import { FEED_CHARGER_W, FEED_EFFICIENCY, SOURCE_SUMS } from '../power/source-feed.ts';
import { stepCharging } from '../power/step-charging-unit.ts';
import { stepPassing } from '../power/step-passing-unit.ts';
import { SET_BASE_W, SET_IDLE_W } from '../power/step-unit.ts';
import { MINUTES_PER_HOUR } from './hour-loads.ts';
import { TRIPPED, type Run } from './run.ts';
import { fillFeeds, isPassing, NO_FEED, type SourcesRun } from './sources-run.ts';

/** Whether its steps are those of a fed unit: a tripped one has nothing passed through it. */
export function isFed(run: Run, u: number): boolean {
  const { sources } = run;
  if (sources === undefined || sources.feeds[u]!.kind === NO_FEED) return false;
  return run.units[u]!.mode !== TRIPPED || !isPassing(sources, u);
}

/** As `stepUnit`, for a unit that `isFed`. */
export function stepFed(run: Run, sources: SourcesRun, u: number, minute: number, count: number): number {
  const { parameters, state, settings, event } = run.units[u]!;
  const feed = sources.feeds[u]!;
  const feedSettings = sources.compiled.feedSettings[u]![feed.kind]!;
  const { watts, startExtraW } = run.draw.hourLoads;
  const step = isPassing(sources, u) ? stepPassing : stepCharging;
  return step(
    parameters,
    state,
    feed.sums,
    settings,
    feedSettings,
    feed,
    minute - run.hour * MINUTES_PER_HOUR,
    run.draw.solar[u]!.usableW,
    minute,
    watts,
    startExtraW,
    count,
    event,
  );
}

/** Fills what the sources give in the `count` steps from now, which are in one hour. */
export function readyFeeds(run: Run, sources: SourcesRun, count: number): void {
  const from = run.minute - run.hour * MINUTES_PER_HOUR;
  fillFeeds(sources, run.hour, from, count, (u, k) => {
    const { settings, hourBlock } = run.units[u]!;
    const loadW = run.draw.hourLoads.watts[hourBlock * MINUTES_PER_HOUR + from + k]!;
    return settings[SET_BASE_W]! + loadW + settings[SET_IDLE_W]!;
  });
}

/** DC watts that the source offers unit `u` in the present minute, panels aside; for one that it only charges. */
export function offeredW({ sources, minute, hour }: Run, u: number): number {
  const feed = sources!.feeds[u]!;
  const settings = sources!.compiled.feedSettings[u]![feed.kind]!;
  const acW = Math.min(feed.steadyW[minute - hour * MINUTES_PER_HOUR]!, settings[FEED_CHARGER_W]!);
  return acW * settings[FEED_EFFICIENCY]!;
}

export function saveSums({ feeds }: SourcesRun, u: number): void {
  const { sums, saved } = feeds[u]!;
  for (let i = 0; i < SOURCE_SUMS; i++) saved[i] = sums[i]!;
}

export function takeSumsBack({ feeds }: SourcesRun, u: number): void {
  const { sums, saved } = feeds[u]!;
  for (let i = 0; i < SOURCE_SUMS; i++) sums[i] = saved[i]!;
}
