/** Monthly normals made ready for drawing: everything the generator needs that does not depend on the draw. */
import type { MonthlyNormals } from '../scenario/scenario.ts';
import { createClearnessTable } from './clearness-table.ts';
import type { ClearnessTable } from './clearness-table.ts';
import { planDryBulb } from './dry-bulb-plan.ts';
import type { DryBulbPlan } from './dry-bulb-plan.ts';
import { SPELL_LAG1, SPELL_VARIANCE_FRACTION } from './spells.ts';

export interface NormalsPlan {
  readonly clearness: ClearnessTable;
  /** Lag-1 correlation of the quick part of the sequence, mid-month, twelve. */
  readonly quickLag1: readonly number[];
  /** Lag-1 correlation of daily clearness as it comes out, twelve. */
  readonly clearnessLag1: readonly number[];
  readonly dryBulb: DryBulbPlan;
}

/**
 * Where the normals give none. Measured: 0.25 at Penn State over 20 years, 0.27 at Lyngby; Graham, Hollands & Unny
 * 1988, Solar Energy 40:83, have 0.29 for the transformed variable.
 */
const DEFAULT_CLEARNESS_LAG1 = 0.27;

let latest: { readonly key: string; readonly plan: NormalsPlan } | undefined;

/** Of normals that may have been asked for just before, by somebody who has changed something else since: the latest plan is kept. */
export function planNormals(monthly: MonthlyNormals): NormalsPlan {
  const key = JSON.stringify(monthly);
  if (latest?.key !== key) latest = { key, plan: workOutPlan(monthly) };
  return latest.plan;
}

function workOutPlan(monthly: MonthlyNormals): NormalsPlan {
  const clearness = createClearnessTable(monthly.clearnessMean, monthly.clearnessSd);
  const quickLag1 = clearness.kept.map((kept, month) => {
    const wanted = (monthly.clearnessLag1?.[month] ?? DEFAULT_CLEARNESS_LAG1) / kept;
    const quick = (wanted - SPELL_VARIANCE_FRACTION * SPELL_LAG1) / (1 - SPELL_VARIANCE_FRACTION);
    return Math.min(0.95, Math.max(-0.9, quick));
  });
  const clearnessLag1 = clearness.kept.map(
    (kept, month) =>
      kept * (SPELL_VARIANCE_FRACTION * SPELL_LAG1 + (1 - SPELL_VARIANCE_FRACTION) * quickLag1[month]!),
  );
  return { clearness, quickLag1, clearnessLag1, dryBulb: planDryBulb(monthly, clearness, quickLag1) };
}
