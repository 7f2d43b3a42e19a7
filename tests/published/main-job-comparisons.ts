/**
 * The main job against the outside world: a published study of solar-plus-storage backup, the national average of what
 * homes use, and facts of the trade that have no source.
 */
import { END_CAUSES, runShard, summarise, type OutcomeRows, type Study } from '../../packages/sim/src/index.ts';
import { bareCircuit, bareStudy, bareUnit, during, onlyRow, steady } from './bare-household.ts';
import { atLeast, atMost, between, exactly, once, type Comparison, type Comparisons } from './comparison.ts';
import {
  appliance,
  backupStudy,
  circuit,
  LIMITED_CRITICAL,
  ORDINARY_HOME,
  pair3kW,
  PLACES,
  strongPair,
  studyOf,
  unit3kW,
  WITH_COOLING,
  WITH_HEAT_PUMP,
  WITH_RESISTANCE_HEAT,
  type Circuit,
  type Place,
} from './main-job-households.ts';

const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1);
const ALL_PLACES = Object.keys(PLACES) as Place[];

const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

/** One column of the rows of one alternative, draw by draw. */
function column(rows: OutcomeRows, name: string, alternative = 0): number[] {
  const alternatives = rows.columns['alternative']!;
  return Array.from(rows.columns[name]!).filter((_, i) => alternatives[i] === alternative);
}

/** Energy served over energy wanted, tier 1, all draws together. */
function servedShare(rows: OutcomeRows, alternative = 0): number {
  const served = sum(column(rows, 'servedTier1Wh', alternative));
  return served / (served + sum(column(rows, 'unservedTier1Wh', alternative)));
}

/* ---- solar and storage for backup ---- */

/** What the study assumes of the sun: panels that bring in a year what the mean US home uses, EIA 2020. */
const YEARLY_USE_WH = 10_715_000;
const DRAWS = 20;

/** Panels sized for that at one place, from what 1 kW of them brings there. */
const solarOf = new Map(
  ALL_PLACES.map((place) => [
    place,
    once(() => {
      const wattHours = MONTHS.map((month) => {
        const rows = runShard(backupStudy(place, month, LIMITED_CRITICAL, 1000), 0, 8);
        return (mean(column(rows, 'solarAvailableWh')) / 3) * (365.25 / 12);
      });
      return (YEARLY_USE_WH / sum(wattHours)) * 1000;
    }),
  ]),
);

const backupRows = (place: Place, month: number, circuits: readonly Circuit[]) =>
  runShard(backupStudy(place, month, circuits, solarOf.get(place)!()), 0, DRAWS);

const limited = once(() =>
  ALL_PLACES.flatMap((place) =>
    MONTHS.map((month) => ({ place, month, rows: backupRows(place, month, LIMITED_CRITICAL) })),
  ),
);

const shareOfPlacesAndMonths = (alternative: number, share: number) =>
  limited().filter(({ rows }) => servedShare(rows, alternative) > share).length / limited().length;

/** Paired runs, of all places and months, in which 30 kWh does worse than 10 kWh by the given reckoning. */
function timesWorse(isWorse: (ten: number, thirty: number) => boolean, name: string): number {
  return sum(
    limited().map(({ rows }) => {
      const thirty = column(rows, name, 1);
      return column(rows, name, 0).filter((ten, i) => isWorse(ten, thirty[i]!)).length;
    }),
  );
}

const LBNL =
  'Gorman et al. 2022 (LBNL), simulated US counties, 3-day outages; text (R2), figures of it from memory, kept as bounds';

const shares = new Map<string, () => number>();
function shareWith(circuits: readonly Circuit[], name: string, place: Place, month: number): number {
  const key = `${name} ${place} ${month}`;
  if (!shares.has(key)) shares.set(key, once(() => servedShare(backupRows(place, month, circuits))));
  return shares.get(key)!();
}

const HEATED: readonly Place[] = ['seattle', 'denver', 'minneapolis', 'chicago', 'new-orleans', 'boston'];

const backup: readonly Comparison[] = [
  {
    claim: 'the limited critical load lies where the study has it',
    source: 'a few kWh a day: refrigeration by EIA RECS 2001 (R1), the rest common practice; 5 to 8 from memory',
    unit: 'kWh a day',
    band: between(5, 8),
    ours: () =>
      mean(
        limited().flatMap(({ rows }) =>
          column(rows, 'servedTier1Wh').map((wh, i) => (wh + column(rows, 'unservedTier1Wh')[i]!) / 3000),
        ),
      ),
  },
  {
    claim: 'places and months in which 10 kWh serves more than 95 % of it over 3 days',
    source: `${LBNL}: "for days at a time practically anywhere"`,
    unit: 'share',
    // all but Seattle in the three darkest months, where panels sized by the year bring least
    band: between(0.95, 0.99),
    ours: () => shareOfPlacesAndMonths(0, 0.95),
  },
  {
    claim: 'the least that 10 kWh serves in any place and month',
    source: LBNL,
    unit: 'share',
    band: atLeast(0.88),
    ours: () => Math.min(...limited().map(({ rows }) => servedShare(rows))),
  },
  {
    claim: 'places and months in which 30 kWh serves more than 99.5 %',
    source: LBNL,
    unit: 'share',
    band: atLeast(0.99),
    ours: () => shareOfPlacesAndMonths(1, 0.995),
  },
  {
    claim: `paired runs, of ${ALL_PLACES.length * 12 * DRAWS}, in which 30 kWh ends before 10 kWh`,
    source: 'more storage never ends sooner (logic; exact)',
    unit: 'runs',
    band: exactly(0),
    ours: () => timesWorse((ten, thirty) => thirty < ten, 'runtimeMinutes'),
  },
  {
    claim: 'the same in which 30 kWh leaves more unserved',
    source: 'more storage never serves less (logic; exact)',
    unit: 'runs',
    band: exactly(0),
    ours: () => timesWorse((ten, thirty) => thirty > ten + 1e-6, 'unservedTier1Wh'),
  },
  ...HEATED.map((place) => ({
    claim: `resistance heat in January near ${place}: share that 10 kWh serves`,
    source: `${LBNL}: winter is weak where heat is by resistance (R2)`,
    unit: 'share',
    band: atMost(0.6),
    ours: () => shareWith(WITH_RESISTANCE_HEAT, 'resistance', place, 1),
  })),
  ...HEATED.map((place) => ({
    claim: `the same house near ${place} with a heat pump serves more, by this much`,
    source: `${LBNL}: heat pumps do better than resistance heat (R2)`,
    unit: 'share',
    band: atLeast(0.05),
    ours: () =>
      shareWith(WITH_HEAT_PUMP, 'heat pump', place, 1) - shareWith(WITH_RESISTANCE_HEAT, 'resistance', place, 1),
  })),
  ...(['new-orleans', 'phoenix', 'miami'] as const).map((place) => ({
    claim: `two room air conditioners in July near ${place} lower the share served, by this much`,
    source: `${LBNL}: southern summers are weak where cooling is critical (R1)`,
    unit: 'share',
    band: atLeast(0.1),
    ours: () =>
      shareWith(LIMITED_CRITICAL, 'limited', place, 7) - shareWith(WITH_COOLING, 'cooling', place, 7),
  })),
];

/* ---- one thing more, the same draws ---- */

/** Each alternative against the one before it: draws in which it ends sooner, in the darkest months of the dullest place. */
function endsSooner(better: Readonly<Record<string, unknown>>, worse: Readonly<Record<string, unknown>>): number {
  const study = studyOf({
    place: 'seattle',
    months: [11, 12, 1],
    days: 7,
    units: pair3kW({ solarW: 1600 }),
    circuits: LIMITED_CRITICAL,
    alternatives: [
      { id: 'worse', title: 'worse', change: worse },
      { id: 'better', title: 'better', change: better },
    ],
  });
  const rows = runShard(study, 0, 150);
  // the household as described comes first when both alternatives change it
  const [worseAt, betterAt] = ['worse', 'better'].map((id) => study.alternatives.findIndex((a) => a.id === id));
  const ends = column(rows, 'runtimeMinutes', betterAt);
  return column(rows, 'runtimeMinutes', worseAt).filter((minutes, i) => ends[i]! < minutes).length;
}

const MORE_LOAD = [...LIMITED_CRITICAL, circuit('more', 'L1', 2, { kind: 'steady', runningW: 40 })];

const monotone: readonly Comparison[] = (
  [
    ['a second module on each unit', { 'units.*.battery.modules': 2 }, {}],
    ['four modules against three', { 'units.*.battery.modules': 4 }, { 'units.*.battery.modules': 3 }],
    ['twice the panels', { 'units.*.solar': { inputLimitW: 3200, arrays: [{ peakW: 3200, tiltDeg: 35, azimuthDeg: 180 }] } }, {}],
    ['full at the start against half', { 'units.*.battery.startFraction': 1 }, { 'units.*.battery.startFraction': 0.5 }],
    ['40 W less on one leg', {}, { circuits: MORE_LOAD }],
    ['10 W less idle draw', { 'units.*.inverter.idleW': 18 }, {}],
  ] as const
).map(([what, better, worse]) => ({
  claim: `${what} ends sooner in this many of 150 draws`,
  source: 'more to draw on, or less to feed, never ends sooner (logic; exact)',
  unit: 'draws',
  band: exactly(0),
  ours: () => endsSooner(better, worse),
}));

/* ---- an ordinary home ---- */

const EIA = 'US EIA: 10,715 kWh a residential customer in 2020, 29.36 a day (R1, C)';
const HOMES: readonly Place[] = ['seattle', 'phoenix', 'chicago', 'new-orleans', 'boston', 'miami'];

/** Watt-hours a day of everything served, the banks being far too large to run down. */
const dailyUse = once(() =>
  HOMES.flatMap((place) =>
    MONTHS.map((month) => {
      const study = studyOf({ place, months: [month], days: 3, units: strongPair(1e6), circuits: ORDINARY_HOME });
      const rows = runShard(study, 0, 8);
      return sum([1, 2, 3, 4, 5].map((tier) => mean(column(rows, `servedTier${tier}Wh`)))) / 3;
    }),
  ),
);

const ESSENTIALS = [
  { id: 'all', title: 'Everything on' },
  { id: 'essentials', title: 'Essentials only', rules: [{ by: 'outage' as const, circuits: { tiers: [2, 3, 4, 5] } }] },
];

/** Median days of 12 kWh without sun, in spring. */
const twelveKWh = once(() => {
  const units = strongPair(6000);
  const study = studyOf({ place: 'boston', months: [4], days: 6, units, circuits: ORDINARY_HOME, strategies: ESSENTIALS });
  return summarise(study, runShard(study, 0, 120)).strategies.map((s) => s.medianDays.value!);
});

const PRACTICE = 'common practice, no source';

const ordinary: readonly Comparison[] = [
  {
    claim: 'an ordinary home with electric hot water, cooking and room cooling, six places, all months',
    source: `${EIA}; the band is a fifth either way: no heating by electricity here, more cooling by room units`,
    unit: 'kWh a day',
    band: between(23.5, 35.2),
    ours: () => mean(dailyUse()) / 1000,
  },
  {
    claim: 'places and months in which it uses 20 to 30 kWh a day',
    source: `${PRACTICE}: an ordinary home uses 20 to 30 kWh a day; the rest are hot months`,
    unit: 'share',
    band: atLeast(0.6),
    ours: () => dailyUse().filter((wh) => wh >= 20_000 && wh <= 30_000).length / dailyUse().length,
  },
  {
    claim: '12 kWh of batteries lasts such a home, median in April near Boston',
    // less than 12 kWh over 25 kWh a day: the losses, and the end comes with the first of two banks
    source: `${PRACTICE}: about 12 kWh is roughly half a day of ordinary living`,
    unit: 'days',
    band: between(0.25, 0.6),
    ours: () => twelveKWh()[0]!,
  },
  {
    claim: 'with only refrigerator, internet, some lights and the furnace blower it lasts this many times longer',
    source: `${PRACTICE}: several times further when only essentials stay on`,
    unit: 'times',
    band: between(3, 12),
    ours: () => twelveKWh()[1]! / twelveKWh()[0]!,
  },
];

/* ---- what a pair can carry ---- */

/** Trips in a day of a pair, or of its first unit alone, each of 3 kW and 6 kW of starting watts. */
function tripsWith(circuits: Parameters<typeof bareStudy>[0]['circuits'], units: 1 | 2 = 2): number {
  const inverter = { continuousW: 3000, surgeW: 6000 };
  const pair = (['L1', 'L2'] as const).map((leg) => bareUnit({ id: leg.toLowerCase(), leg, capacityWh: 1e6, inverter }));
  return onlyRow(bareStudy({ units: pair.slice(0, units), circuits, days: 1 }))('trips');
}

const starting = (leg: 'L1' | 'both', startingW: number) => [
  bareCircuit('motor', leg, { ...during(100, '12:00-13:00'), startingW }),
];

const DESIGN = 'design fact of a split-phase pair (half of a 240 V load on each unit)';

const carrying: readonly Comparison[] = (
  [
    ['a pair of 3 kW units carries 6 kW at 240 V', () => tripsWith([bareCircuit('load', 'both', steady(6000))]), 0],
    ['and trips both at 6,001 W', () => tripsWith([bareCircuit('load', 'both', steady(6001))]), 2],
    ['one leg carries 3 kW at 120 V', () => tripsWith([bareCircuit('load', 'L1', steady(3000))]), 0],
    ['and trips at 3,001 W although the pair has 6', () => tripsWith([bareCircuit('load', 'L1', steady(3001))]), 1],
    ['one unit alone carries 3 kW', () => tripsWith([bareCircuit('load', 'L1', steady(3000))], 1), 0],
    ['a pair starts 12 kW at 240 V', () => tripsWith(starting('both', 12_000)), 0],
    ['and trips both at a start of 12,001 W', () => tripsWith(starting('both', 12_001)), 2],
    ['one leg starts 6 kW', () => tripsWith(starting('L1', 6000)), 0],
    ['and trips at a start of 6,001 W', () => tripsWith(starting('L1', 6001)), 1],
  ] as const
).map(([claim, ours, trips]) => ({ claim: `${claim}: trips`, source: DESIGN, unit: 'trips', band: exactly(trips), ours }));

/** A flat on one unit: refrigerator, washer, internet and a window air conditioner. */
function flatTrips(airConditioner: string): number {
  const circuits = [
    circuit('fridge', 'L1', 1, appliance('refrigerator')),
    circuit('talk', 'L1', 1, appliance('modem-router'), appliance('phone-charging', { count: 2 })),
    circuit('washer', 'L1', 2, appliance('clothes-washer')),
    circuit('cool', 'L1', 2, appliance(airConditioner)),
  ];
  const study = studyOf({ place: 'phoenix', months: [6, 7, 8], days: 4, units: [unit3kW('unit', 'L1', { solarW: 1600 })], circuits });
  return sum(column(runShard(study, 0, 150), 'trips'));
}

const evening = (runningW: number) => ({ kind: 'scheduled', runningW, windows: ['18:00-19:00'] });
const KEPT = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('old-fridge', 'L2', 1, appliance('refrigerator-old')),
  circuit('lights', 'L1', 1, appliance('lights-led')),
  circuit('more-lights', 'L2', 1, appliance('lights-led')),
];

/** Draws of 60, two days each, that end by an overload of either unit. Two modules each: the banks are not what gives way. */
function overloaded(circuits: readonly Circuit[]): number {
  const units = pair3kW({ battery: { modules: 2 } });
  const rows = runShard(studyOf({ place: 'boston', months: [4, 5], days: 1.2, units, circuits }), 0, 60);
  return column(rows, 'endCause').filter((cause) => END_CAUSES[cause] === 'overload trip').length;
}

const heavy: readonly Comparison[] = [
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
    ours: () => overloaded([...KEPT, circuit('water-heater', 'both', 3, evening(4500)), circuit('oven', 'both', 3, evening(2400))]),
  },
  {
    claim: 'the water heater alone does not',
    source: PRACTICE,
    unit: 'draws',
    band: exactly(0),
    ours: () => overloaded([...KEPT, circuit('water-heater', 'both', 3, evening(4500))]),
  },
];

/* ---- idle appetite, and no end in sight ---- */

const idleKWh = (idleW: number) => {
  const units = (['L1', 'L2'] as const).map((leg) =>
    bareUnit({ id: leg.toLowerCase(), leg, capacityWh: 1e5, inverter: { idleW } }),
  );
  return onlyRow(bareStudy({ units, circuits: [bareCircuit('none', 'L1', steady(0))], days: 1 }))('inverterLossWh') / 1000;
};

const FRUGAL = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('talk', 'L2', 1, appliance('modem-router'), appliance('phone-charging', { count: 3 })),
  circuit('lights', 'L2', 1, appliance('lights-led')),
  circuit('fan', 'L1', 1, appliance('ceiling-fan')),
  circuit('living', 'L2', 1, appliance('television'), appliance('laptop', { count: 2 })),
  circuit('washer', 'L1', 2, appliance('clothes-washer')),
  circuit('kitchen', 'L2', 2, appliance('microwave'), appliance('kettle')),
];

const sunny = once((): Study =>
  studyOf({ place: 'phoenix', months: [3, 4, 5], days: 60, units: pair3kW({ solarW: 2400 }), circuits: FRUGAL }),
);
const sunnyRows = once(() => runShard(sunny(), 0, 60));

const lasting: readonly Comparison[] = [
  ...([25, 28, 60] as const).map((idleW) => ({
    claim: `two units that idle at ${idleW} W use a day`,
    source: `design fact of such pairs: one to three kWh a day (${PRACTICE}); 25 to 60 W each from memory`,
    unit: 'kWh',
    band: between(1, 3),
    ours: () => idleKWh(idleW),
  })),
  {
    claim: '4.8 kW of panels, spring near Phoenix, frugal use: draws of 60 still running after 60 days',
    source: `${PRACTICE}: such a pair then runs without end`,
    unit: 'draws',
    band: exactly(60),
    ours: () => sum(column(sunnyRows(), 'censored')),
  },
  {
    claim: 'the same: wanted energy that was served, all tiers',
    source: PRACTICE,
    unit: 'share',
    band: atLeast(0.999),
    ours: () => {
      const total = (kind: string) => sum([1, 2].flatMap((tier) => column(sunnyRows(), `${kind}Tier${tier}Wh`)));
      return total('served') / (total('served') + total('unserved'));
    },
  },
];

export const mainJobComparisons: Comparisons = {
  'solar and storage for backup': backup,
  'one thing more': monotone,
  'an ordinary home': ordinary,
  'what a pair can carry': carrying,
  'heavy loads': heavy,
  'idle appetite and no end in sight': lasting,
};
