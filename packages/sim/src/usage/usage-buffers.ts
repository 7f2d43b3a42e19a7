import { createCircuit } from './circuit-buffers.ts';
import { createLitRuns } from './lit-runs.ts';
import { createLocalDays, type LocalDays } from './local-days.ts';
import type { MinuteRuns } from './minute-runs.ts';
import type { ThermostatBuffer } from './thermostat.ts';
import type { UsageDraw } from './usage-draw.ts';
import type { UsagePlan } from './usage-plan.ts';
import { createUsesAhead, type UsesAhead } from './uses-ahead.ts';

/** A draw whose arrays are filled again and again, with the working space of filling them. */
export interface UsageBuffers extends UsageDraw {
  readonly thermostats: readonly ThermostatBuffer[];
  /** Where the local days of this draw lie. */
  readonly days: LocalDays;
  /** Dark waking minutes, one list for each of the plan's darknesses. */
  readonly lit: readonly MinuteRuns[];
  /** Steady watts of the circuit in hand, one value per local day. */
  readonly steadyDayW: Float64Array;
  /** Watts that lie over all of a circuit since the draw before; NaN where they vary. */
  readonly laidW: Float64Array;
  readonly ahead: UsesAhead;
}

/** Empty buffers for draws of `minutes` minutes, for `drawUsage`. */
export function createUsageDraw(plan: UsagePlan, minutes: number): UsageBuffers {
  const days = createLocalDays(minutes);
  const thermostats: ThermostatBuffer[] = [];
  for (const { plan: each } of plan.circuits.flatMap((circuit) => circuit.varying)) {
    if (each.kind === 'thermostat')
      thermostats.push({ ...each.want, startC: each.want.setC, startCalling: false });
  }
  const circuits = plan.circuits.map(({ steady, varies, starts }) =>
    createCircuit(minutes, steady.length > 0 || varies, starts),
  );
  return {
    minutes,
    circuits,
    thermostats,
    days,
    lit: plan.darknesses.map(() => createLitRuns(minutes)),
    steadyDayW: new Float64Array(days.midnightAt.length),
    laidW: new Float64Array(circuits.length),
    ahead: createUsesAhead(),
  };
}
