/** The public face: every name that the entries export. A change here is a promise made or broken. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as browser from '../../packages/sim/src/index.ts';
import * as node from '../../packages/sim/src/node.ts';
import { SOURCE } from './source-graph.ts';

/** Names that an entry re-exports, types marked; fails on anything that is not a named re-export. */
function namesOf(entry: string): string[] {
  const source = ts.createSourceFile(
    entry,
    readFileSync(join(SOURCE, entry), 'utf8'),
    ts.ScriptTarget.Latest,
  );
  const names = source.statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || statement.moduleSpecifier === undefined)
      throw new Error(`${entry}: more than a list`);
    const { exportClause, isTypeOnly } = statement;
    if (exportClause === undefined || !ts.isNamedExports(exportClause)) throw new Error(`${entry}: export *`);
    return exportClause.elements.map(
      (one) => `${isTypeOnly || one.isTypeOnly ? 'type ' : ''}${one.name.text}`,
    );
  });
  return names.sort();
}

const values = (names: readonly string[]) => names.filter((name) => !name.startsWith('type '));

describe('@rideout/sim', () => {
  it('exports these names and no others', () => {
    expect(namesOf('index.ts')).toMatchInlineSnapshot(`
      [
        "END_CAUSES",
        "GENERATOR_CAUTION",
        "OUTCOME_COLUMNS",
        "PUBLISHED_FIGURES",
        "ProfileFileError",
        "RUNTIME_COLUMNS",
        "RowsInOrder",
        "SEVERITIES",
        "SEVERITY_WORDS",
        "ScenarioError",
        "VEHICLE_CAUTION",
        "VERSION",
        "WeatherFileError",
        "ampacityA",
        "applianceRows",
        "askDrawsHere",
        "askHere",
        "askNeeds",
        "askNextOutage",
        "atLeastThisLong",
        "bridgeCautions",
        "checkScenario",
        "checkSubjectsTable",
        "clearRungs",
        "coldStringV",
        "coldVoltageFactor",
        "columnsOf",
        "cordAmpacityA",
        "defaultFuelLine",
        "deratedShare",
        "describeWeatherFindings",
        "differencesTable",
        "endsTable",
        "engineCautions",
        "exportFiles",
        "fewestInSeries",
        "filesNamed",
        "findLadder",
        "findLegs",
        "findingNumbersTable",
        "findingsTable",
        "floorFraction",
        "fuelDays",
        "fuelLineOf",
        "fuelUsedL",
        "gainCells",
        "gainInterval",
        "gainLength",
        "householdAfter",
        "intervalCell",
        "intervalText",
        "isClear",
        "isScenarioError",
        "joinRows",
        "jsonFile",
        "kaplanMeier",
        "ladderTable",
        "leastRatingA",
        "legsTable",
        "limitCells",
        "limitTexts",
        "listed",
        "localTimes",
        "logRank",
        "longestLasting",
        "mattersTable",
        "mostBreakerA",
        "mostInSeries",
        "needsEnduranceTable",
        "needsTable",
        "neutralA",
        "nextLook",
        "nextOutageTable",
        "nextStandardA",
        "openJob",
        "outcomesTable",
        "percent",
        "prepareStudy",
        "profileHints",
        "provenanceStamp",
        "reachCell",
        "reachText",
        "readNormals",
        "readProfile",
        "readScenario",
        "readTypicalAppliances",
        "readWeatherYear",
        "rechargeFromCutOff",
        "rechargeHours",
        "resolveScenario",
        "restrictedMean",
        "runShard",
        "runningEstimate",
        "runsToDo",
        "scenarioCautions",
        "scenarioHash",
        "scenarioJsonSchema",
        "scenarioNeeds",
        "seedSpread",
        "siteNotes",
        "sobolEstimates",
        "sobolIndices",
        "sourcesTable",
        "spellPath",
        "stringV",
        "summarise",
        "summaryTable",
        "survivalTable",
        "tableFiles",
        "tightness",
        "traceDraw",
        "traceProvenance",
        "traceTable",
        "type AlternativeSpec",
        "type AskDraws",
        "type AskStudy",
        "type Awg",
        "type BasketInstead",
        "type Bounds",
        "type CellChoice",
        "type CheckFinding",
        "type CheckNumber",
        "type CheckOptions",
        "type CheckReport",
        "type CheckRule",
        "type CheckSubject",
        "type CircuitMove",
        "type CircuitTrace",
        "type DrawJob",
        "type DrawTrace",
        "type EndCause",
        "type Estimate",
        "type EveryCombination",
        "type ExportFile",
        "type Finding",
        "type FuelLine",
        "type GeneratorSummary",
        "type HouseholdSpec",
        "type InputMatters",
        "type Ladder",
        "type LadderAnswer",
        "type LadderPlan",
        "type LadderQuestion",
        "type LadderRung",
        "type LadderStand",
        "type LadderStep",
        "type LegSchedule",
        "type LegsAnswer",
        "type LegsBound",
        "type LegsQuestion",
        "type LegsSearch",
        "type LegsStand",
        "type LifeTable",
        "type LogRank",
        "type Lookups",
        "type Matters",
        "type MattersJob",
        "type MattersQuestion",
        "type MattersTask",
        "type MeasuredProfile",
        "type MonthlyNormals",
        "type Move",
        "type NeedFigures",
        "type NeedsAnswer",
        "type NeedsJob",
        "type NeedsQuestion",
        "type NextOutage",
        "type NextOutageFigures",
        "type NormalsPlace",
        "type OutageLengthsSpec",
        "type OutcomeRows",
        "type PairedDifference",
        "type PickFreeze",
        "type Provenance",
        "type ReadScenario",
        "type ReadWeatherYear",
        "type Recharge",
        "type RechargeTimes",
        "type RowsWanted",
        "type RuleStanding",
        "type RunDraws",
        "type RunningEstimate",
        "type Scenario",
        "type ScenarioSpec",
        "type ScheduledCircuit",
        "type SeedSpread",
        "type Severity",
        "type SobolEstimates",
        "type SobolIndices",
        "type SourcesSummary",
        "type StepLeft",
        "type StrategySummary",
        "type Study",
        "type StudyAnswer",
        "type StudyOptions",
        "type StudyOutline",
        "type StudyQuestion",
        "type StudySummary",
        "type SurvivalCurve",
        "type Swing",
        "type TerminalC",
        "type Tightness",
        "type Told",
        "type TraceChoice",
        "type TraceEvent",
        "type TraceProvenance",
        "type TypicalAppliances",
        "type Unchecked",
        "type UnitTrace",
        "type WeatherSource",
        "type WeatherYear",
        "uncheckedTable",
        "unitsFedBy",
        "valueAt",
        "voltageDropV",
        "whatMatters",
        "wordFinding",
        "wordFindings",
      ]
    `);
  });

  it('exports nothing twice and has everything it names', () => {
    const names = namesOf('index.ts');
    expect(new Set(names).size).toBe(names.length);
    expect(Object.keys(browser).sort()).toEqual(values(names));
    expect(Object.values(browser).every((value) => value !== undefined)).toBe(true);
  });

  it('is of the version in its package.json', () => {
    const { version } = JSON.parse(readFileSync(join(SOURCE, '../package.json'), 'utf8')) as {
      version: string;
    };
    expect(browser.VERSION).toBe(version);
  });

  it('is of the newest version in the changelog: figures that move belong to another version', () => {
    const changelog = readFileSync(join(SOURCE, '../../../CHANGELOG.md'), 'utf8');
    expect(/^## (.+)$/m.exec(changelog)![1]).toBe(browser.VERSION);
  });
});

describe('@rideout/sim/node', () => {
  it('exports these names and no others', () => {
    expect(namesOf('node.ts')).toMatchInlineSnapshot(`
      [
        "StudyInterrupted",
        "WriteError",
        "askDrawsPool",
        "askPool",
        "assertCanWrite",
        "dataFile",
        "loadScenario",
        "openPool",
        "readDataFile",
        "runStudy",
        "type FileToWrite",
        "type Handout",
        "type LoadOptions",
        "type LoadedScenario",
        "type Pool",
        "type RunOptions",
        "type Shard",
        "type StudyRun",
        "writeWhole",
      ]
    `);
  });

  it('has everything it names', () => {
    expect(Object.keys(node).sort()).toEqual(values(namesOf('node.ts')));
  });
});
