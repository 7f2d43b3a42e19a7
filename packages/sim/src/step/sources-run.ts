/** The sources of a household through one run: which is on, and what it gives each unit. MODEL.md E1–E7. */
import {
  FEED_PASSES,
  FROM_GENERATOR_WMIN,
  FROM_GRID_WMIN,
  FROM_VEHICLE_WMIN,
  generatorShare,
  SOURCE_SUMS,
  type FeedWatts,
} from '../power/source-feed.ts';
import { generatorBreak, startGenerator, type GeneratorRun } from './generator-run.ts';
import type { HouseholdSources } from './household-sources.ts';
import type { PreparedSources } from './prepared-sources.ts';

/** No source feeds the unit. */
export const NO_FEED = -1;
/** More than a house can ask for. */
const GRID_W = 1e9;

/** What comes to one unit's AC input. */
export interface UnitFeed extends FeedWatts {
  /** NO_FEED, or the position of the source's kind: see power/source-feed.ts. */
  kind: number;
  /** See power/source-feed.ts; `saved` is its copy from before the present block. */
  readonly sums: Float64Array;
  readonly saved: Float64Array;
}

export interface SourcesRun {
  readonly compiled: HouseholdSources;
  readonly prepared: PreparedSources;
  readonly feeds: readonly UnitFeed[];
  /** Undefined where there is none, or the strategy never runs it. */
  readonly generator: GeneratorRun | undefined;
  gridIsOn: boolean;
  vehicleIsOn: boolean;
  /** Positions of the next switches. */
  nextGrid: number;
  nextVehicle: number;
  gridSince: number;
  gridMinutesBefore: number;
}

/** @param strategy its position in the household's strategies */
export function startSources(
  compiled: HouseholdSources,
  prepared: PreparedSources,
  strategy: number,
  blockMinutes: number,
): SourcesRun {
  const plan = compiled.generator?.plans[strategy];
  return {
    compiled,
    prepared,
    feeds: compiled.feedSettings.map(() => ({
      kind: NO_FEED,
      sums: new Float64Array(SOURCE_SUMS),
      saved: new Float64Array(SOURCE_SUMS),
      steadyW: new Float64Array(blockMinutes),
      surgeW: new Float64Array(blockMinutes),
    })),
    generator: plan === undefined ? undefined : startGenerator(compiled.generator!, plan),
    gridIsOn: false,
    vehicleIsOn: false,
    nextGrid: 0,
    nextVehicle: 0,
    gridSince: 0,
    gridMinutesBefore: 0,
  };
}

/** Follows the grid and the vehicle to `minute`. */
export function followSwitches(sources: SourcesRun, minute: number): void {
  const { gridSwitches, vehicleSwitches } = sources.prepared;
  while ((gridSwitches[sources.nextGrid] ?? Infinity) <= minute) {
    if (sources.gridIsOn) sources.gridMinutesBefore += minute - sources.gridSince;
    sources.gridIsOn = !sources.gridIsOn;
    sources.gridSince = minute;
    sources.nextGrid++;
  }
  while ((vehicleSwitches[sources.nextVehicle] ?? Infinity) <= minute) {
    sources.vehicleIsOn = !sources.vehicleIsOn;
    sources.nextVehicle++;
  }
}

/** Minutes of grid from the outage's start to `time`. */
export function gridMinutes(sources: SourcesRun, time: number): number {
  return sources.gridMinutesBefore + (sources.gridIsOn ? time - sources.gridSince : 0);
}

/** Plugs each unit into the source that comes first for it. True when anything changed. */
export function plugIn(sources: SourcesRun): boolean {
  let changed = false;
  sources.feeds.forEach((feed, u) => {
    const kind = kindFor(sources, u);
    if (kind === feed.kind) return;
    feed.kind = kind;
    changed = true;
  });
  return changed;
}

function kindFor({ compiled, generator, gridIsOn, vehicleIsOn }: SourcesRun, u: number): number {
  if (gridIsOn) return FROM_GRID_WMIN;
  if (generator?.running === true && compiled.generator!.feeds[u] === 1) return FROM_GENERATOR_WMIN;
  return vehicleIsOn && compiled.vehicle!.unit === u ? FROM_VEHICLE_WMIN : NO_FEED;
}

/** Whether the unit's circuits run off a source. */
export function isPassing(sources: SourcesRun | undefined, u: number): boolean {
  const kind = sources?.feeds[u]?.kind ?? NO_FEED;
  return kind !== NO_FEED && sources!.compiled.feedSettings[u]![kind]![FEED_PASSES] === 1;
}

/**
 * Whether the units together make 240 V as far as sources go: all on their inverters, on the grid, or on a 240 V
 * generator. Two inverters, or an inverter and a generator, are not in step otherwise.
 */
export function makes240V(sources: SourcesRun | undefined): boolean {
  if (sources === undefined) return true;
  const passing = sources.feeds.filter((_, u) => isPassing(sources, u));
  if (passing.length === 0) return true;
  if (passing.length < sources.feeds.length) return false;
  return sources.gridIsOn || sources.compiled.generator!.spec.volts === 240;
}

/** What the generator has given all units together, watt-minutes. */
export function generatorWmin({ feeds }: SourcesRun): number {
  let sum = 0;
  for (const { sums } of feeds) sum += sums[FROM_GENERATOR_WMIN]!;
  return sum;
}

/** First minute after `minute` before which no source is due for anything but a bank's level. */
export function sourcesBreak(sources: SourcesRun, minute: number): number {
  const { prepared, nextGrid, nextVehicle, generator } = sources;
  return Math.min(
    prepared.gridSwitches[nextGrid] ?? Infinity,
    prepared.vehicleSwitches[nextVehicle] ?? Infinity,
    generator === undefined ? Infinity : generatorBreak(generator, minute, generatorWmin(sources)),
  );
}

/** Whether a 120 V generator passes through two units: what one asks leaves less for the other. */
export function sharesGenerator({ compiled, feeds }: SourcesRun): boolean {
  const { generator } = compiled;
  if (generator === undefined || generator.spec.volts === 240 || !generator.spec.passesThrough) return false;
  return feeds.length === 2 && feeds.every(({ kind }) => kind === FROM_GENERATOR_WMIN);
}

/**
 * Fills what each unit's source gives in `count` steps of the hour, from its minute `from` on.
 *
 * @param askedW watts that unit `u` asks of a passing source in step `k`: circuits and idling inverter
 */
export function fillFeeds(
  sources: SourcesRun,
  hour: number,
  from: number,
  count: number,
  askedW: (u: number, k: number) => number,
): void {
  const { feeds, compiled } = sources;
  const shared = sharesGenerator(sources);
  for (let u = 0; u < feeds.length; u++) {
    const feed = feeds[u]!;
    if (feed.kind === FROM_GRID_WMIN) fillSteady(feed, GRID_W, GRID_W, from, count);
    else if (feed.kind === FROM_VEHICLE_WMIN)
      fillSteady(feed, compiled.vehicle!.outletW, GRID_W, from, count);
    else if (feed.kind === FROM_GENERATOR_WMIN && !shared) {
      const fedUnits = feeds.filter(({ kind }) => kind === FROM_GENERATOR_WMIN).length;
      const share = generatorShare(compiled.generator!.spec.volts, fedUnits);
      fillSteady(
        feed,
        share * sources.prepared.generatorW[hour]!,
        share * surgeOf(sources, hour),
        from,
        count,
      );
    }
  }
  if (shared) fillShared(sources, hour, from, count, askedW);
}

function fillSteady(feed: FeedWatts, steadyW: number, surgeW: number, from: number, count: number): void {
  feed.steadyW.fill(steadyW, from, from + count);
  feed.surgeW.fill(surgeW, from, from + count);
}

function surgeOf({ compiled, prepared }: SourcesRun, hour: number): number {
  const { spec, surgeW } = compiled.generator!;
  return (surgeW * prepared.generatorW[hour]!) / spec.ratedW;
}

/** Each unit has what it asks for and half of what both leave. */
function fillShared(
  sources: SourcesRun,
  hour: number,
  from: number,
  count: number,
  askedW: (u: number, k: number) => number,
): void {
  const capacityW = sources.prepared.generatorW[hour]!;
  const surgeW = surgeOf(sources, hour);
  const [first, second] = sources.feeds as readonly [UnitFeed, UnitFeed];
  for (let k = 0; k < count; k++) {
    const [a, b] = [askedW(0, k), askedW(1, k)];
    const leftW = (capacityW - a - b) / 2;
    first.steadyW[from + k] = a + leftW;
    second.steadyW[from + k] = b + leftW;
    first.surgeW[from + k] = surgeW - b;
    second.surgeW[from + k] = surgeW - a;
  }
}

/**
 * Levels of one bank, fractions of its capacity, at which a generator that starts by itself is thought of: the level
 * that it waits for on this side of the present charge. `levels` as in shedding/control.ts, narrowed in place.
 */
export function narrowToGenerator(
  { generator, compiled }: SourcesRun,
  u: number,
  charge: number,
  levels: Float64Array,
): void {
  if (generator === undefined || generator.plan.byHand || compiled.generator!.feeds[u] === 0) return;
  const { startBelow, stopAbove } = generator.plan;
  if (generator.wanted && charge < stopAbove && stopAbove < levels[1]!) levels[1] = stopAbove;
  if (!generator.wanted && charge >= startBelow && startBelow > levels[0]!) levels[0] = startBelow;
}
