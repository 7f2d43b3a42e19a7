/** A check's report as Arquero tables. */
import type { ColumnTable } from 'arquero';
import { tableOf } from '../../trials/table-rows.ts';
import type { CheckReport } from './check-report.ts';

/** One row per finding, most pressing first. */
export function findingsTable({ findings }: CheckReport): ColumnTable {
  return tableOf(
    findings.map(({ rule, numbers, ...finding }) => ({
      severity: finding.severity,
      check: finding.check,
      where: finding.where,
      found: finding.found,
      todo: finding.todo,
      rule: rule.source,
      ruleSays: rule.says,
      ruleStanding: rule.standing,
      numbers: numbers.length,
    })),
  );
}

/** One row per number behind a finding; `finding` counts from 0 as in `findingsTable`. */
export function findingNumbersTable({ findings }: CheckReport): ColumnTable {
  return tableOf(
    findings.flatMap(({ check, where, numbers }, finding) =>
      numbers.map(({ what, value, unit }) => ({ finding, check, where, what, value, unit })),
    ),
  );
}

/** One row per thing that the scenario does not say enough about, with the keys that would. */
export function uncheckedTable({ unchecked }: CheckReport): ColumnTable {
  return tableOf(
    unchecked.map(({ check, where, why, keys }) => ({ check, where, why, keys: keys.join(' ') })),
  );
}

/** One row per subject: how many things were looked at, found, and could not be looked at. */
export function checkSubjectsTable({ subjects }: CheckReport): ColumnTable {
  return tableOf(
    subjects.map(({ id, title, looked, findings, unchecked }) => ({
      id,
      title,
      looked,
      findings,
      unchecked,
    })),
  );
}
