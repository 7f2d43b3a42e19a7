/** Rules that wait for more sun than there can be. */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { RuleSpec } from '../../scenario/schema.ts';
import { inW } from './amounts.ts';
import type { DraftFinding } from './check-report.ts';
import type { TellRule } from './tell-rule.ts';

/** What all panels together can deliver at most, W. */
function mostSolarW({ units }: HouseholdSpec): number {
  return units.reduce((sum, { solar }) => {
    const peakW = (solar?.arrays ?? []).reduce((all, a) => all + a.peakW, 0);
    return sum + Math.min(solar?.inputLimitW ?? 0, peakW);
  }, 0);
}

export function ofSun(
  household: HouseholdSpec,
  rule: Extract<RuleSpec, { by: 'sun' }>,
  tell: TellRule,
): DraftFinding[] {
  const mostW = mostSolarW(household);
  if (rule.solarAboveW < mostW) return [];
  const found =
    mostW === 0
      ? 'waits for the sun where there are no panels: its circuits never come on.'
      : `waits for more than ${inW(rule.solarAboveW)} of sun; all panels together give ${inW(mostW)} at most: its circuits never come on.`;
  const numbers = [
    { what: 'waits for', value: rule.solarAboveW, unit: 'W' },
    { what: 'panels and inputs give at most', value: mostW, unit: 'W' },
  ];
  return [tell('mend', found, 'Lower solarAboveW, or use another rule.', 'solarAboveW', numbers)];
}
