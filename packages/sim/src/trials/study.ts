/** A study: a scenario compiled for every alternative and strategy, ready to run draw by draw. */
import type { AlternativeSpec, Scenario } from '../scenario/scenario.ts';
import { scenarioHash } from '../scenario/scenario-hash.ts';
import { sunTableOf, type SunTable } from '../sky/sun-table.ts';
import type { Plane } from '../sky/sun-direction.ts';
import { compileHousehold, type Household } from '../step/household.ts';
import { planesOf } from '../step/unit-solar.ts';
import { planUsage } from '../usage/plan-usage.ts';
import type { UsagePlan } from '../usage/usage-plan.ts';
import { VERSION } from '../version.ts';
import { planWeather, type WeatherPlan } from '../weather/draw-weather.ts';
import { horizonMinutes } from './minutes-per-day.ts';

/** What can be told about a study without running it. Positions in these lists are the row columns' values. */
export interface StudyOutline {
  readonly scenario: Scenario;
  readonly scenarioHash: string;
  readonly seed: string;
  readonly horizonDays: number;
  readonly alternatives: readonly { readonly id: string; readonly title: string }[];
  readonly strategies: readonly {
    readonly id: string;
    readonly title: string;
    readonly carriedOutBy: 'person' | 'switch';
  }[];
  /** Of every alternative, in order of first mention. */
  readonly unitIds: readonly string[];
  readonly needs: readonly string[];
  readonly weatherName: string;
  readonly version: string;
  readonly rows: RowsWanted;
}

/** Whole outcomes, or only how long each run lasts: a run is then left as soon as tier 1 has gone without. */
export type RowsWanted = 'outcomes' | 'runtimes';

/** One alternative, compiled. Alternatives with the same key share that part of a draw. */
export interface CompiledAlternative {
  readonly household: Household;
  readonly usagePlan: UsagePlan;
  readonly usageKey: string;
  readonly wantsKey: string;
}

/** A scenario compiled for every alternative and strategy, ready to run draw by draw. */
export interface Study extends StudyOutline {
  readonly minutes: number;
  readonly compiled: readonly CompiledAlternative[];
  readonly planes: readonly Plane[];
  readonly sunTable: SunTable;
  readonly weatherPlan: WeatherPlan;
}

/** What is asked of a study, beside its scenario. */
export interface StudyOptions {
  /** Any text; the same text gives the same draws. */
  readonly seed: string;
  /** Default: whole outcomes. */
  readonly rows?: RowsWanted | undefined;
}

const ROWS_WANTED: readonly RowsWanted[] = ['outcomes', 'runtimes'];

/** @throws TypeError or RangeError naming the option that cannot be used */
export function assertStudyOptions({ seed, rows }: StudyOptions): void {
  if (typeof seed !== 'string') throw new TypeError(`seed: found ${String(seed)}; expected a text`);
  if (rows !== undefined && !ROWS_WANTED.includes(rows))
    throw new RangeError(`rows: found ${String(rows)}; expected ${ROWS_WANTED.join(' or ')}`);
}

/**
 * Compiles a resolved scenario. Costs milliseconds; does no draws.
 *
 * @throws TypeError or RangeError naming the option that cannot be used
 */
export function prepareStudy(scenario: Scenario, options: StudyOptions): Study {
  assertStudyOptions(options);
  const { seed, rows = 'outcomes' } = options;
  const { site, outage, weather, alternatives } = scenario;
  const first = alternatives[0]!.household;
  const sunTable = sunTableOf(site);
  const needs = [...new Set(alternatives.flatMap((a) => a.household.circuits.flatMap((c) => c.need ?? [])))];
  return {
    scenario,
    scenarioHash: scenarioHash(scenario),
    seed,
    horizonDays: outage.horizonDays,
    alternatives: alternatives.map(({ id, title }) => ({ id, title })),
    strategies: first.strategies.map(({ id, title, carriedOutBy }) => ({ id, title, carriedOutBy })),
    unitIds: [...new Set(alternatives.flatMap((a) => a.household.units.map((u) => u.id)))],
    needs,
    weatherName: weatherNameOf(scenario),
    version: VERSION,
    rows,
    minutes: horizonMinutes(outage.horizonDays),
    compiled: alternatives.map((a) => compileAlternative(a, needs, site.indoorC)),
    planes: planesOf(alternatives.flatMap((a) => a.household.units)),
    sunTable,
    weatherPlan: planWeather(weather.source, weather, outage, site, sunTable),
  };
}

/** Name of the place or year that the weather comes from. */
export function weatherNameOf({ weather: { source } }: Scenario): string {
  return source.kind === 'year' ? source.year.name : source.name;
}

function compileAlternative(
  { household: spec }: AlternativeSpec,
  needs: readonly string[],
  indoorC: number,
): CompiledAlternative {
  const { circuits, usage, person, strategies, units } = spec;
  const usageKey = JSON.stringify([
    circuits.map(({ id, appliances }) => [id, appliances]),
    usage,
    person.awake,
  ]);
  const wired = circuits.map(({ leg, tier, graceMinutes, need }) => [leg, tier, graceMinutes, need]);
  return {
    household: compileHousehold(spec, needs),
    usagePlan: planUsage(circuits, usage, person.awake, indoorC),
    usageKey,
    wantsKey: JSON.stringify([usageKey, wired, strategies, units.map((u) => u.leg)]),
  };
}
