/** What stands on an appliance's nameplate: no weather, no habits, no draws. */
import type { Appliance, Circuit } from '../scenario/scenario.ts';

/** Running watts of everything on an entry at once; of a measured profile its highest reading. */
export function nameplateW(appliance: Appliance): number {
  const { count } = appliance;
  if (appliance.kind !== 'measured') return count * appliance.runningW;
  return count * appliance.scale * appliance.profile.watts.reduce((most, w) => Math.max(most, w), 0);
}

/** Running watts of these appliances all at once. */
export function sumOfNameplatesW(appliances: Circuit['appliances']): number {
  return appliances.reduce((sum, appliance) => sum + nameplateW(appliance), 0);
}
