/** Strategies to start from. Their thresholds are ours, to be changed: common practice, no source. */
import type { ScenarioSpec } from '@rideout/sim';

type Strategy = ScenarioSpec['strategies'][number];
type Rule = NonNullable<Strategy['rules']>[number];

export interface ReadyStrategy {
  readonly title: string;
  readonly carriedOutBy: 'person' | 'switch';
  readonly rules: readonly Rule[];
}

/** Only those that fit the household: each rule holds some circuit, and units sleep in pairs. */
export function readyStrategies({ circuits, units }: ScenarioSpec): ReadyStrategy[] {
  const tiers = [...new Set(circuits.map((c) => c.tier))].sort((a, b) => b - a);
  const byTier = tiersByCharge(tiers.filter((tier) => tier > 1));
  const least = tiers.filter((tier) => tier >= Math.max(3, tiers[0]! - 1));
  const cold = circuits.filter((c) => c.need === 'food').map((c) => c.id);
  const pair = units.length === 2;
  const all: ReadyStrategy[] = [
    { title: 'Everything stays on', carriedOutBy: 'person', rules: [] },
    { title: 'Tiers dropped by hand', carriedOutBy: 'person', rules: byTier },
    { title: 'Tiers dropped by a switch', carriedOutBy: 'switch', rules: byTier },
    {
      title: 'Least essential off from the start',
      carriedOutBy: 'person',
      rules: offFromTheStart(least, byTier),
    },
    {
      title: 'Comfort only while the sun delivers',
      carriedOutBy: 'person',
      rules: onlyInTheSun(least, byTier),
    },
    { title: 'Food kept cold 20 minutes in the hour', carriedOutBy: 'person', rules: rationed(cold, byTier) },
    { title: '240 V morning and evening only', carriedOutBy: 'person', rules: windows240(circuits, byTier) },
    {
      title: 'One unit sleeps at night',
      carriedOutBy: 'person',
      rules: pair ? asleepAtNight(units, byTier) : [],
    },
  ];
  return all.filter(({ rules }, i) => i === 0 || rules.length > 0);
}

/** From the least essential at 85 % down to 30 %, in even steps. */
function tiersByCharge(tiers: readonly number[]): Rule[] {
  const steps = Math.max(1, tiers.length - 1);
  return tiers.map((tier, i) => {
    const dropBelow = Math.round(85 - (55 * i) / steps);
    const restoreAbove = Math.min(95, dropBelow + 15);
    return {
      by: 'charge',
      circuits: { tiers: [tier] },
      dropBelowFraction: dropBelow / 100,
      restoreAboveFraction: restoreAbove / 100,
    };
  });
}

function offFromTheStart(tiers: readonly number[], byTier: readonly Rule[]): Rule[] {
  if (tiers.length === 0) return [];
  return [{ by: 'outage', circuits: { tiers: [...tiers] } }, ...without(byTier, tiers)];
}

function onlyInTheSun(tiers: readonly number[], byTier: readonly Rule[]): Rule[] {
  if (tiers.length === 0) return [];
  return [{ by: 'sun', circuits: { tiers: [...tiers] }, solarAboveW: 600 }, ...without(byTier, tiers)];
}

function rationed(ids: readonly string[], byTier: readonly Rule[]): Rule[] {
  return ids.length === 0
    ? []
    : [{ by: 'ration', circuits: { ids: [...ids] }, onMinutesPerHour: 20 }, ...byTier];
}

function windows240(circuits: ScenarioSpec['circuits'], byTier: readonly Rule[]): Rule[] {
  if (!circuits.some((c) => c.leg === 'both')) return [];
  return [{ by: 'clock', circuits: { legs: ['both'] }, onDuring: ['07:00-08:00', '18:00-19:00'] }, ...byTier];
}

/** Its circuits hang on the other unit meanwhile. */
function asleepAtNight(units: ScenarioSpec['units'], byTier: readonly Rule[]): Rule[] {
  return [{ by: 'sleep', unit: units[1]!.id, during: ['22:30-06:30'], circuits: 'moved' }, ...byTier];
}

function without(byTier: readonly Rule[], tiers: readonly number[]): Rule[] {
  return byTier.filter(
    (rule) => rule.by !== 'charge' || !rule.circuits.tiers?.some((tier) => tiers.includes(tier)),
  );
}
