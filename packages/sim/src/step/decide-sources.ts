/** The moments at which a source comes on or goes off, and what that does to the units. MODEL.md E4–E5. */
import { stepToMark } from './decide.ts';
import { BREAKER_OPEN, decideGenerator, tripGenerator, type GeneratorRun } from './generator-run.ts';
import { now, type Run } from './run.ts';
import { followSwitches, generatorWmin, plugIn, type SourcesRun } from './sources-run.ts';
import { followSleep, holdTiers, nextAwake, powerAgain, reactionTo } from './unit-events.ts';

/** Carries out what is due of the sources at the present whole minute. True when anything changed for a circuit. */
export function decideSources(run: Run, sources: SourcesRun): boolean {
  followSwitches(sources, run.minute);
  const { generator } = sources;
  if (generator !== undefined) thinkOfGenerator(run, sources, generator);
  return takeUp(run, sources);
}

/** Plugs units in and out and wakes those that a source now powers. */
function takeUp(run: Run, sources: SourcesRun): boolean {
  if (!plugIn(sources)) return false;
  powerAgain(run);
  followSleep(run);
  return true;
}

function thinkOfGenerator(run: Run, sources: SourcesRun, generator: GeneratorRun): void {
  const { minute } = run;
  const { localMinuteOfDay, localDay } = run.draw.clock;
  const looking = minute >= generator.nextThought;
  const wasOpen = generator.out === BREAKER_OPEN;
  const wanted = generator.wanted;
  decideGenerator(generator, {
    minute,
    localMinuteOfDay: localMinuteOfDay[minute]!,
    localDay: localDay[minute]!,
    lowestCharge: lowestCharge(run, generator),
    deliveredWmin: generatorWmin(sources),
    gridIsOn: sources.gridIsOn,
    looking,
    nextAwake: nextAwake(run, minute),
  });
  if (looking)
    generator.nextThought = minute + stepToMark(run, generator.plan.nextThought[localMinuteOfDay[minute]!]!);
  if (generator.wanted !== wanted) run.unsettled = true; // it waits for another level now
  if (!wasOpen || generator.out === BREAKER_OPEN) return;
  holdTiers(run); // as after a unit's trip
  run.changed = true;
}

function lowestCharge({ units }: Run, { compiled }: GeneratorRun): number {
  let lowest = Infinity;
  for (let u = 0; u < units.length; u++) {
    if (compiled.feeds[u] === 0) continue;
    const { state, parameters } = units[u]!;
    lowest = Math.min(lowest, state.storedWmin / parameters.capacityWmin);
  }
  return lowest;
}

/** The circuits are too much for the generator: its breaker opens now, and the units carry on from their banks. */
export function tripSource(run: Run, sources: SourcesRun): void {
  tripGenerator(sources.generator!, now(run), reactionTo(run));
  takeUp(run, sources);
}
