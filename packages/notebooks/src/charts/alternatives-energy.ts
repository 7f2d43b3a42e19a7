/** Where the energy went in the two households compared: means over the draws, kWh a day of simulated time. */
import type { StrategySummary } from '@rideout/sim';
import type { Comparison } from './alternatives-comparison.ts';

export interface DailyEnergy {
  readonly solarKWh: number;
  /** Used at once or stored. */
  readonly caughtKWh: number;
  /** Turned away because nothing could take it, or above the solar input limit. */
  readonly lostKWh: number;
  readonly invertersKWh: number;
  readonly batteriesKWh: number;
  readonly servedKWh: number;
  readonly essentialsKWh: number;
  /** In the batteries when the outage begins; not per day. */
  readonly storedAtStartKWh: number;
}

export function dailyEnergy(summary: StrategySummary, horizonDays: number): DailyEnergy {
  const kWh = (name: string) => (summary.meanByColumn[name] ?? 0) / 1000;
  const daily = (...names: string[]) => names.reduce((sum, name) => sum + kWh(name), 0) / horizonDays;
  return {
    solarKWh: daily('solarAvailableWh'),
    caughtKWh: daily('solarUsedWh', 'solarStoredWh'),
    lostKWh: daily('solarCurtailedWh', 'solarClippedWh'),
    invertersKWh: daily('inverterLossWh'),
    batteriesKWh: daily('batteryLossWh'),
    servedKWh: summary.servedKWhByTier.reduce((sum, tier) => sum + tier, 0) / horizonDays,
    essentialsKWh: summary.servedKWhByTier[0]! / horizonDays,
    storedAtStartKWh: kWh('storedStartWh'),
  };
}

/** What sets how long the second household lasts, where more storage is not what is missing. */
export type Decider =
  'overload' | 'cold' | 'enough sun' | 'inverters' | 'no sun' | 'no more sun' | 'one leg' | 'storage';

const MOST = 0.5; // more than half
const HARDLY = 0.05; // of the sun on offer
const ONE_LEG = 0.8; // of the outages that end

/** The first that holds, the plainest reason first. */
export function deciderOf({ first, second, horizonDays }: Comparison): Decider {
  const [a, b] = [dailyEnergy(first, horizonDays), dailyEnergy(second, horizonDays)];
  if (endedBy(second, (cause) => cause.endsWith('trip')) > MOST) return 'overload';
  if (endedBy(second, (cause) => cause === 'battery too cold') > MOST) return 'cold';
  if (first.nineInTenDays.value === null && second.nineInTenDays.value === null) return 'enough sun';
  if (b.solarKWh < 0.01) return 'no sun';
  if (a.invertersKWh > MOST * a.caughtKWh) return 'inverters';
  if (b.caughtKWh - a.caughtKWh < HARDLY * b.solarKWh && a.lostKWh < HARDLY * a.solarKWh)
    return 'no more sun';
  return oneLeg(second) ? 'one leg' : 'storage';
}

/** Share of all draws. */
function endedBy(summary: StrategySummary, is: (cause: string) => boolean): number {
  return summary.ends.filter(({ cause }) => is(cause)).reduce((sum, { fraction }) => sum + fraction, 0);
}

/** The unit whose battery ends nearly all of the outages that end, and their share; undefined: neither, or only one unit. */
export function oneLeg(summary: StrategySummary): { unitId: string; fraction: number } | undefined {
  const units = ['minutesUnit0Down', 'minutesUnit1Down'].filter(
    (name) => typeof summary.meanByColumn[name] === 'number',
  );
  const ended = endedBy(summary, (cause) => cause !== 'still running');
  const empty = summary.ends.find(({ cause }) => cause === 'battery empty');
  if (units.length < 2 || !empty?.unitId || ended < 0.1) return undefined;
  const fraction = empty.fraction / ended;
  return fraction >= ONE_LEG ? { unitId: empty.unitId, fraction } : undefined;
}
