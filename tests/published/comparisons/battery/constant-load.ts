/** One unit under one steady load. */
import { bareCircuit, bareStudy, bareUnit, onlyRow, steady, type Bare } from '../../bare-household.ts';
import type { Losses } from './runtime-by-hand.ts';

/** What most of these checks are. */
export const ENERGY = 'arithmetic: energy over power (C)';

export const runtimeHours = (bare: Bare) => onlyRow(bareStudy(bare))('runtimeMinutes') / 60;

/** One unit with one circuit that asks `loadW` all the time. */
export function constantLoad(capacityWh: number, loadW: number, losses: Losses, battery = {}): Bare {
  const { dischargeEfficiency, ...inverter } = losses;
  return {
    units: [bareUnit({ capacityWh, inverter, module: { dischargeEfficiency }, battery })],
    circuits: [bareCircuit('load', 'L1', steady(loadW))],
    days: 10,
  };
}

/** Losses of an ordinary unit. */
export const ORDINARY: Losses = { idleW: 28, lossPerW: 0.035, lossPerW2: 8e-6, dischargeEfficiency: 0.97 };
