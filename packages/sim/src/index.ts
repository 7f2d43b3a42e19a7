/** @rideout/sim: runs in Node and in a browser as it stands. In the order of a study. */
export { readScenario, type ReadScenario } from './scenario/read-scenario.ts';
export { resolveScenario, filesNamed, type Lookups } from './scenario/resolve-scenario.ts';
export { isScenarioError, ScenarioError, wordFinding, wordFindings, type Finding } from './scenario/findings.ts';
export { scenarioJsonSchema } from './scenario/json-schema.ts';
export { scenarioHash } from './scenario/scenario-hash.ts';
export type { AlternativeSpec, HouseholdSpec, MeasuredProfile, MonthlyNormals, Scenario, WeatherSource, WeatherYear } from './scenario/scenario.ts';
export type { ScenarioSpec } from './scenario/schema.ts';
export type { TypicalAppliances } from './scenario/typical.ts';

export { prepareStudy, type Study, type StudyOptions, type StudyOutline } from './trials/study.ts';
export { columnsOf, joinRows, runShard } from './trials/shard.ts';
export { END_CAUSES, OUTCOME_COLUMNS, type EndCause, type OutcomeRows } from './trials/outcome-rows.ts';
export { summarise } from './trials/summarise.ts';
export type { Estimate, PairedDifference, Provenance, StrategySummary, StudySummary, SurvivalCurve } from './trials/study-summary.ts';
export { VERSION } from './version.ts';
export { atLeastThisLong, daysDown, daysInterval, daysUp, percent } from './trials/days-in-words.ts';
export { longestLasting } from './trials/longest-lasting.ts';
