/** A household's usage with everything worked out that no draw changes. */
import type { DayRuns } from './day-runs.ts';
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
export interface PlannedAppliance<Plan = AppliancePlan> {
  /** Its own stream: `usage/<circuit id>/<appliance id or index>`, with `/2`, `/3`, … for further ones of the same. */
  readonly purpose: string;
  readonly plan: Plan;
}

export type VaryingPlan = Exclude<AppliancePlan, SteadyPlan>;

/** One whose watts go up and down. */
export interface VaryingAppliance extends PlannedAppliance<VaryingPlan> {
  /** Whether it is the first on its circuit to be drawn, thermostats aside: only steady watts lie there before it. */
  readonly first: boolean;
}

/** What is plugged into one circuit. */
export interface CircuitPlan {
  readonly steady: readonly PlannedAppliance<SteadyPlan>[];
  /** All the others. */
  readonly varying: readonly VaryingAppliance[];
  /** Whether its watts ever differ from the steady ones, thermostats aside. */
  readonly varies: boolean;
  /** Whether anything on it, thermostats aside, asks for starting watts. */
  readonly starts: boolean;
}

export interface UsagePlan {
  /** In the scenario's order. */
  readonly circuits: readonly CircuitPlan[];
  /** The different sun elevations that lights count as dark below, degrees. */
  readonly darknesses: readonly number[];
  /** The local minutes of a day in which people are up. */
  readonly awake: DayRuns;
  readonly householdSigma: number;
}
