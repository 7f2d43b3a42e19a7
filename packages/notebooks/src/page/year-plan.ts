/** Twelve studies, one a month: the household and strategy chosen, an alternative for each column. */
import type { Scenario } from '@rideout/sim';
import { changedScenario } from './changed-scenario.ts';
import type { PlannedRun } from './live-runs.ts';
import { monthsText } from './months-text.ts';
import { narrowedScenario } from './narrowed-scenario.ts';
import type { RunSettings, ViewSettings } from './page-settings.ts';
import { yearColumns, type Across } from './year-columns.ts';

export const YEAR: readonly number[] = Array.from({ length: 12 }, (_, i) => i + 1);

/** All columns of a month meet the same outages, as alternatives do. */
export function yearPlan(
  scenario: Scenario,
  run: RunSettings,
  view: ViewSettings,
  across: Across,
): PlannedRun[] {
  const one = chosenScenario(scenario, view);
  const { household } = one.alternatives[0]!;
  return YEAR.map((month) => {
    const alternatives = yearColumns(household, across).map((column) => {
      const changed = column.change(one, run).alternatives[0]!;
      return { ...changed, id: column.id, title: column.words };
    });
    const inMonth = changedScenario(one, { ...run, modulesPerUnit: undefined, months: [month] });
    return { title: monthsText([month]), scenario: { ...inMonth, alternatives } };
  });
}

/** The household and the strategy of the page's controls, alone. */
export function chosenScenario(scenario: Scenario, { alternativeId, strategyIds }: ViewSettings): Scenario {
  return narrowedScenario(scenario, [alternativeId], strategyIds[0]!);
}
