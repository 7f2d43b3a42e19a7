/** Strategies as the control reads them: rules with the circuits they hold, one reading each. MODEL.md §3. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import { feedsLeg } from '../scenario/feeds-leg.ts';
import type { CheckedScenario, RuleSpec, StrategySpec } from '../scenario/schema.ts';

/** The lowest of all banks instead of one unit's. */
export const LOWEST_BANK = -1;

interface Holds {
  /** 1 for each circuit that the rule can switch off. */
  readonly holds: Uint8Array;
}
export interface ChargeRule extends Holds {
  readonly by: 'charge';
  /** The unit whose bank is read, or LOWEST_BANK. */
  readonly reads: number;
  readonly dropBelow: number;
  readonly restoreAbove: number;
}
export interface ClockRule extends Holds {
  readonly by: 'clock';
  readonly onMinutes: Uint8Array;
}
export interface SunRule extends Holds {
  readonly by: 'sun';
  readonly solarAboveW: number;
}
export interface RationRule extends Holds {
  readonly by: 'ration';
  readonly onMinutesPerHour: number;
  readonly onWhileAsleep: boolean;
}
export interface SleepRule extends Holds {
  readonly by: 'sleep';
  readonly unit: number;
  readonly moved: boolean;
  /** Clock minutes asleep, or undefined when the bank's charge decides. */
  readonly duringMinutes: Uint8Array | undefined;
  readonly sleepBelow: number;
  readonly wakeAbove: number;
}
/** Off for the whole outage. */
export interface OutageRule extends Holds {
  readonly by: 'outage';
}
export type CompiledRule = OutageRule | ChargeRule | ClockRule | SunRule | RationRule | SleepRule;

export interface CompiledStrategy {
  readonly id: string;
  readonly bySwitch: boolean;
  readonly rules: readonly CompiledRule[];
}

type Circuits = readonly Pick<CheckedScenario['circuits'][number], 'id' | 'leg' | 'tier'>[];
type Units = readonly Pick<CheckedScenario['units'][number], 'id' | 'leg'>[];
type Choice = Extract<RuleSpec, { by: 'charge' }>['circuits'];

/** 1 for each circuit that matches every given part of the choice. */
export function chosenCircuits(choice: Choice, circuits: Circuits): Uint8Array {
  return Uint8Array.from(circuits, (c) => {
    const named = choice.ids === undefined || choice.ids.includes(c.id);
    const inTier = choice.tiers === undefined || choice.tiers.includes(c.tier);
    const onLeg = choice.legs === undefined || choice.legs.includes(c.leg);
    return named && inTier && onLeg ? 1 : 0;
  });
}

export function compileStrategy(strategy: StrategySpec, circuits: Circuits, units: Units): CompiledStrategy {
  return {
    id: strategy.id,
    bySwitch: strategy.carriedOutBy === 'switch',
    rules: strategy.rules.flatMap((rule) => compileRule(rule, circuits, units)),
  };
}

function compileRule(rule: RuleSpec, circuits: Circuits, units: Units): CompiledRule[] {
  switch (rule.by) {
    case 'charge':
      return compileChargeRule(rule, circuits, units);
    case 'clock':
      return [
        {
          by: 'clock',
          holds: chosenCircuits(rule.circuits, circuits),
          onMinutes: minutesInWindows(rule.onDuring),
        },
      ];
    case 'sun':
      return [{ by: 'sun', holds: chosenCircuits(rule.circuits, circuits), solarAboveW: rule.solarAboveW }];
    case 'ration':
      return [
        {
          by: 'ration',
          holds: chosenCircuits(rule.circuits, circuits),
          onMinutesPerHour: rule.onMinutesPerHour,
          onWhileAsleep: rule.whileAsleep === 'on',
        },
      ];
    case 'outage':
      return [{ by: 'outage', holds: chosenCircuits(rule.circuits, circuits) }];
    case 'sleep':
      return [compileSleepRule(rule, circuits, units)];
  }
}

/** A rule that reads each circuit's own bank becomes one rule per bank. */
function compileChargeRule(
  rule: Extract<RuleSpec, { by: 'charge' }>,
  circuits: Circuits,
  units: Units,
): ChargeRule[] {
  const holds = chosenCircuits(rule.circuits, circuits);
  const common = {
    by: 'charge',
    dropBelow: rule.dropBelowFraction,
    restoreAbove: rule.restoreAboveFraction,
  } as const;
  if (rule.reads === 'lowest') return [{ ...common, reads: LOWEST_BANK, holds }];
  const readings = [LOWEST_BANK, ...units.keys()];
  return readings.map((reads) => {
    const isRead = (leg: Circuits[number]['leg']) =>
      reads === LOWEST_BANK ? leg === 'both' : feedsLeg(units[reads]!.leg, leg);
    return {
      ...common,
      reads,
      holds: holds.map((held, c) => (held === 1 && isRead(circuits[c]!.leg) ? 1 : 0)),
    };
  });
}

function compileSleepRule(
  rule: Extract<RuleSpec, { by: 'sleep' }>,
  circuits: Circuits,
  units: Units,
): SleepRule {
  const unit = units.findIndex((u) => u.id === rule.unit);
  const leg = units[unit]?.leg;
  const moved = rule.circuits === 'moved';
  return {
    by: 'sleep',
    unit,
    moved,
    holds: Uint8Array.from(circuits, (c) => (c.leg === 'both' || (c.leg === leg && !moved) ? 1 : 0)),
    duringMinutes: rule.during === undefined ? undefined : minutesInWindows(rule.during),
    sleepBelow: rule.sleepBelowFraction ?? 0,
    wakeAbove: rule.wakeAboveFraction ?? 0,
  };
}
