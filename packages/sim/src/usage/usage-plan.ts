/** A household's usage with everything worked out that no draw changes. */
import type { DutyCycledPlan } from './duty-cycled.ts';
import type { EventsPlan } from './events.ts';
import type { LightsPlan } from './lights.ts';
import type { MeasuredPlan } from './measured.ts';
import type { ScheduledPlan } from './scheduled.ts';
import type { SteadyPlan } from './steady.ts';
import type { ThermostatPlan } from './thermostat.ts';

export type AppliancePlan =
  SteadyPlan | DutyCycledPlan | EventsPlan | ScheduledPlan | LightsPlan | MeasuredPlan | ThermostatPlan;

/** One appliance, or one of several of the same that run independently. */
export interface PlannedAppliance {
  readonly circuitIndex: number;
  /** Its own stream: `usage/<circuit id>/<appliance id or index>`, with `/2`, `/3`, … for further ones of the same. */
  readonly purpose: string;
  readonly plan: AppliancePlan;
}

export interface UsagePlan {
  readonly circuitCount: number;
  /** Whether anything on the circuit, thermostats aside, asks for starting watts. */
  readonly circuitStarts: readonly boolean[];
  readonly appliances: readonly PlannedAppliance[];
  /** The different sun elevations that lights count as dark below, degrees. */
  readonly darknesses: readonly number[];
  /** 1 for each of the 1,440 local minutes of a day in which people are up. */
  readonly awake: Uint8Array;
  readonly householdSigma: number;
}
