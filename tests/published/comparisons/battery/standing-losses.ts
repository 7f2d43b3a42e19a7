/** What is lost with nothing switched on. */
import { bareStudy, bareUnit, onlyRow } from '../../bare-household.ts';
import { exactly, near, type Comparison } from '../comparison.ts';
import { NO_LOSSES } from './runtime-by-hand.ts';
import { constantLoad } from './constant-load.ts';

/** What is left of a full bank that nothing draws on, 3 % of self-discharge a month. */
function percentLeft(months: number): number {
  const bare = constantLoad(10_000, 0, NO_LOSSES);
  const unit = bareUnit({ capacityWh: 10_000, module: { selfDischargePerMonthFraction: 0.03 } });
  const days = Math.round(months * 730.5) / 24 + 1 / 1440; // the last hour’s loss is booked as the next begins
  return onlyRow(bareStudy({ ...bare, units: [unit], days }))('storedEndWh') / 100;
}

export const standingLosses: readonly Comparison[] = [
  {
    claim: 'an idle draw of 50 W costs 1.2 kWh a day',
    source: 'arithmetic (C)',
    unit: 'Wh',
    band: exactly(1200),
    ours: () =>
      onlyRow(bareStudy({ ...constantLoad(10_000, 0, { ...NO_LOSSES, idleW: 50 }), days: 1 }))(
        'inverterLossWh',
      ),
  },
  {
    claim: 'that is 4.1 % of the mean US home’s 29.36 kWh',
    source: 'US EIA, 10,715 kWh a customer and year in 2020 (R1, C)',
    unit: '%',
    band: near(4.1, 0.05),
    ours: () =>
      onlyRow(bareStudy({ ...constantLoad(10_000, 0, { ...NO_LOSSES, idleW: 50 }), days: 1 }))(
        'inverterLossWh',
      ) / 293.6,
  },
  ...(
    [
      [1, 97],
      [2, 94.09],
      [4, 88.529],
      [6, 83.297],
    ] as const
  ).map(([months, percent]) => ({
    claim: `3 % of self-discharge a month leaves ${percent} % after ${months}`,
    // ours lets the share run off hour by hour: 0.045 points a month less is lost than by compounding whole months
    source: 'compounding, 0.97 to the power of the months (C)',
    unit: '%',
    band: near(percent, 0.046 * months),
    ours: () => percentLeft(months),
  })),
  {
    claim: 'run off hour by hour it leaves e^(-0.03 n): after 6 months of 730.5 h',
    source: 'the limit of compounding in small steps (C)',
    unit: '%',
    band: near(100 * Math.exp(-0.03 * 6), 0.002),
    ours: () => percentLeft(6),
  },
];
