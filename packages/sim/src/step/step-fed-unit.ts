/** One unit that a source feeds, through some steps: which of the two ways. MODEL.md E4. */
import { FEED_CHARGER_W, FEED_EFFICIENCY, SOURCE_SUMS } from '../power/source-feed.ts';
import { stepCharging } from '../power/step-charging-unit.ts';
import { stepPassing } from '../power/step-passing-unit.ts';
import { loadPlace, MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { DONE } from '../power/step-unit.ts';
import { blocksUntil } from './hour-loads.ts';
import { TRIPPED, type Run } from './run.ts';
import { fillFeeds, isPassing, NO_FEED, type SourcesRun } from './sources-run.ts';

/** Whether its steps are those of a fed unit: a tripped one has nothing passed through it. */
export function isFed(run: Run, u: number): boolean {
  const { sources } = run;
  if (sources === undefined || sources.feeds[u]!.kind === NO_FEED) return false;
  return run.units[u]!.mode !== TRIPPED || !isPassing(sources, u);
}

/**
 * As `stepUnit`, for a unit that `isFed`: from one switching of its thermostats to the next.
 *
 * @param blocks with their starts filled in
 */
export function stepFed(run: Run, sources: SourcesRun, u: number, blocks: Int32Array, count: number): number {
  const { settings, ahead, event } = run.units[u]!;
  const { count: changes, at, runningW, startW } = ahead;
  const to = run.minute + count;
  let minute = run.minute;
  let change = ahead.next;
  do {
    for (; change < changes && at[change]! <= minute; change++) {
      settings.runningW = runningW[change]!;
      settings.startW = startW[change]!;
    }
    const end = change < changes ? Math.min(to, at[change]!) : to;
    const steps = stepUnchanged(run, sources, u, blocks, minute, end - minute);
    if (steps > 0) settings.startW = 0;
    minute += steps;
  } while (event[0] === DONE && minute < to);
  ahead.next = change;
  return minute - run.minute;
}

function stepUnchanged(
  run: Run,
  sources: SourcesRun,
  u: number,
  blocks: Int32Array,
  minute: number,
  count: number,
): number {
  const { draw } = run;
  const { parameters, state, settings, event } = run.units[u]!;
  const feed = sources.feeds[u]!;
  const feedSettings = sources.compiled.feedSettings[u]![feed.kind]!;
  const step = isPassing(sources, u) ? stepPassing : stepCharging;
  return step(
    parameters,
    state,
    feed.sums,
    settings,
    feedSettings,
    feed,
    draw.cold[u]!,
    draw.solar[u]!,
    draw.hourLoads,
    blocks,
    minute,
    count,
    event,
  );
}

/** AC watts that hang on unit `u` in a minute. */
export function askedW(run: Run, u: number, minute: number): number {
  const { pattern, settings } = run.units[u]!;
  const { draw } = run;
  blocksUntil(draw, pattern, minute, minute + 1);
  const { baseW, at } = loadPlace(draw.hourLoads, pattern.blocks, minute);
  return baseW + settings.runningW + draw.hourLoads.watts[at]!;
}

/** Fills what the sources give in the `count` steps from now, which are in one hour. */
export function readyFeeds(run: Run, sources: SourcesRun, count: number): void {
  const from = run.minute % MINUTES_PER_HOUR;
  fillFeeds(sources, (run.minute / MINUTES_PER_HOUR) | 0, from, count, (u, k) => {
    return askedW(run, u, run.minute + k) + run.units[u]!.settings.idleW;
  });
}

/** DC watts that the source offers unit `u` in the present minute, panels aside; for one that it only charges. */
export function offeredW({ sources, minute }: Run, u: number): number {
  const feed = sources!.feeds[u]!;
  const settings = sources!.compiled.feedSettings[u]![feed.kind]!;
  const acW = Math.min(feed.steadyW[minute % MINUTES_PER_HOUR]!, settings[FEED_CHARGER_W]!);
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
