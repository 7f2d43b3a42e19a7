/** What one unit carries all summer, and what trips a pair in an evening. */
import { runShard } from '../../../../packages/sim/src/index.ts';
import { exactly, type Comparison } from '../comparison.ts';
import { appliance, circuit, pair3kW, studyOf, unit3kW, type Circuit } from './household.ts';
import { column, sum } from './rows.ts';
import { PRACTICE } from './practice.ts';

/** A flat on one unit: refrigerator, washer, internet and a window air conditioner. */
function flatTrips(airConditioner: string): number {
  const circuits = [
    circuit('fridge', 'L1', 1, appliance('refrigerator')),
    circuit('talk', 'L1', 1, appliance('modem-router'), appliance('phone-charging', { count: 2 })),
    circuit('washer', 'L1', 2, appliance('clothes-washer')),
    circuit('cool', 'L1', 2, appliance(airConditioner)),
  ];
  const study = studyOf({
    place: 'phoenix',
    months: [6, 7, 8],
    days: 4,
    units: [unit3kW('unit', 'L1', { solarW: 1600 })],
    circuits,
  });
  return sum(column(runShard(study, 0, 150), 'trips'));
}

const evening = (runningW: number) => ({ kind: 'scheduled', runningW, windows: ['18:00-19:00'] });
const KEPT = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('old-fridge', 'L2', 1, appliance('refrigerator-old')),
  circuit('lights', 'L1', 1, appliance('lights-led')),
  circuit('more-lights', 'L2', 1, appliance('lights-led')),
];

/** Draws of 60, a day each, in which a unit trips. Four modules each: the banks are not what gives way. */
function tripping(circuits: readonly Circuit[]): number {
  const units = pair3kW({ battery: { modules: 4 } });
  const rows = runShard(studyOf({ place: 'boston', months: [4, 5], days: 1, units, circuits }), 0, 60);
  return column(rows, 'trips').filter((trips) => trips > 0).length;
}

export const heavy: readonly Comparison[] = [
  ...(['room-air-conditioner-5000', 'room-air-conditioner-8000'] as const).map((id) => ({
    claim: `one 3 kW unit with one 3.2 kWh module, refrigerator, washer, internet and ${id}: trips in 150 summer draws of 4 days`,
    source: PRACTICE,
    unit: 'trips',
    band: exactly(0),
    ours: () => flatTrips(id),
  })),
  {
    claim: 'water heater and oven on together with refrigerators and lights trip a 6 kW pair: draws of 60',
    source: `${PRACTICE}; 4,500 W: US DOE Energy Savers list (R1)`,
    unit: 'draws',
    band: exactly(60),
    ours: () =>
      tripping([
        ...KEPT,
        circuit('water-heater', 'both', 3, evening(4500)),
        circuit('oven', 'both', 3, evening(2400)),
      ]),
  },
  {
    claim: 'the water heater alone does not',
    source: PRACTICE,
    unit: 'draws',
    band: exactly(0),
    ours: () => tripping([...KEPT, circuit('water-heater', 'both', 3, evening(4500))]),
  },
];
