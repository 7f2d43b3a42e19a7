import { createCircuit } from './circuit-buffers.ts';
import { createLitRuns } from './lit-runs.ts';
import { createLocalDays, type LocalDays } from './local-days.ts';
import type { MinuteRuns } from './minute-runs.ts';
import type { ThermostatBuffer } from './thermostat.ts';
import type { UsageDraw } from './usage-draw.ts';
import type { UsagePlan } from './usage-plan.ts';

/** A draw whose arrays are filled again and again, with the working space of filling them. */
export interface UsageBuffers extends UsageDraw {
  readonly thermostats: readonly ThermostatBuffer[];
  /** Where the local days of this draw lie. */
  readonly days: LocalDays;
  /** Dark waking minutes, one list for each of the plan's darknesses. */
  readonly lit: readonly MinuteRuns[];
  /** Steady watts of each circuit, one value per local day. */
  readonly steadyDayW: readonly Float64Array[];
}

/** Empty buffers for draws of `minutes` minutes, for `drawUsage`. */
export function createUsageDraw(plan: UsagePlan, minutes: number): UsageBuffers {
  const days = createLocalDays(minutes);
  const thermostats: ThermostatBuffer[] = [];
  for (const { plan: each } of plan.appliances) {
    if (each.kind === 'thermostat')
      thermostats.push({ ...each.want, startC: each.want.setC, startCalling: false });
  }
  const circuits = plan.circuitStarts.map((starts) => createCircuit(minutes, starts));
  return {
    minutes,
    circuits,
    thermostats,
    days,
    lit: plan.darknesses.map(() => createLitRuns(minutes)),
    steadyDayW: circuits.map(() => new Float64Array(days.midnightAt.length)),
  };
}
