/** One unit as numbers: what the minute loop reads. Energy in watt-minutes, power in watts. MODEL.md §6–7. */
import type { UnitSpec } from '../scenario/schema.ts';

/** Positions in a unit's parameter array. */
export const SURGE_W = 0;
export const CONTINUOUS_W = 1;
export const OVERLOAD_MINUTES = 2;
export const IDLE_W = 3;
export const LOSS_PER_W = 4;
export const LOSS_PER_W2 = 5;
export const STANDBY_W = 6;
export const DISCHARGE_LIMIT_W = 7;
export const CHARGE_EFFICIENCY = 8;
export const DISCHARGE_EFFICIENCY = 9;
export const CAPACITY_WMIN = 10;
export const RESTART_WMIN = 11;
export const KEPT_PER_HOUR = 12;
export const UNIT_PARAMETERS = 13;

const HOURS_PER_MONTH = 730.5; // mean Gregorian month

/** Capacity of the whole bank as it is today, Wh. */
export function bankCapacityWh(battery: UnitSpec['battery']): number {
  return battery.modules * battery.module.capacityWh * battery.healthFraction;
}

/** Share of the stored energy left after an hour of self-discharge, taken evenly over a month. */
export function keptPerHour(selfDischargePerMonthFraction: number): number {
  return 1 - selfDischargePerMonthFraction / HOURS_PER_MONTH;
}

export function unitParameters(unit: UnitSpec): Float64Array {
  const { inverter, battery } = unit;
  const capacityWmin = bankCapacityWh(battery) * 60;
  const p = new Float64Array(UNIT_PARAMETERS);
  p[SURGE_W] = inverter.surgeW;
  p[CONTINUOUS_W] = inverter.continuousW;
  p[OVERLOAD_MINUTES] = inverter.overloadMinutes;
  p[IDLE_W] = inverter.idleW;
  p[LOSS_PER_W] = inverter.lossPerW;
  p[LOSS_PER_W2] = inverter.lossPerW2;
  p[STANDBY_W] = inverter.standbyW;
  p[DISCHARGE_LIMIT_W] = battery.modules * battery.module.maxDischargeW;
  p[CHARGE_EFFICIENCY] = battery.module.chargeEfficiency;
  p[DISCHARGE_EFFICIENCY] = battery.module.dischargeEfficiency;
  p[CAPACITY_WMIN] = capacityWmin;
  p[RESTART_WMIN] = capacityWmin * battery.restartFraction;
  p[KEPT_PER_HOUR] = keptPerHour(battery.module.selfDischargePerMonthFraction);
  return p;
}
