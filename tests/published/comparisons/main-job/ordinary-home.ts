/** What an ordinary home uses, and how long 12 kWh carries it. */
import { runShard, summarise } from '../../../../packages/sim/src/index.ts';
import { atLeast, between, once, type Comparison } from '../comparison.ts';
import { MONTHS, studyOf, type Place } from './household.ts';
import { ORDINARY_HOME, strongPair } from './ordinary-household.ts';
import { column, mean, sum } from './rows.ts';
import { PRACTICE } from './practice.ts';

const EIA = 'US EIA: 10,715 kWh a residential customer in 2020, 29.36 a day (R1, C)';
const HOMES: readonly Place[] = ['seattle', 'phoenix', 'chicago', 'new-orleans', 'boston', 'miami'];

/** Watt-hours a day of everything served, the banks being far too large to run down. */
const dailyUse = once(() =>
  HOMES.flatMap((place) =>
    MONTHS.map((month) => {
      const study = studyOf({
        place,
        months: [month],
        days: 3,
        units: strongPair(1e6),
        circuits: ORDINARY_HOME,
      });
      const rows = runShard(study, 0, 8);
      return sum([1, 2, 3, 4, 5].map((tier) => mean(column(rows, `servedTier${tier}Wh`)))) / 3;
    }),
  ),
);

const ESSENTIALS = [
  { id: 'all', title: 'Everything on' },
  {
    id: 'essentials',
    title: 'Essentials only',
    rules: [{ by: 'outage' as const, circuits: { tiers: [2, 3, 4, 5] } }],
  },
];

/** Median days of 12 kWh without sun, in spring. */
const twelveKWh = once(() => {
  const units = strongPair(6000);
  const study = studyOf({
    place: 'boston',
    months: [4],
    days: 6,
    units,
    circuits: ORDINARY_HOME,
    strategies: ESSENTIALS,
  });
  return summarise(study, runShard(study, 0, 120)).strategies.map((s) => s.medianDays.value!);
});

export const ordinary: readonly Comparison[] = [
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
    claim:
      'with only refrigerator, internet, some lights and the furnace blower it lasts this many times longer',
    source: `${PRACTICE}: several times further when only essentials stay on`,
    unit: 'times',
    band: between(3, 12),
    ours: () => twelveKWh()[1]! / twelveKWh()[0]!,
  },
];
