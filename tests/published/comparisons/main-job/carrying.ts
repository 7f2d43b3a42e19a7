/** What a pair can carry and start. */
import { bareCircuit, bareStudy, bareUnit, during, onlyRow, steady } from '../../bare-household.ts';
import { exactly, type Comparison } from '../comparison.ts';

/** Units that trip in an evening: of a pair, or of one unit alone, each of 3 kW and 6 kW of starting watts. */
function unitsTripped(circuits: Parameters<typeof bareStudy>[0]['circuits'], units: 1 | 2 = 2): number {
  const inverter = { continuousW: 3000, surgeW: 6000 };
  const pair = (['L1', 'L2'] as const).map((leg) =>
    bareUnit({ id: leg.toLowerCase(), leg, capacityWh: 1e6, inverter }),
  );
  const row = onlyRow(bareStudy({ units: pair.slice(0, units), circuits, days: 1 }));
  return [0, 1].filter((u) => row(`minutesUnit${u}Down`) > 0).length;
}

const starting = (leg: 'L1' | 'both', startingW: number) => [
  bareCircuit('motor', leg, { ...during(100, '12:00-13:00'), startingW }),
];

const DESIGN = 'design fact of a split-phase pair (half of a 240 V load on each unit)';

export const carrying: readonly Comparison[] = (
  [
    [
      'a pair of 3 kW units carries 6 kW at 240 V',
      () => unitsTripped([bareCircuit('load', 'both', steady(6000))]),
      0,
    ],
    ['and trips both at 6,001 W', () => unitsTripped([bareCircuit('load', 'both', steady(6001))]), 2],
    ['one leg carries 3 kW at 120 V', () => unitsTripped([bareCircuit('load', 'L1', steady(3000))]), 0],
    [
      'and trips at 3,001 W although the pair has 6',
      () => unitsTripped([bareCircuit('load', 'L1', steady(3001))]),
      1,
    ],
    ['one unit alone carries 3 kW', () => unitsTripped([bareCircuit('load', 'L1', steady(3000))], 1), 0],
    ['a pair starts 12 kW at 240 V', () => unitsTripped(starting('both', 12_000)), 0],
    ['and trips both at a start of 12,001 W', () => unitsTripped(starting('both', 12_001)), 2],
    ['one leg starts 6 kW', () => unitsTripped(starting('L1', 6000)), 0],
    ['and trips at a start of 6,001 W', () => unitsTripped(starting('L1', 6001)), 1],
  ] as const
).map(([claim, ours, tripped]) => ({
  claim: `${claim}: units tripped`,
  source: DESIGN,
  unit: 'units',
  band: exactly(tripped),
  ours,
}));
