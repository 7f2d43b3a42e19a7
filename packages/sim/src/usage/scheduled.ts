/** Appliances a clock switches: a pump timer, a car charging overnight. MODEL.md §Usage, U6. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { addMinutes, addStart } from './circuit-buffers.ts';
import { dayRuns, type DayRuns } from './day-runs.ts';
import type { LocalDays } from './local-days.ts';
import { startExtraOf, startsTogether } from './start-extra.ts';
import type { CircuitWant } from './usage-draw.ts';
import { roundW } from './round-w.ts';

export interface ScheduledPlan {
  readonly kind: 'scheduled';
  readonly runningW: number;
  readonly startExtraW: number;
  /** 1 for each of the 1,440 local minutes of a day in which it runs. */
  readonly on: Uint8Array;
  readonly runs: DayRuns;
}

/** The clock starts all `count` of them in the same seconds, so their starting watts add up. */
export function planScheduled(appliance: Extract<Appliance, { kind: 'scheduled' }>): ScheduledPlan {
  const on = minutesInWindows(appliance.windows);
  return {
    kind: 'scheduled',
    runningW: roundW(appliance.runningW * appliance.count),
    startExtraW: startExtraOf(appliance) * startsTogether(appliance),
    on,
    runs: dayRuns(on),
  };
}

/**
 * Adds its watts wherever the clock on the wall reads a minute of its windows: an hour that comes twice is run
 * twice, one that is jumped over is not run. A timer has no habits: neither household nor day scatter changes it.
 *
 * @param first whether nothing but the day's steady watts lies on the circuit yet.
 */
export function drawScheduled(
  plan: ScheduledPlan,
  clock: OutageClock,
  days: LocalDays,
  circuit: CircuitWant,
  first: boolean,
): void {
  const { runs } = plan;
  for (let s = 0; s < days.stretchCount; s++) {
    const at = days.stretchAt[s]!;
    const reading = days.stretchReading[s]!;
    const end = days.stretchAt[s + 1]!;
    for (let k = 0; k < runs.from.length; k++) {
      const from = Math.max(at, at + runs.from[k]! - reading);
      const to = Math.min(end, at + runs.to[k]! - reading);
      if (from >= to) continue;
      if (plan.startExtraW > 0 && !wasOn(plan, clock, from)) addStart(circuit, from, plan.startExtraW);
      addMinutes(circuit, from, to, plan.runningW, first);
    }
  }
}

/** Whether it ran in the minute before `minute`, be that the last one with the grid up. */
function wasOn(plan: ScheduledPlan, clock: OutageClock, minute: number): boolean {
  const reading =
    minute > 0 ? clock.localMinuteOfDay[minute - 1]! : (clock.localMinuteOfDay[0]! + 1439) % 1440;
  return plan.on[reading] === 1;
}
