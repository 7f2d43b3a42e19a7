/** The household of a published study of solar and storage for backup, as near as its text describes it. */
import type { Study } from '../../../../packages/sim/src/index.ts';
import { appliance, circuit, studyOf, unit3kW, type Circuit, type Place, type Unit } from './household.ts';

/**
 * Half of a solar-plus-storage system on one leg: 5 kWh or three times that, 5 kW, full when the grid goes, all of it
 * usable. The published system is one unit of 10 or 30 kWh; ours is a pair, because that is the household at hand.
 */
function backupUnit(id: string, leg: 'L1' | 'L2', solarW: number): Unit {
  return {
    ...unit3kW(id, leg, { solarW }),
    inverter: { continuousW: 5000, surgeW: 10_000, overloadMinutes: 5, idleW: 25, lossPerW: 0.035 },
    battery: {
      module: { capacityWh: 5000, maxChargeW: 2500, maxDischargeW: 5000 },
      startFraction: 1,
      cutOffFraction: 0,
      restartFraction: 0.05,
    },
  };
}

/** Refrigeration as EIA RECS 2001 has it (1,462 kWh a year), lighting, internet, a well pump: 5 to 6 kWh a day. */
export const LIMITED_CRITICAL: readonly Circuit[] = [
  circuit('fridge', 'L1', 1, appliance('refrigerator-old')),
  circuit('lights', 'L2', 1, appliance('lights-led', { count: 3 })),
  circuit('talk', 'L2', 1, appliance('modem-router')),
  circuit('well', 'both', 1, appliance('well-pump-half-hp')),
];

/** A house that needs three quarters of 6 kW of heat at -10 °C; a heat pump brings the same for a third of the watts. */
const heating = (runningW: number) => ({
  kind: 'thermostat',
  does: 'heats',
  runningW,
  setC: 20,
  bandC: 0.5,
  surroundings: 'outdoors',
  surroundingsOffsetC: 3,
  timeConstantHours: 20,
  dutyFraction: 0.75,
  dutySurroundingsC: -10,
});

export const WITH_RESISTANCE_HEAT = [...LIMITED_CRITICAL, circuit('heat', 'both', 1, heating(6000))];
export const WITH_HEAT_PUMP = [...LIMITED_CRITICAL, circuit('heat', 'both', 1, heating(2000))];
export const WITH_COOLING = [
  ...LIMITED_CRITICAL,
  circuit('cool', 'L1', 1, appliance('room-air-conditioner-12000')),
  circuit('cool-too', 'L2', 1, appliance('room-air-conditioner-12000')),
];

/** Three days from a random minute of the month, with 10 kWh and with 30. */
export function backupStudy(
  place: Place,
  month: number,
  circuits: readonly Circuit[],
  solarW: number,
): Study {
  return studyOf({
    place,
    months: [month],
    days: 3,
    units: [backupUnit('one', 'L1', solarW / 2), backupUnit('two', 'L2', solarW / 2)],
    circuits,
    alternatives: [
      { id: 'ten', title: '10 kWh' },
      { id: 'thirty', title: '30 kWh', change: { 'units.*.battery.modules': 3 } },
    ],
  });
}
