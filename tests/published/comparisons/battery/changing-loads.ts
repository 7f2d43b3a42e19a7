/** How long loads that come and go last, and loads with sun. */
import {
  bareCircuit,
  bareUnit,
  daysOfSun,
  during,
  FOUR_HOURS,
  profile,
  steady,
} from '../../bare-household.ts';
import { exactly, type Comparison } from '../comparison.ts';
import { drainW, periodicHours } from './runtime-by-hand.ts';
import { constantLoad, ENERGY, ORDINARY, runtimeHours } from './constant-load.ts';

/** 600 W for the first 20 minutes of every hour, 50 W for the rest: a compressor and its lamp. */
const TWENTY_MINUTES = {
  intervalMinutes: 1,
  watts: Array.from({ length: 60 }, (_, m) => (m < 20 ? 600 : 50)),
};

export const changingLoads: readonly Comparison[] = [
  {
    claim: '600 W for 20 minutes of each hour and 50 W between, out of 5 kWh',
    source: `${ENERGY}, hour by hour`,
    unit: 'h',
    band: exactly(
      periodicHours(5000, [
        [1 / 3, drainW(600, ORDINARY)],
        [2 / 3, drainW(50, ORDINARY)],
      ]),
    ),
    ours: () =>
      runtimeHours({
        ...constantLoad(5000, 0, ORDINARY),
        circuits: [bareCircuit('load', 'L1', profile('twenty'))],
        profiles: { twenty: TWENTY_MINUTES },
      }),
  },
  {
    claim: '80 W all day and 400 W more from 07:00 to 22:00, out of 12 kWh',
    source: `${ENERGY}, stretch by stretch`,
    unit: 'h',
    band: exactly(
      periodicHours(12_000, [
        [7, drainW(80, ORDINARY)],
        [15, drainW(480, ORDINARY)],
        [2, drainW(80, ORDINARY)],
      ]),
    ),
    ours: () =>
      runtimeHours({
        ...constantLoad(12_000, 0, ORDINARY),
        circuits: [
          bareCircuit('base', 'L1', steady(80)),
          bareCircuit('day', 'L1', during(400, '07:00-22:00')),
        ],
      }),
  },
  {
    claim: '200 W all day, 1 kW of sun from 10 to 14, charged and discharged at 0.95 each way, from 3 kWh',
    source: `${ENERGY}, stretch by stretch`,
    unit: 'h',
    band: exactly(
      periodicHours(3000, [
        [10, 200 / 0.95],
        [4, -800 * 0.95],
        [10, 200 / 0.95],
      ]),
    ),
    ours: () =>
      runtimeHours({
        units: [
          bareUnit({
            capacityWh: 10_000,
            sunW: 1000,
            battery: { startFraction: 0.3 },
            module: { chargeEfficiency: 0.95, dischargeEfficiency: 0.95 },
          }),
        ],
        circuits: [bareCircuit('load', 'L1', steady(200))],
        days: 10,
        year: daysOfSun(() => FOUR_HOURS),
      }),
  },
];
