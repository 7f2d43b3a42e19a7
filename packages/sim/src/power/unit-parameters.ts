/** One unit as numbers: what the minute loop reads. Energy in watt-minutes, power in watts. MODEL.md §6–7. */
import type { UnitSpec } from '../scenario/schema.ts';

/** What does not change about a unit in a run. */
export interface UnitParameters {
  readonly surgeW: number;
  readonly continuousW: number;
  readonly overloadMinutes: number;
  readonly idleW: number;
  readonly lossPerW: number;
  readonly lossPerW2: number;
  readonly standbyW: number;
  readonly dischargeLimitW: number;
  readonly chargeEfficiency: number;
  readonly dischargeEfficiency: number;
  readonly capacityWmin: number;
  readonly restartWmin: number;
  readonly keptPerHour: number;
}

const HOURS_PER_MONTH = 730.5; // mean Gregorian month

/** Capacity of the whole bank as it is today, Wh. */
export function bankCapacityWh(battery: UnitSpec['battery']): number {
  return battery.modules * battery.module.capacityWh * battery.healthFraction;
}

/** Share of the stored energy left after an hour of self-discharge, taken evenly over a month. */
export function keptPerHour(selfDischargePerMonthFraction: number): number {
  return 1 - selfDischargePerMonthFraction / HOURS_PER_MONTH;
}

export function unitParameters({ inverter, battery }: UnitSpec): UnitParameters {
  const capacityWmin = bankCapacityWh(battery) * 60;
  return {
    surgeW: inverter.surgeW,
    continuousW: inverter.continuousW,
    overloadMinutes: inverter.overloadMinutes,
    idleW: inverter.idleW,
    lossPerW: inverter.lossPerW,
    lossPerW2: inverter.lossPerW2,
    standbyW: inverter.standbyW,
    dischargeLimitW: battery.modules * battery.module.maxDischargeW,
    chargeEfficiency: battery.module.chargeEfficiency,
    dischargeEfficiency: battery.module.dischargeEfficiency,
    capacityWmin,
    restartWmin: capacityWmin * battery.restartFraction,
    keptPerHour: keptPerHour(battery.module.selfDischargePerMonthFraction),
  };
}
