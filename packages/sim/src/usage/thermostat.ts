/** Appliances that hold a temperature: their power is stepped by the kernel, this says what they are. MODEL.md §Usage, U9. */
import type { Stream } from '../chance/streams.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { startExtraOf } from './start-extra.ts';
import type { ThermostatWant } from './usage-draw.ts';
import { roundW } from './round-w.ts';

export type ThermostatAppliance = Extract<Appliance, { kind: 'thermostat' }>;

export interface ThermostatPlan {
  readonly kind: 'thermostat';
  /** Everything that no draw changes. */
  readonly want: Omit<ThermostatWant, 'startC' | 'startCalling'>;
}

/** A want whose two drawn values are filled anew for every draw. */
export type ThermostatBuffer = { -readonly [K in keyof ThermostatWant]: ThermostatWant[K] };

/**
 * °C a minute that running moves the temperature: at surroundings of dutySurroundingsC, pull × duty balances the
 * drift at setC, which is |surroundings + offset - setC| / time constant.
 */
export function pullCPerMinuteOf(appliance: ThermostatAppliance): number {
  const driftCPerMinute =
    Math.abs(appliance.dutySurroundingsC + appliance.surroundingsOffsetC - appliance.setC) /
    (appliance.timeConstantHours * 60);
  return driftCPerMinute / appliance.dutyFraction;
}

export function planThermostat(
  appliance: ThermostatAppliance,
  circuitIndex: number,
  applianceIndex: number,
): ThermostatPlan {
  const want = {
    circuitIndex,
    applianceIndex,
    runningW: roundW(appliance.runningW),
    startExtraW: startExtraOf(appliance),
    sign: appliance.does === 'cools' ? (1 as const) : (-1 as const),
    setC: appliance.setC,
    bandC: appliance.bandC,
    surroundings: appliance.surroundings,
    surroundingsOffsetC: appliance.surroundingsOffsetC,
    timeConstantMinutes: appliance.timeConstantHours * 60,
    pullCPerMinute: pullCPerMinuteOf(appliance),
    limitC: appliance.limitC,
  };
  return { kind: 'thermostat', want };
}

/**
 * Where it stands when the grid fails: anywhere in its band with equal chance (the saw-tooth of a narrow band is
 * nearly straight), calling with the chance of its duty in the surroundings of that minute.
 *
 * @param surroundingsC its surroundings at minute 0, without its own offset, °C.
 */
export function drawThermostat(want: ThermostatBuffer, surroundingsC: number, stream: Stream): void {
  const drift =
    (want.sign * (surroundingsC + want.surroundingsOffsetC - want.setC)) / want.timeConstantMinutes;
  want.startC = want.setC + want.bandC * (2 * stream() - 1);
  want.startCalling = stream() * want.pullCPerMinute < drift;
}
