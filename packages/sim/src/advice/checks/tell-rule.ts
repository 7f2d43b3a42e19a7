/** Findings about one rule of a strategy, all worded alike. */
import type { RuleSpec, StrategySpec } from '../../scenario/schema.ts';
import type { CheckNumber, DraftFinding, Severity } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** Writes a finding at one rule. */
export type TellRule = (
  severity: Severity,
  found: string,
  todo: string,
  key?: string,
  numbers?: readonly CheckNumber[],
) => DraftFinding;

/** @param r position of the rule in its strategy */
export function tellRule(strategy: StrategySpec, rule: RuleSpec, r: number): TellRule {
  return (severity, found, todo, key = '', numbers = []) => ({
    severity,
    where: `strategies.${strategy.id}.rules.${r}${key === '' ? '' : `.${key}`}`,
    found: `“${strategy.title}”, rule ${r + 1} (${rule.by}): ${found}`,
    numbers,
    todo,
    rule: CHECK_RULES.strategy,
  });
}
