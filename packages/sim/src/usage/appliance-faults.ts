import type { ApplianceSpec } from '../scenario/schema.ts';
import { thermostatFault } from './thermostat-fault.ts';

/** Shorter runs only cost time: what counts is the mean of a minute. */
const SHORTEST_RUN_MINUTES = 0.1;

/**
 * Everything about an appliance that the schema lets through and no house can have, one plain sentence each; none
 * when it is sound.
 */
export function applianceFaults(appliance: ApplianceSpec): readonly string[] {
  const faults: string[] = [];
  if (
    'startingW' in appliance &&
    appliance.startingW !== undefined &&
    appliance.startingW < appliance.runningW
  ) {
    faults.push(
      `its startingW (${appliance.startingW} W) is below its runningW (${appliance.runningW} W): ` +
        `give the whole draw of a start, not what it adds`,
    );
  }
  if (appliance.kind === 'thermostat')
    faults.push(...[thermostatFault(appliance)].filter((f) => f !== undefined));
  if (appliance.kind === 'duty-cycled' && appliance.onMinutes < SHORTEST_RUN_MINUTES) {
    faults.push(
      `its runs of ${appliance.onMinutes} minutes are too short to follow: give onMinutes of ${SHORTEST_RUN_MINUTES} or more`,
    );
  }
  if (appliance.kind === 'events') faults.push(...eventsFaults(appliance));
  return faults;
}

function eventsFaults(appliance: Extract<ApplianceSpec, { kind: 'events' }>): readonly string[] {
  const { usesPerDay, minutesPerUse, hourWeights } = appliance;
  const faults: string[] = [];
  if (usesPerDay > 0 && hourWeights?.every((weight) => weight === 0)) {
    faults.push('all its hourWeights are 0, so its uses fall in no hour: give at least one hour some weight');
  }
  if (usesPerDay * minutesPerUse >= 1440) {
    faults.push(
      `${usesPerDay} uses of ${minutesPerUse} minutes do not fit into a day one after another: ` +
        `lower usesPerDay or minutesPerUse, or give several with count`,
    );
  }
  return faults;
}
