/** Idle appetite, and no end in sight. */
import { runShard } from '../../../../packages/sim/src/index.ts';
import { bareCircuit, bareStudy, bareUnit, onlyRow, steady } from '../../bare-household.ts';
import { atLeast, between, once, type Comparison } from '../comparison.ts';
import { appliance, circuit, pair3kW, studyOf } from './household.ts';
import { column, servedShare, sum } from './rows.ts';
import { PRACTICE } from './practice.ts';

const idleKWh = (idleW: number) => {
  const units = (['L1', 'L2'] as const).map((leg) =>
    bareUnit({ id: leg.toLowerCase(), leg, capacityWh: 1e5, inverter: { idleW } }),
  );
  return (
    onlyRow(bareStudy({ units, circuits: [bareCircuit('none', 'L1', steady(0))], days: 1 }))(
      'inverterLossWh',
    ) / 1000
  );
};

const FRUGAL = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('talk', 'L2', 1, appliance('modem-router'), appliance('phone-charging', { count: 3 })),
  circuit('lights', 'L2', 1, appliance('lights-led')),
  circuit('fan', 'L1', 2, appliance('ceiling-fan')),
  circuit('living', 'L2', 2, appliance('television'), appliance('laptop', { count: 2 })),
  circuit('washer', 'L1', 3, appliance('clothes-washer')),
  circuit('kitchen', 'L2', 3, appliance('microwave'), appliance('kettle')),
];
/** Washing and cooking while the sun shines, fan and television while the banks are more than half full. */
const FRUGALLY = [
  {
    id: 'frugal',
    title: 'Frugal',
    rules: [
      { by: 'sun' as const, circuits: { tiers: [3] }, solarAboveW: 600 },
      { by: 'charge' as const, circuits: { tiers: [2] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.7 },
    ],
  },
];

const sunnyRows = once(() => {
  const units = pair3kW({ solarW: 2400 });
  const study = studyOf({
    place: 'phoenix',
    months: [4, 5],
    days: 60,
    units,
    circuits: FRUGAL,
    strategies: FRUGALLY,
  });
  return runShard(study, 0, 60);
});

export const lasting: readonly Comparison[] = [
  ...([25, 28, 60] as const).map((idleW) => ({
    claim: `two units that idle at ${idleW} W use a day`,
    source: `design fact of such pairs: one to three kWh a day (${PRACTICE}); 25 to 60 W each from memory`,
    unit: 'kWh',
    band: between(1, 3),
    ours: () => idleKWh(idleW),
  })),
  {
    claim:
      '4.8 kW of panels, from April or May near Phoenix, frugal use: draws of 60 still running after 60 days',
    source: `${PRACTICE}: such a pair then runs without end`,
    unit: 'draws',
    band: atLeast(57), // a spell of dull days can still end one
    ours: () => sum(column(sunnyRows(), 'censored')),
  },
  {
    claim: 'the same: essential energy that was served',
    source: PRACTICE,
    unit: 'share',
    band: atLeast(0.999),
    ours: () => servedShare(sunnyRows()),
  },
];
