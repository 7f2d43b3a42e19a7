/** @rideout/sim: runs in Node and in a browser as it stands. In the order of a study. */
export { readScenario, type ReadScenario } from './scenario/read-scenario.ts';
export { unitsFedBy } from './scenario/fed-units.ts';
export { filesNamed } from './scenario/named-files.ts';
export { resolveScenario, type Lookups } from './scenario/resolve-scenario.ts';
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
  Ladder,
  MeasuredProfile,
  MonthlyNormals,
  Scenario,
  WeatherSource,
  WeatherYear,
} from './scenario/scenario.ts';
export { householdAfter, type LadderPlan, type LadderStep, type Move } from './scenario/ladder-plan.ts';
export type { ScenarioSpec } from './scenario/schema.ts';
export type { TypicalAppliances } from './scenario/typical.ts';

// What a scenario can name: shipped tables and people's own files, as text.
export { readNormals, type NormalsPlace } from './weather/normals-table.ts';
export { siteNotes } from './weather/site-notes.ts';
export { readWeatherYear, type ReadWeatherYear } from './weather/read-weather-year.ts';
export { describeWeatherFindings } from './weather/messages.ts';
export { WeatherFileError } from './weather/weather-file-error.ts';
export { applianceRows, readTypicalAppliances } from './usage/typical-appliances.ts';
export { readProfile } from './usage/read-profile.ts';
export { profileHints } from './usage/profile-hints.ts';
export { ProfileFileError } from './usage/profile-file-error.ts';

export {
  prepareStudy,
  type RowsWanted,
  type Study,
  type StudyOptions,
  type StudyOutline,
} from './trials/study.ts';
export { columnsOf, joinRows, runShard } from './trials/shard.ts';
export { RowsInOrder } from './trials/rows-in-order.ts';
export {
  END_CAUSES,
  OUTCOME_COLUMNS,
  RUNTIME_COLUMNS,
  type EndCause,
  type OutcomeRows,
} from './trials/outcome-rows.ts';
export { nextLook, tightness, type Tightness } from './trials/stopping-rule.ts';
export { summarise } from './trials/summarise.ts';
export { runningEstimate, type CellChoice, type RunningEstimate } from './trials/running-estimate.ts';
export { kaplanMeier, type LifeTable } from './trials/survival.ts';
export { logRank, type LogRank } from './trials/log-rank.ts';
export { restrictedMean } from './trials/restricted-mean.ts';
export { seedSpread, type SeedSpread } from './trials/seed-spread.ts';
export type {
  Estimate,
  PairedDifference,
  Provenance,
  GeneratorSummary,
  SourcesSummary,
  StrategySummary,
  StudySummary,
  SurvivalCurve,
} from './trials/study-summary.ts';
export { traceDraw, type DrawTrace, type TraceChoice } from './trials/trace-draw.ts';
export type { CircuitTrace, UnitTrace } from './step/trace.ts';
export type { TraceEvent } from './step/trace-events.ts';

// For fuel and recharging; and what must be said wherever an engine runs or one unit feeds both legs.
export { defaultFuelLine, fuelDays, fuelLineOf, fuelUsedL, type FuelLine } from './power/fuel-use.ts';
export { deratedShare } from './power/engine-derating.ts';
export { rechargeHours, type Recharge } from './power/recharge-time.ts';
export { rechargeFromCutOff, type RechargeTimes } from './step/recharge.ts';
export {
  engineCautions,
  GENERATOR_CAUTION,
  scenarioCautions,
  VEHICLE_CAUTION,
} from './advice/engine-caution.ts';
export { bridgeCautions } from './advice/bridge-caution.ts';

// For choosing panels, wires and breakers.
export {
  coldStringV,
  coldVoltageFactor,
  fewestInSeries,
  mostInSeries,
  stringV,
} from './power/string-voltage.ts';
export { ampacityA, cordAmpacityA, mostBreakerA, nextStandardA, type TerminalC } from './power/conductors.ts';
export { leastRatingA } from './power/continuous-load.ts';
export { neutralA } from './power/neutral-current.ts';
export { voltageDropV } from './power/voltage-drop.ts';
export type { Awg } from './scenario/schema-wiring.ts';

// Advice: what to wire, check and buy, each from studies of the same draws.
export { askHere, type AskStudy, type StudyAnswer, type StudyQuestion } from './advice/ask-study.ts';
export { checkScenario, type CheckOptions } from './advice/checks/check-scenario.ts';
export {
  SEVERITIES,
  SEVERITY_WORDS,
  type CheckFinding,
  type CheckNumber,
  type CheckReport,
  type CheckSubject,
  type Severity,
  type Unchecked,
} from './advice/checks/check-report.ts';
export type { CheckRule, RuleStanding } from './advice/checks/check-rules.ts';
export {
  checkSubjectsTable,
  findingNumbersTable,
  findingsTable,
  uncheckedTable,
} from './advice/checks/checks-table.ts';
export { askDrawsHere, openJob, type AskDraws, type DrawJob, type RunDraws } from './advice/draw-job.ts';
export { isClear, type Told } from './advice/told.ts';
export { findLegs, type LegsQuestion } from './advice/legs/find-legs.ts';
export type {
  CircuitMove,
  LegsAnswer,
  LegsBound,
  LegSchedule,
  LegsSearch,
  LegsStand,
  ScheduledCircuit,
} from './advice/legs/legs-answer.ts';
export { legsTable } from './advice/legs/legs-table.ts';
export { findLadder, type LadderQuestion } from './advice/ladder/find-ladder.ts';
export type {
  BasketInstead,
  EveryCombination,
  LadderAnswer,
  LadderRung,
  LadderStand,
  StepLeft,
} from './advice/ladder/ladder-answer.ts';
export { ladderTable } from './advice/ladder/ladder-table.ts';
export type { MattersJob, MattersTask } from './advice/matters/matters-job.ts';
export type { InputMatters, Matters, Swing } from './advice/matters/matters.ts';
export { mattersTable } from './advice/matters/matters-table.ts';
export { runsToDo, whatMatters, type MattersQuestion } from './advice/matters/what-matters.ts';
export {
  sobolEstimates,
  sobolIndices,
  type PickFreeze,
  type SobolEstimates,
  type SobolIndices,
} from './advice/matters/sobol.ts';
export type { NeedsJob } from './advice/needs/needs-job.ts';
export { scenarioNeeds } from './advice/needs/needs-job.ts';
export { askNeeds, type NeedsQuestion } from './advice/needs/ask-needs.ts';
export type { NeedFigures, NeedsAnswer } from './advice/needs/needs.ts';
export { needsEnduranceTable } from './advice/needs/needs-table.ts';
export {
  askNextOutage,
  type NextOutage,
  type NextOutageFigures,
} from './advice/outage-lengths/next-outage.ts';
export type { OutageLengthsSpec } from './scenario/schema-outage-lengths.ts';
export { nextOutageTable } from './advice/outage-lengths/next-outage-table.ts';
export type { Bounds } from './advice/outage-lengths/ridden-out.ts';
export { PUBLISHED_FIGURES } from './advice/outage-lengths/published-figures.ts';

// Figures as tables, files and words.
export {
  differencesTable,
  endsTable,
  needsTable,
  outcomesTable,
  sourcesTable,
  summaryTable,
  survivalTable,
} from './trials/tables.ts';
export { localTimes, traceTable } from './trials/trace-table.ts';
export { traceProvenance, type TraceProvenance } from './trials/trace-provenance.ts';
export { exportFiles, type ExportFile } from './trials/export-files.ts';
export { jsonFile, tableFiles } from './trials/table-files.ts';
export {
  atLeastThisLong,
  intervalCell,
  intervalText,
  limitCells,
  limitTexts,
  percent,
  reachCell,
  reachText,
} from './trials/days-in-words.ts';
export { gainCells, gainInterval, gainLength } from './trials/gains-in-words.ts';
export { listed } from './trials/listed.ts';
export { longestLasting } from './trials/longest-lasting.ts';
export { clearRungs } from './advice/ladder/clear-rungs.ts';
export { floorFraction } from './power/cold.ts';
export { provenanceStamp } from './trials/provenance-stamp.ts';
export { VERSION } from './version.ts';
