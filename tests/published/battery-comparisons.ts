/** Banks and inverters through the whole simulator, against arithmetic on paper. */
import { loadScenario } from '../../packages/sim/src/node.ts';
import { prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import { traceDraw } from '../../packages/sim/src/trials/trace-draw.ts';
import {
  bareCircuit,
  bareScenario,
  bareStudy,
  bareUnit,
  daysOfSun,
  during,
  FOUR_HOURS,
  onlyRow,
  profile,
  rowReader,
  steady,
  type Bare,
} from './bare-household.ts';
import { atMost, exactly, near, once, type Comparison, type Comparisons } from './comparison.ts';
import { lossesInW, partLoadOf, type PartLoad } from './part-load.ts';
import { constantHours, drainW, NO_LOSSES, pairHours, periodicHours, type Losses } from './runtime-by-hand.ts';

const ENERGY = 'arithmetic: energy over power (C)';

const runtimeHours = (bare: Bare) => onlyRow(bareStudy(bare))('runtimeMinutes') / 60;

/** One unit with one circuit that asks `loadW` all the time. */
function constantLoad(capacityWh: number, loadW: number, losses: Losses, battery = {}): Bare {
  const { dischargeEfficiency, ...inverter } = losses;
  return {
    units: [bareUnit({ capacityWh, inverter, module: { dischargeEfficiency }, battery })],
    circuits: [bareCircuit('load', 'L1', steady(loadW))],
    days: 10,
  };
}

const ORDINARY: Losses = { idleW: 28, lossPerW: 0.035, lossPerW2: 8e-6, dischargeEfficiency: 0.97 };
const AT_94_PERCENT: Losses = {
  ...NO_LOSSES,
  lossPerW: 1 / 0.94 - 1,
  dischargeEfficiency: 0.95,
};

const constantLoads: readonly Comparison[] = [
  {
    claim: '10 kWh at 0.95 one way and 0.94 through the inverter carry 0.5 kW for 17.86 h',
    source: 'energy balance, 10 × 0.95 × 0.94 / 0.5 (C)',
    unit: 'h',
    band: near(17.86, 1e-9),
    ours: () => runtimeHours(constantLoad(10_000, 500, AT_94_PERCENT)),
  },
  {
    claim: '5 kW out of 12.5 kWh lasts 2.5 h (0.4 of its capacity an hour)',
    source: 'the 5 kW, 12.5 kWh system of the NREL Annual Technology Baseline 2022–2024 (R2, C)',
    unit: 'h',
    band: exactly(2.5),
    ours: () => runtimeHours(constantLoad(12_500, 5000, NO_LOSSES)),
  },
  ...[1, 5, 80, 200, 450, 1200, 3000].map((loadW) => ({
    claim: `3.2 kWh with cut-off at a tenth, idle 28 W and ordinary losses carries ${loadW} W`,
    source: ENERGY,
    unit: 'h',
    band: exactly(constantHours(0.9 * 3200, loadW, ORDINARY)),
    ours: () =>
      runtimeHours(constantLoad(3200, loadW, ORDINARY, { cutOffFraction: 0.1, restartFraction: 0.2 })),
  })),
  {
    claim: 'six worn modules (health 0.8) from 0.75 charged down to 0.15',
    source: ENERGY,
    unit: 'h',
    band: exactly(constantHours(6 * 1000 * 0.8 * 0.6, 320, ORDINARY)),
    ours: () =>
      runtimeHours(
        constantLoad(1000, 320, ORDINARY, {
          modules: 6,
          healthFraction: 0.8,
          startFraction: 0.75,
          cutOffFraction: 0.15,
          restartFraction: 0.2,
        }),
      ),
  },
];

/** 600 W for the first 20 minutes of every hour, 50 W for the rest: a compressor and its lamp. */
const TWENTY_MINUTES = { intervalMinutes: 1, watts: Array.from({ length: 60 }, (_, m) => (m < 20 ? 600 : 50)) };

const changingLoads: readonly Comparison[] = [
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

/** Two units with 120 V loads of their own and a 240 V load between them. */
function pairOf(usableWh: readonly [number, number], legW: readonly [number, number], bothW: number): Bare {
  const { dischargeEfficiency, ...inverter } = ORDINARY;
  const units = (['L1', 'L2'] as const).map((leg, u) =>
    bareUnit({ id: leg.toLowerCase(), leg, capacityWh: usableWh[u]!, inverter, module: { dischargeEfficiency } }),
  );
  return {
    units,
    circuits: [
      bareCircuit('one', 'L1', steady(legW[0])),
      bareCircuit('two', 'L2', steady(legW[1])),
      bareCircuit('both', 'both', steady(bothW)),
    ],
    days: 10,
  };
}

const UNEQUAL = { banks: [3000, 5000], legs: [300, 200], both: 400 } as const;
const unequalByHand = pairHours(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both, ORDINARY);
const unequal = once(() => onlyRow(bareStudy(pairOf(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both))));
const unequalTogether = () =>
  onlyRow(bareStudy({ ...pairOf(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both), pair: { stopsTogether: true } }));

/** Banks and leg loads in every combination; the 240 V load is 300 W. */
const PAIRS = [2000, 3000, 4700].flatMap((one) =>
  [1500, 3300].flatMap((two) =>
    [90, 260, 700].flatMap((legOne) =>
      [120, 410].map((legTwo) => ({ banks: [one, two] as const, legs: [legOne, legTwo] as const })),
    ),
  ),
);

function pairsAgreed(): number {
  return PAIRS.filter(({ banks, legs }) => {
    const { hours, first } = pairHours(banks, legs, 300, ORDINARY);
    const row = onlyRow(bareStudy(pairOf(banks, legs, 300)));
    const gap = Math.abs(row('runtimeMinutes') / 60 - Math.min(...hours));
    const later = Math.abs(row('firstBlackoutMinute') / 60 - Math.max(...hours));
    return row('endUnit') === first && gap < 1e-9 * hours[first] && later < 1e-9 * Math.max(...hours);
  }).length;
}

const pairs: readonly Comparison[] = [
  {
    claim: '3 and 5 kWh under 300 W, 200 W and 400 W at 240 V: when the first leg dies',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequal()('runtimeMinutes') / 60,
  },
  {
    claim: 'the same: 240 V goes with the first leg',
    source: 'a split-phase pair: 240 V needs both units (design fact)',
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequal()('first240LossMinute') / 60,
  },
  {
    claim: 'the same: the other leg goes on with its own load alone',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[1]),
    ours: () => unequal()('firstBlackoutMinute') / 60,
  },
  {
    claim: 'the same with units that stop together: both are dark with the first',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequalTogether()('firstBlackoutMinute') / 60,
  },
  {
    claim: 'which leg dies first, when, and when the second follows: pairs that agree',
    source: ENERGY,
    unit: `of ${PAIRS.length}`,
    band: exactly(PAIRS.length),
    ours: pairsAgreed,
  },
];

const ONE_WAY = 0.92195; // square root of 0.85, as the source rounds it

/** 10 kWh of sun into an empty bank on the first day, nothing after; 500 W from 18:00 on. */
const fullCycle = () =>
  onlyRow(
    bareStudy({
      units: [
        bareUnit({
          capacityWh: 20_000,
          sunW: 2500,
          battery: { startFraction: 0 },
          module: { chargeEfficiency: ONE_WAY, dischargeEfficiency: ONE_WAY },
        }),
      ],
      circuits: [bareCircuit('load', 'L1', during(500, '18:00-10:00'))],
      days: 1.4,
      startLocal: '2026-03-01T10:00',
      year: daysOfSun((day) => (day === 59 ? FOUR_HOURS : [0, 0])),
    }),
  );

/** A full bank in the sun with nothing to feed, and an empty one with no sun and 500 W to feed. */
const brimful = () =>
  onlyRow(
    bareStudy({
      units: [bareUnit({ capacityWh: 5000, sunW: 1000 })],
      circuits: [bareCircuit('load', 'L1', steady(0))],
      days: 2,
      year: daysOfSun(() => FOUR_HOURS),
    }),
  );
const drained = () => onlyRow(bareStudy({ ...constantLoad(2000, 500, NO_LOSSES), days: 1 }));

/** The largest gap in the books of the demo household, as a share of what went through them. */
function demoImbalance(): number {
  const study = prepareStudy(loadScenario('data/full-house.yaml').scenario, { seed: 'books' });
  const rows = runShard(study, 0, 10);
  let worst = 0;
  for (let i = 0; i < rows.length; i++) {
    const row = rowReader(rows, i);
    const served = [1, 2, 3, 4, 5].reduce((sum, tier) => sum + row(`servedTier${tier}Wh`), 0);
    const into = row('solarUsedWh') + row('solarStoredWh') + row('storedStartWh');
    const out = served + row('inverterLossWh') + row('batteryLossWh') + row('storedEndWh');
    worst = Math.max(worst, Math.abs(into - out) / into);
  }
  return worst;
}

const books: readonly Comparison[] = [
  {
    claim: '10 kWh in and out at 0.92195 each way gives 8.5 kWh back',
    source: 'round trip of 0.85 (NREL Annual Technology Baseline, from memory); square root and product (C)',
    unit: 'Wh',
    band: near(8500, 0.1), // the factor is rounded to five digits
    ours: () => fullCycle()('servedTier1Wh'),
  },
  {
    claim: 'a full bank in 8 kWh of sun with no load curtails all of it',
    source: 'energy balance (C)',
    unit: 'Wh',
    band: exactly(8000),
    ours: () => brimful()('solarCurtailedWh'),
  },
  {
    claim: '2 kWh against 12 kWh wanted leaves 10 kWh unserved',
    source: 'energy balance (C)',
    unit: 'Wh',
    band: exactly(10_000),
    ours: () => drained()('unservedTier1Wh'),
  },
  {
    claim: 'what goes into the demo household’s units comes out of them: largest gap of 80 runs',
    source: 'conservation of energy, to one part in 10⁹',
    unit: 'share',
    band: atMost(1e-9),
    ours: demoImbalance,
  },
];

const RATED_W = 6400;
const PART_LOADS = [0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1] as const;
const PUBLISHED_FORM = 'quadratic loss model, coefficients from three efficiencies (C)';

/** Efficiency minute by minute while the load follows the shares of the rating. */
function efficiencies(model: PartLoad, shares: readonly number[]): number[] {
  const { idleW, lossPerW, lossPerW2 } = lossesInW(model, RATED_W);
  const scenario = bareScenario({
    units: [bareUnit({ capacityWh: 1e6, inverter: { idleW, lossPerW: Math.max(0, lossPerW), lossPerW2 } })],
    circuits: [bareCircuit('load', 'L1', profile('ramp'))],
    days: shares.length / 1440,
    profiles: { ramp: { intervalMinutes: 1, watts: shares.map((p) => p * RATED_W) } },
  });
  // A fit may give a k1 a little below 0, which a scenario file may not.
  const { household } = scenario.alternatives[0]!;
  const units = household.units.map((u) => ({ ...u, inverter: { ...u.inverter, lossPerW } }));
  const alternatives = [{ ...scenario.alternatives[0]!, household: { ...household, units } }];
  const study = prepareStudy({ ...scenario, alternatives }, { seed: 'part load' });
  const unit = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 }).units[0]!;
  return Array.from(unit.loadW, (watts, m) => watts / (watts + unit.inverterLossW[m]!));
}

const partLoads: readonly Comparison[] = (
  [
    [0.9, 0.95, 0.93, [0.65305, 0.82362, 0.9, 0.93934, 0.94921, 0.95, 0.94146, 0.93], 0.3998],
    [0.925, 0.96, 0.945, [0.73008, 0.8682, 0.925, 0.95302, 0.95981, 0.96, 0.95355, 0.945], 0.39154],
  ] as const
).flatMap(([eta10, eta50, eta100, table, best]) => {
  const model = partLoadOf(eta10, eta50, eta100);
  const name = `an inverter of ${eta10}, ${eta50} and ${eta100} at a tenth, half and full load`;
  const grid = Array.from({ length: 1440 }, (_, m) => (m + 1) / 1440);
  const found = once(() => efficiencies(model, [...PART_LOADS, ...grid]));
  return [
    ...PART_LOADS.map((share, i) => ({
      claim: `${name}: efficiency at ${share} of its rating`,
      source: PUBLISHED_FORM,
      unit: 'share',
      band: near(table[i]!, 1e-5),
      ours: () => found()[i]!,
    })),
    {
      claim: `${name}: best at √(k0/k2) of its rating`,
      source: PUBLISHED_FORM,
      unit: 'share',
      band: near(best, 1 / 1440),
      ours: () => {
        const onGrid = found().slice(PART_LOADS.length);
        return grid[onGrid.indexOf(Math.max(...onGrid))]!;
      },
    },
  ];
});

const standing: readonly Comparison[] = [
  {
    claim: 'an idle draw of 50 W costs 1.2 kWh a day',
    source: 'arithmetic (C)',
    unit: 'Wh',
    band: exactly(1200),
    ours: () =>
      onlyRow(bareStudy({ ...constantLoad(10_000, 0, { ...NO_LOSSES, idleW: 50 }), days: 1 }))('inverterLossWh'),
  },
  {
    claim: 'that is 4.1 % of the mean US home’s 29.36 kWh',
    source: 'US EIA, 10,715 kWh a customer and year in 2020 (R1, C)',
    unit: '%',
    band: near(4.1, 0.05),
    ours: () =>
      onlyRow(bareStudy({ ...constantLoad(10_000, 0, { ...NO_LOSSES, idleW: 50 }), days: 1 }))('inverterLossWh') /
      293.6,
  },
  ...([[1, 97], [2, 94.09], [4, 88.529], [6, 83.297]] as const).map(([months, percent]) => ({
    claim: `3 % of self-discharge a month leaves ${percent} % after ${months}`,
    // we let the share run off hour by hour, e^(-0.03 n): 0.045 points a month less than compounding whole months
    source: 'compounding, 0.97 to the power of the months (C)',
    unit: '%',
    band: near(percent, 0.046 * months),
    ours: () => {
      const bare = constantLoad(10_000, 0, NO_LOSSES);
      const unit = bareUnit({ capacityWh: 10_000, module: { selfDischargePerMonthFraction: 0.03 } });
      const days = Math.round(months * 730.5) / 24 + 1 / 1440; // the last hour’s loss is booked as the next begins
      return onlyRow(bareStudy({ ...bare, units: [unit], days }))('storedEndWh') / 100;
    },
  })),
];

const sizing: readonly Comparison[] = [
  {
    claim: '2,400 Wh a day from 694.44 Ah at 24 V, four fifths usable, 0.9 for the cold: days of autonomy',
    source: 'autonomy sizing, C = L·D / (depth × temperature factor); form from memory, inverse (C)',
    unit: 'days',
    band: near(5, 5e-5),
    ours: () =>
      runtimeHours(
        constantLoad(694.44 * 24, 100, NO_LOSSES, {
          cutOffFraction: 0.2,
          restartFraction: 0.3,
          coldCapacity: [
            [-20, 0.9],
            [25.1, 0.9],
          ],
        }),
      ) / 24,
  },
  {
    claim: 'the bank a textbook sizes for 3 days of 4.2 kWh at 0.9 out of the bank lasts 3 days',
    source: 'textbook sizing by loss-of-load charts, B = L·S / η (R1)',
    unit: 'days',
    band: exactly(3),
    ours: () =>
      runtimeHours(constantLoad((4200 * 3) / 0.9, 4200 / 24, { ...NO_LOSSES, dischargeEfficiency: 0.9 })) / 24,
  },
];

/** Ten days that want 10 kWh each; the sun brings 10, but 7 on the fourth and 3 on the eighth. */
const lossOfLoad = once(() =>
  bareStudy({
    units: [bareUnit({ capacityWh: 10_000, sunW: 1000, battery: { startFraction: 0 } })],
    circuits: [bareCircuit('load', 'L1', during(2500, '18:00-22:00'))],
    days: 10,
    startLocal: '2026-01-01T00:00',
    year: daysOfSun((day) => (day === 3 ? [7, 14] : day === 7 ? [7, 10] : [7, 17])),
  }),
);

function daysWithoutShare(): number {
  const [circuit] = traceDraw(lossOfLoad(), { draw: 0, alternative: 0, strategy: 0 }).circuits;
  const short = (day: number) =>
    circuit!.wantedW.slice(1440 * day, 1440 * (day + 1)).some((w, m) => circuit!.servedW[1440 * day + m]! < w - 1e-6);
  return Array.from({ length: 10 }, (_, day) => day).filter(short).length / 10;
}

const lossOfLoads: readonly Comparison[] = [
  {
    claim: 'deficits of 3 and 7 kWh in 100 kWh: share of the energy that is not served',
    source: 'loss-of-load probability in energy (definition from memory; example C)',
    unit: 'share',
    band: exactly(0.1),
    ours: () => {
      const row = onlyRow(lossOfLoad());
      return row('unservedTier1Wh') / (row('servedTier1Wh') + row('unservedTier1Wh'));
    },
  },
  {
    claim: 'the same: share of the days with anything not served',
    source: 'loss-of-load probability in days (definition; example C)',
    unit: 'share',
    band: exactly(0.2),
    ours: daysWithoutShare,
  },
  {
    claim: 'the same: the run survives up to the fourth evening, 2.8 h after 18:00, and not to day 10',
    source: 'survival: no unserved interval before (definition; example C)',
    unit: 'days',
    band: exactly(3 + 20.8 / 24),
    ours: () => onlyRow(lossOfLoad())('runtimeMinutes') / 1440,
  },
];

export const batteryComparisons: Comparisons = {
  'constant loads': constantLoads,
  'loads that change': changingLoads,
  'two banks': pairs,
  'the books': books,
  'part-load efficiency': partLoads,
  'standing losses': standing,
  'sizing for autonomy': sizing,
  'loss of load': lossOfLoads,
};
