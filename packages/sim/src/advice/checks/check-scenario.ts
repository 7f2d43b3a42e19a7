/** `rideout check`: what a scenario's household should look into before it is trusted. MODEL.md §23. */
import type { Scenario } from '../../scenario/scenario.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import { arrayPower } from './array-power.ts';
import { chargerFeeds } from './charger-feeds.ts';
import { checkCaution } from './check-caution.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import {
  mergeUnchecked,
  SEVERITIES,
  type CheckFinding,
  type CheckReport,
  type Unchecked,
} from './check-report.ts';
import { circuitWires } from './circuit-wires.ts';
import { coldModules } from './cold-modules.ts';
import { continuousLoads } from './continuous-loads.ts';
import { generatorLoads } from './generator-loads.ts';
import { legLoad } from './leg-load.ts';
import { moduleCount } from './module-count.ts';
import { moduleMix } from './module-mix.ts';
import { neutralCurrents } from './neutral-currents.ts';
import { nights } from './nights.ts';
import { observe } from './observe.ts';
import { sharedNeutral } from './shared-neutral.ts';
import { split240 } from './split-240.ts';
import { starts } from './starts.ts';
import { strategyRules } from './strategy-rules.ts';
import { stringVoltages } from './string-voltages.ts';
import { unitOutput } from './unit-output.ts';
import { voltageDrops } from './voltage-drops.ts';

/** In the order in which they are told. */
const SUBJECTS: readonly CheckSubjectSpec[] = [
  legLoad,
  starts,
  generatorLoads,
  continuousLoads,
  circuitWires,
  unitOutput,
  voltageDrops,
  split240,
  sharedNeutral,
  neutralCurrents,
  moduleCount,
  moduleMix,
  stringVoltages,
  arrayPower,
  chargerFeeds,
  coldModules,
  strategyRules,
  nights,
];

/** How a scenario is to be checked. */
export interface CheckOptions {
  /** Same seed, same draws; the draws are those of a study with that seed. */
  readonly seed: string;
  /** Outages watched minute by minute with everything on, ≥ 1. */
  readonly draws: number;
  /** Days of each that are watched. Default 3. */
  readonly days?: number | undefined;
  /** Position of the version of the household to look at. Default 0, the first. */
  readonly alternative?: number | undefined;
}

const WATCHED_DAYS = 3;

/**
 * Looks a household over. Pure; runs here, in a page or in a worker; seconds for 20 draws.
 *
 * @throws RangeError when there is no such alternative
 */
export function checkScenario(scenario: Scenario, options: CheckOptions): CheckReport {
  const { seed, draws, days = WATCHED_DAYS, alternative: position = 0 } = options;
  const alternative = scenario.alternatives[position];
  if (alternative === undefined) throw new RangeError(`no alternative ${position} in this scenario`);
  const observed = observe(scenario, alternative, { seed, draws, days });
  const context: CheckContext = { scenario, household: alternative.household, observed };
  const outcomes = SUBJECTS.map((subject) => ({ subject, outcome: subject.look(context) }));
  const findings = outcomes.flatMap(({ subject, outcome }) =>
    outcome.findings.map((finding): CheckFinding => ({ check: subject.id, ...finding })),
  );
  const unchecked = mergeUnchecked(
    outcomes.flatMap(({ subject, outcome }) =>
      outcome.unchecked.map((one): Unchecked => ({ check: subject.id, ...one })),
    ),
  );
  return {
    provenance: adviceProvenance(scenario, { seed, draws }),
    alternativeId: alternative.id,
    alternativeTitle: alternative.title,
    watchedDays: observed.days,
    findings: SEVERITIES.flatMap((severity) => findings.filter((f) => f.severity === severity)),
    unchecked,
    subjects: outcomes.map(({ subject: { id, title }, outcome }) => ({
      id,
      title,
      looked: outcome.looked,
      findings: outcome.findings.length,
      unchecked: unchecked.filter((one) => one.check === id).length,
    })),
    caution: checkCaution(scenario),
  };
}
