/** Watts of a circuit by its nameplates: what its leg must be able to carry. */
import type { Appliance, Circuit } from '../../scenario/scenario.ts';
import { sumOfNameplatesW } from '../../usage/nameplate.ts';
import { startExtraOf } from '../../usage/start-extra.ts';

export interface Nameplate {
  /** Everything on it running at once. */
  readonly allW: number;
  /** What runs by itself, day and night, nobody choosing when: steady, cycling and thermostatic appliances, and lights. */
  readonly unattendedW: number;
  /** Largest excess of starting over running watts of what runs by itself. */
  readonly startExtraW: number;
}

export function nameplateOf({ appliances }: Circuit): Nameplate {
  const unattended = appliances.filter(runsByItself);
  return {
    allW: sumOfNameplatesW(appliances),
    unattendedW: sumOfNameplatesW(unattended),
    startExtraW: Math.max(0, ...unattended.map(startExtraW)),
  };
}

function runsByItself({ kind }: Appliance): boolean {
  return kind === 'steady' || kind === 'duty-cycled' || kind === 'thermostat' || kind === 'lights';
}

function startExtraW(appliance: Appliance): number {
  return 'startingW' in appliance ? startExtraOf(appliance) : 0;
}
