/** What every subject of the check is given. */
import type { HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import type { CheckOutcome } from './check-report.ts';
import type { Observed } from './observed.ts';

export interface CheckContext {
  readonly scenario: Scenario;
  readonly household: HouseholdSpec;
  /** What some draws showed with everything switched on. */
  readonly observed: Observed;
}

/** One subject: pure, and silent about what the scenario has nothing of. */
export interface CheckSubjectSpec {
  readonly id: string;
  readonly title: string;
  look(context: CheckContext): CheckOutcome;
}
