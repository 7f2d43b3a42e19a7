/** @rideout/sim: runs in Node and in a browser as it stands. In the order of a study. */
export { readScenario, type ReadScenario } from './scenario/read-scenario.ts';
export { filesNamed, resolveScenario, type Lookups } from './scenario/resolve-scenario.ts';
export {
  isScenarioError,
  ScenarioError,
  wordFinding,
  wordFindings,
  type Finding,
} from './scenario/findings.ts';
export { scenarioJsonSchema } from './scenario/json-schema.ts';
export { spellPath, valueAt } from './scenario/schema-findings.ts';
export { scenarioHash } from './scenario/scenario-hash.ts';
export type {
  AlternativeSpec,
  HouseholdSpec,
  MeasuredProfile,
  MonthlyNormals,
  Scenario,
  WeatherSource,
  WeatherYear,
} from './scenario/scenario.ts';
export type { ScenarioSpec } from './scenario/schema.ts';
export type { TypicalAppliances } from './scenario/typical.ts';

// What a scenario can name: shipped tables and people's own files, as text.
export { readNormals, type NormalsPlace } from './weather/normals-table.ts';
export { readWeatherYear, type ReadWeatherYear } from './weather/read-weather-year.ts';
export { describeWeatherFindings } from './weather/messages.ts';
export { WeatherFileError } from './weather/weather-file-error.ts';
export { applianceRows, readTypicalAppliances } from './usage/typical-appliances.ts';
export { readProfile } from './usage/read-profile.ts';
export { profileHints } from './usage/profile-hints.ts';
export { ProfileFileError } from './usage/profile-file-error.ts';

export { prepareStudy, type Study, type StudyOptions, type StudyOutline } from './trials/study.ts';
export { columnsOf, joinRows, runShard } from './trials/shard.ts';
export { END_CAUSES, OUTCOME_COLUMNS, type EndCause, type OutcomeRows } from './trials/outcome-rows.ts';
export { nextLook, tightness, type Tightness } from './trials/stopping-rule.ts';
export { summarise } from './trials/summarise.ts';
export type {
  Estimate,
  PairedDifference,
  Provenance,
  StrategySummary,
  StudySummary,
  SurvivalCurve,
} from './trials/study-summary.ts';
export { traceDraw, type DrawTrace, type TraceChoice } from './trials/trace-draw.ts';
export type { CircuitTrace, UnitTrace } from './step/trace.ts';
export type { TraceEvent } from './step/trace-events.ts';

// For choosing panels.
export { coldStringV, coldVoltageFactor, mostInSeries } from './power/string-voltage.ts';

// Advice: what to wire, check and buy, each from studies of the same draws.
export { askHere, type AskStudy, type StudyAnswer, type StudyQuestion } from './advice/ask-study.ts';

// Figures as tables, files and words.
export {
  differencesTable,
  endsTable,
  needsTable,
  outcomesTable,
  summaryTable,
  survivalTable,
} from './trials/tables.ts';
export { localTimes, traceTable } from './trials/trace-table.ts';
export { exportFiles, type ExportFile } from './trials/export-files.ts';
export {
  atLeastThisLong,
  daysDown,
  daysInterval,
  daysUp,
  percent,
  plainTenths,
  signedTenths,
} from './trials/days-in-words.ts';
export { longestLasting } from './trials/longest-lasting.ts';
export { provenanceStamp } from './trials/provenance-stamp.ts';
export { VERSION } from './version.ts';
