import { minutesInWindows } from '../clock/clock-windows.ts';
import type { Appliance, Circuit } from '../scenario/scenario.ts';
import type { CheckedScenario } from '../scenario/schema.ts';
import { dayRuns } from './day-runs.ts';
import { planDutyCycled } from './duty-cycled.ts';
import { planEvents } from './events.ts';
import { planLights } from './lights.ts';
import { logNormalSigma } from './log-normal-factor.ts';
import { planMeasured } from './measured.ts';
import { planScheduled } from './scheduled.ts';
import { planSteady, type SteadyPlan } from './steady.ts';
import { planThermostat } from './thermostat.ts';
import type {
  AppliancePlan,
  CircuitPlan,
  PlannedAppliance,
  UsagePlan,
  VaryingAppliance,
} from './usage-plan.ts';

/**
 * Compiles the circuits once per household. MODEL.md §Usage.
 *
 * @param awake the person's waking window of local clock time, "HH:MM-HH:MM".
 * @param indoorC room temperature at which duty cycles have their stated share, °C.
 */
export function planUsage(
  circuits: readonly Circuit[],
  usage: CheckedScenario['usage'],
  awake: string,
  indoorC: number,
): UsagePlan {
  const awakeMinutes = minutesInWindows([awake]);
  const household: HouseholdPlan = { awake: awakeMinutes, indoorC, darknesses: [] };
  return {
    circuits: circuits.map((circuit, index) => planCircuit(circuit, index, household)),
    darknesses: household.darknesses,
    awake: dayRuns(awakeMinutes),
    householdSigma: logNormalSigma(usage.householdScatterFraction),
  };
}

function planCircuit(circuit: Circuit, circuitIndex: number, household: HouseholdPlan): CircuitPlan {
  const steady: PlannedAppliance<SteadyPlan>[] = [];
  const varying: VaryingAppliance[] = [];
  const names = streamNames(circuit);
  circuit.appliances.forEach((appliance, applianceIndex) => {
    const plan = planAppliance(appliance, circuitIndex, applianceIndex, household);
    const purpose = `usage/${circuit.id}/${names[applianceIndex]!}`;
    for (let copy = 1; copy <= copiesOf(appliance); copy++) {
      const own = copy === 1 ? purpose : `${purpose}/${copy}`;
      if (plan.kind === 'steady') steady.push({ purpose: own, plan });
      else varying.push({ purpose: own, plan, first: !varying.some(drawsWatts) });
    }
  });
  return {
    steady,
    varying,
    varies: varying.some(drawsWatts),
    starts: varying.some(({ plan }) => starts(plan)),
  };
}

/** Appliance ids, or positions where there is none; of several with one id, the later ones get their position as well. */
function streamNames(circuit: Circuit): readonly string[] {
  const ids = circuit.appliances.map((appliance) => appliance.id);
  return ids.map((id, index) => {
    if (id === undefined) return `${index}`;
    return ids.indexOf(id) === index ? id : `${id}@${index}`;
  });
}

/** What the appliances of one household share. */
interface HouseholdPlan {
  readonly awake: Uint8Array;
  readonly indoorC: number;
  readonly darknesses: number[];
}

function planAppliance(
  appliance: Appliance,
  circuitIndex: number,
  applianceIndex: number,
  household: HouseholdPlan,
): AppliancePlan {
  switch (appliance.kind) {
    case 'steady':
      return planSteady(appliance);
    case 'duty-cycled':
      return planDutyCycled(appliance, household.indoorC);
    case 'events':
      return planEvents(appliance, household.awake);
    case 'scheduled':
      return planScheduled(appliance);
    case 'lights':
      return planLights(appliance, household.darknesses);
    case 'measured':
      return planMeasured(appliance);
    case 'thermostat':
      return planThermostat(appliance, circuitIndex, applianceIndex);
  }
}

/** Several that run each in its own time are planned one by one; the other kinds multiply their watts. */
function copiesOf(appliance: Appliance): number {
  const apart =
    appliance.kind === 'duty-cycled' || appliance.kind === 'events' || appliance.kind === 'thermostat';
  return apart ? appliance.count : 1;
}

function starts(plan: AppliancePlan): boolean {
  return (
    (plan.kind === 'duty-cycled' || plan.kind === 'events' || plan.kind === 'scheduled') &&
    plan.startExtraW > 0
  );
}

/** Whether it lays watts on its circuit: those of thermostats come when the draw is stepped. */
function drawsWatts({ plan }: PlannedAppliance): boolean {
  return plan.kind !== 'thermostat';
}
