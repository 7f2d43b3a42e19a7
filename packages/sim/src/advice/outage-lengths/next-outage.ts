/** The chance that the next outage is ridden out, and hours without in a year: per strategy. MODEL.md §20. */
import { streamsOf } from '../../chance/streams.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { OutageLengthsSpec } from '../../scenario/schema-outage-lengths.ts';
import { resampleCount } from '../../trials/bootstrap.ts';
import { outcomeCells, runtimesOf } from '../../trials/outcome-cells.ts';
import type { Provenance } from '../../trials/study-summary.ts';
import type { AskStudy, StudyQuestion } from '../ask-study.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import { assertOutageLengths } from './assert-lengths.ts';
import { lawOf, mixedLaw } from './length-law.ts';
import { kindsOf } from './published-figures.ts';
import { riddenOut, type Bounds } from './ridden-out.ts';

/** The next outage under one strategy of one alternative. */
export interface NextOutageFigures {
  readonly alternativeId: string;
  readonly alternativeTitle: string;
  readonly strategyId: string;
  readonly strategyTitle: string;
  readonly riddenOut: Bounds;
  /** Hours from tier 1 going without to the end of the outage, in a year. */
  readonly hoursWithoutPerYear: Bounds;
  /** Outages a year that are not ridden out. */
  readonly notRiddenOutPerYear: Bounds;
}

/** The next outage, weighed by how long outages last. */
export interface NextOutage {
  readonly provenance: Provenance;
  readonly horizonDays: number;
  readonly lengths: {
    readonly source: string;
    readonly perYear: number;
    readonly meanHours: number;
    /** Hours a year without the grid: what a home without backup goes without. */
    readonly hoursPerYear: number;
    /** Share of outages that are over by each of these days, and share that goes on past the horizon. */
    readonly overBy: readonly { readonly days: number; readonly share: number }[];
    readonly beyondHorizonFraction: number;
  };
  readonly figures: readonly NextOutageFigures[];
}

const DAYS_TOLD = [1 / 4, 1, 3, 7];
const MINUTES_PER_HOUR = 60;

/**
 * Finds the chance that the next outage is ridden out, and hours without in a year, per strategy.
 *
 * @param lengths your own, as a scenario writes them: `{ kinds: [{ perYear: 2, hours: [1, 5, 30] }] }`; left out: the
 *   scenario's, or the United States in 2017
 * @throws RangeError naming every key of `lengths` that cannot be used
 */
export async function askNextOutage(
  scenario: Scenario,
  question: StudyQuestion,
  ask: AskStudy,
  lengths: OutageLengthsSpec = scenario.outageLengths ?? { published: 'us-2017' },
): Promise<NextOutage> {
  assertOutageLengths(lengths);
  const { kinds, source } = kindsOf(lengths);
  const law = mixedLaw(kinds.map((kind) => ({ weight: kind.perYear, law: lawOf(kind) })));
  const perYear = kinds.reduce((sum, kind) => sum + kind.perYear, 0);
  const { outline, rows } = await ask(scenario, { ...question, rows: 'runtimes' });
  const cells = outcomeCells(outline, rows);
  const { horizonDays } = outline;
  return {
    provenance: adviceProvenance(scenario, question),
    horizonDays,
    lengths: {
      source,
      perYear,
      meanHours: law.meanHours,
      hoursPerYear: perYear * law.meanHours,
      overBy: DAYS_TOLD.filter((days) => days <= horizonDays).map((days) => ({
        days,
        share: law.overBy(24 * days),
      })),
      beyondHorizonFraction: 1 - law.overBy(24 * horizonDays),
    },
    figures: outline.alternatives.flatMap((alternative, a) =>
      outline.strategies.map((strategy, s): NextOutageFigures => {
        const { times, censored } = runtimesOf(cells, a, s);
        const runtimes = { times: times.map((minutes) => minutes / MINUTES_PER_HOUR), censored };
        // the same resamples for every cell
        const chance = streamsOf(question.seed, 0)('outage-lengths/bootstrap');
        const out = riddenOut(runtimes, law, resampleCount(question.draws), chance);
        return {
          alternativeId: alternative.id,
          alternativeTitle: alternative.title,
          strategyId: strategy.id,
          strategyTitle: strategy.title,
          riddenOut: out.chance,
          hoursWithoutPerYear: scaled(out.hoursWithout, perYear),
          notRiddenOutPerYear: scaled(complement(out.chance), perYear),
        };
      }),
    ),
  };
}

function scaled({ least, most, low, high }: Bounds, by: number): Bounds {
  return { least: least * by, most: most * by, low: low * by, high: high * by };
}

function complement({ least, most, low, high }: Bounds): Bounds {
  return { least: 1 - most, most: 1 - least, low: 1 - high, high: 1 - low };
}
