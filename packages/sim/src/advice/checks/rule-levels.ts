/** Levels of charge at which rules act: above the cut-off, apart from each other, and within reach again. */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { RuleSpec } from '../../scenario/schema.ts';
import { SHARE_SLACK } from '../../trials/quantile.ts';
import { inPercent } from './amounts.ts';
import { canRefill } from './can-refill.ts';
import type { CheckNumber, DraftFinding } from './check-report.ts';
import type { TellRule } from './tell-rule.ts';

/** Closer levels than this switch to and fro with every cloud. */
const THIN_FRACTION = 0.05;

function levels(drop: number, restore: number, cutOff: number): CheckNumber[] {
  return [
    { what: 'drops below', value: drop * 100, unit: '%' },
    { what: 'restores above', value: restore * 100, unit: '%' },
    { what: 'cut-off', value: cutOff * 100, unit: '%' },
  ];
}

/** The highest cut-off: with the lowest bank read, the first unit to stop. */
const highestCutOff = ({ units }: HouseholdSpec) => Math.max(...units.map((u) => u.battery.cutOffFraction));

export function ofCharge(
  household: HouseholdSpec,
  rule: Extract<RuleSpec, { by: 'charge' }>,
  tell: TellRule,
): DraftFinding[] {
  const { dropBelowFraction: drop, restoreAboveFraction: restore } = rule;
  const cutOff = highestCutOff(household);
  const numbers = levels(drop, restore, cutOff);
  const findings: DraftFinding[] = [];
  if (drop <= cutOff)
    findings.push(
      tell(
        'mend',
        `drops below ${inPercent(drop)}, but a unit stops at its cut-off of ${inPercent(cutOff)} before that: it never acts.`,
        'Raise dropBelowFraction well above the cut-off.',
        'dropBelowFraction',
        numbers,
      ),
    );
  if (!household.units.some((unit) => canRefill(unit, household)))
    findings.push(
      tell(
        'watch',
        'nothing refills the banks: what it drops never comes back.',
        'Count on it staying off, or add panels, a charger or hours of grid.',
        'restoreAboveFraction',
        numbers,
      ),
    );
  else if (restore >= 1)
    findings.push(
      tell(
        'watch',
        'restores only when the bank is full to the brim, which a winter bank may never be again.',
        'Lower restoreAboveFraction to what a bright day reaches.',
        'restoreAboveFraction',
        numbers,
      ),
    );
  if (restore - drop < THIN_FRACTION - SHARE_SLACK)
    findings.push(
      tell(
        'note',
        `drops and restores only ${inPercent(restore - drop)} apart: it will switch to and fro.`,
        'Spread the two levels.',
        'restoreAboveFraction',
        numbers,
      ),
    );
  return findings;
}

export function ofSleep(
  { units }: HouseholdSpec,
  rule: Extract<RuleSpec, { by: 'sleep' }>,
  tell: TellRule,
): DraftFinding[] {
  const unit = units.find((u) => u.id === rule.unit);
  if (unit === undefined || units.length < 2)
    return [
      tell('mend', 'needs a pair of units: one keeps watch while the other sleeps.', 'Leave it out.', 'unit'),
    ];
  const { cutOffFraction } = unit.battery;
  const { sleepBelowFraction: below, wakeAboveFraction: wake } = rule;
  if (below === undefined || below > cutOffFraction) return [];
  return [
    tell(
      'mend',
      `puts ${unit.id} to sleep below ${inPercent(below)}, but it stops at its cut-off of ${inPercent(cutOffFraction)} before that: it never acts.`,
      'Raise sleepBelowFraction well above the cut-off.',
      'sleepBelowFraction',
      levels(below, wake ?? 1, cutOffFraction),
    ),
  ];
}
