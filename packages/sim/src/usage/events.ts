/** Appliances that people (or taps, or eggs) set going now and then: a kettle, a pump, a dryer. MODEL.md §Usage, U5. */
import type { Stream } from '../chance/streams.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { addRun, addStart } from './circuit-buffers.ts';
import { dayPattern, type DayPattern, readingAt, stretchOf } from './day-pattern.ts';
import { type LocalDays, minuteOfReading } from './local-days.ts';
import { logNormal, logNormalSigma } from './log-normal-factor.ts';
import { startExtraOf } from './start-extra.ts';
import type { CircuitWant } from './usage-draw.ts';
import { beginUses, nextUse, type UsesAhead } from './uses-ahead.ts';
import { roundW } from './round-w.ts';

export interface EventsPlan {
  readonly kind: 'events';
  readonly runningW: number;
  readonly startExtraW: number;
  readonly usesPerDay: number;
  readonly minutesPerUse: number;
  readonly lengthSigma: number;
  readonly daySigma: number;
  readonly pattern: DayPattern;
}

/** @param awake 1 for each of the 1,440 minutes of a day in which people are up. */
export function planEvents(appliance: Extract<Appliance, { kind: 'events' }>, awake: Uint8Array): EventsPlan {
  const pattern = dayPattern(appliance.hourWeights, awake);
  return {
    kind: 'events',
    runningW: roundW(appliance.runningW),
    startExtraW: startExtraOf(appliance),
    usesPerDay: pattern.from.length === 0 ? 0 : appliance.usesPerDay,
    minutesPerUse: appliance.minutesPerUse,
    lengthSigma: logNormalSigma(appliance.lengthScatterFraction),
    daySigma: logNormalSigma(appliance.dayScatterFraction),
    pattern,
  };
}

/**
 * Adds the uses of one appliance, local day by local day from the day before the outage, so that a use under way
 * when the grid fails goes on. A day's uses are a Poisson process: exponential gaps over the day's weight, hence a
 * Poisson count with mean usesPerDay × factors, in order of time. One at a time: a use that falls into another
 * waits for its end, so no watt-hour is lost; the two are then one run with one start.
 */
export function drawEvents(
  plan: EventsPlan,
  days: LocalDays,
  householdFactor: number,
  stream: Stream,
  ahead: UsesAhead,
  circuit: CircuitWant,
): void {
  const { pattern, lengthSigma } = plan;
  const minutes = circuit.demandW.length;
  beginUses(ahead);
  let busyUntil = -Infinity;
  for (let day = -1; day < days.count; day++) {
    let pair = nextUse(ahead, stream, lengthSigma);
    const uses = plan.usesPerDay * householdFactor * logNormal(ahead.numbers[2 * pair]!, plan.daySigma);
    let stretch = 0;
    // the share of the day's weight at which the next use falls; 1 or more: none today
    for (let share = -ahead.gap[pair]! / uses; share < 1; share -= ahead.gap[pair]! / uses) {
      stretch = stretchOf(pattern, share, stretch);
      const wanted = minuteOfReading(days, day, readingAt(pattern, share, stretch));
      pair = nextUse(ahead, stream, lengthSigma);
      const length = plan.minutesPerUse * ahead.lengthFactor[pair]!;
      const start = Math.max(wanted, busyUntil);
      if (start >= minutes) return;
      if (start > busyUntil) addStart(circuit, start, plan.startExtraW);
      busyUntil = start + length;
      addRun(circuit, start, busyUntil, plan.runningW);
    }
  }
}
