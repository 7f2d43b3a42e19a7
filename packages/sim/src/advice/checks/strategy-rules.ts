/** Rules that cannot act, cannot take back what they did, or switch off what matters most. */
import { minutesInWindows } from '../../clock/clock-windows.ts';
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { RuleSpec, StrategySpec } from '../../scenario/schema.ts';
import { chosenCircuits } from '../../shedding/compile-rules.ts';
import { listed } from '../../trials/listed.ts';
import type { CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type DraftFinding } from './check-report.ts';
import { ofCharge, ofSleep } from './rule-levels.ts';
import { ofSun } from './rule-sun.ts';
import { tellRule, type TellRule } from './tell-rule.ts';

const ESSENTIAL_TIER = 1;

export const strategyRules: CheckSubjectSpec = {
  id: 'strategy-rules',
  title: 'Rules that cannot act, or cannot take back',
  look: ({ household }) =>
    joinOutcomes(
      household.strategies.flatMap((strategy) =>
        strategy.rules.map((rule, r) => looked(...findingsOf(household, strategy, rule, r))),
      ),
    ),
};

function findingsOf(
  household: HouseholdSpec,
  strategy: StrategySpec,
  rule: RuleSpec,
  r: number,
): DraftFinding[] {
  const tell = tellRule(strategy, rule, r);
  const held = rule.by === 'sleep' ? undefined : chosenCircuits(rule.circuits, household.circuits);
  if (held !== undefined && !held.includes(1))
    return [tell('mend', 'names no circuit.', 'Correct its ids, tiers or legs.', 'circuits')];
  return [...essentials(household, rule, held, tell), ...byKind(household, rule, tell)];
}

/** Tier 1 switched off by the strategy itself ends the runtime: meant or not, it should be seen. */
function essentials(
  { circuits }: HouseholdSpec,
  rule: RuleSpec,
  held: Uint8Array | undefined,
  tell: TellRule,
): DraftFinding[] {
  const names = circuits
    .filter((c, i) => held?.[i] === 1 && c.tier === ESSENTIAL_TIER)
    .map((c) => c.title ?? c.id);
  if (names.length === 0 || rule.by === 'sleep') return [];
  return [
    tell(
      'watch',
      `can switch off what is in tier 1: ${listed(names)}. Past its grace that counts as the end.`,
      'Take it out of the rule, or give it a lower tier.',
      'circuits',
    ),
  ];
}

function byKind(household: HouseholdSpec, rule: RuleSpec, tell: TellRule): DraftFinding[] {
  switch (rule.by) {
    case 'charge':
      return ofCharge(household, rule, tell);
    case 'sun':
      return ofSun(household, rule, tell);
    case 'sleep':
      return ofSleep(household, rule, tell);
    case 'clock':
      return minutesInWindows(rule.onDuring).includes(0)
        ? []
        : [
            tell(
              'note',
              'is on all day: it never does anything.',
              'Shorten its windows, or leave it out.',
              'onDuring',
            ),
          ];
    default:
      return [];
  }
}
