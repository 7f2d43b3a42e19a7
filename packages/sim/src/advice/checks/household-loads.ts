/** What a household's nameplates ask of its units and breakers. */
import { minutesInWindows } from '../../clock/clock-windows.ts';
import { feedsLeg } from '../../scenario/feeds-leg.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import type { Appliance, Circuit, HouseholdSpec } from '../../scenario/scenario.ts';
import { CONTINUOUS_MINUTES } from '../../power/continuous-load.ts';
import { BOTH_LEGS_V, LEG_V } from '../../power/nominal-volts.ts';
import { nameplateW, sumOfNameplatesW } from '../../usage/nameplate.ts';
import { startExtraOf, startsTogether } from '../../usage/start-extra.ts';

/** Nominal voltage of a circuit. */
export function circuitV({ leg }: Pick<Circuit, 'leg'>): number {
  return leg === 'both' ? BOTH_LEGS_V : LEG_V;
}

/** The share of a circuit's watts that a unit must carry: half of 240 V, which one unit alone does not make. */
export function shareOf(unit: UnitSpec, circuit: Pick<Circuit, 'leg'>, units: readonly UnitSpec[]): number {
  if (circuit.leg === 'both') return units.length === 2 ? 0.5 : 0;
  return feedsLeg(unit.leg, circuit.leg) ? 1 : 0;
}

/** Everything on a unit running at once, W. */
export function unitNameplateW(unit: UnitSpec, { circuits, units }: HouseholdSpec): number {
  return circuits.reduce((sum, c) => sum + shareOf(unit, c, units) * sumOfNameplatesW(c.appliances), 0);
}

/** The largest excess of starting over running watts on a circuit: one start at a time, but for what one clock starts. */
export function startExtraW({ appliances }: Circuit): number {
  const extras = appliances.map((a) => {
    if (a.kind === 'measured' || !('startingW' in a)) return 0;
    return startExtraOf(a) * startsTogether(a);
  });
  return Math.max(0, ...extras);
}

/** Watts on a circuit that stay at their most for three hours or more, told from its appliances or by its key. */
export function circuitContinuousW(circuit: Circuit): number {
  if (circuit.continuous === true) return sumOfNameplatesW(circuit.appliances);
  if (circuit.continuous === false) return 0;
  return circuit.appliances.reduce((sum, a) => sum + continuousW(a), 0);
}

/** Thermostats cycle: their compressors rest within three hours. */
function continuousW(appliance: Appliance): number {
  switch (appliance.kind) {
    case 'steady':
    case 'lights':
      return nameplateW(appliance);
    case 'scheduled':
      return longestWindowMinutes(appliance.windows) >= CONTINUOUS_MINUTES ? nameplateW(appliance) : 0;
    case 'duty-cycled':
      return appliance.onMinutes >= CONTINUOUS_MINUTES || appliance.dutyFraction === 1
        ? nameplateW(appliance)
        : 0;
    case 'events':
      return appliance.minutesPerUse >= CONTINUOUS_MINUTES ? nameplateW(appliance) : 0;
    case 'measured': {
      const { intervalMinutes, watts } = appliance.profile;
      return (
        appliance.count * appliance.scale * heldW(watts, Math.ceil(CONTINUOUS_MINUTES / intervalMinutes))
      );
    }
    case 'thermostat':
      return 0;
  }
}

function longestWindowMinutes(windows: readonly string[]): number {
  return Math.max(...windows.map((window) => minutesInWindows([window]).reduce((sum, m) => sum + m, 0)));
}

/** The most watts that were exceeded or met throughout some `values` readings in a row. */
function heldW(watts: readonly number[], values: number): number {
  let most = 0;
  for (let i = 0; i + values <= watts.length; i++) {
    let least = Infinity;
    for (let k = i; k < i + values; k++) least = Math.min(least, watts[k]!);
    most = Math.max(most, least);
  }
  return most;
}
