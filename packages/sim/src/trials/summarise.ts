import { compareCells } from './compare-cells.ts';
import { outcomeCells } from './outcome-cells.ts';
import type { OutcomeCells } from './outcome-cells.ts';
import type { OutcomeRows } from './outcome-rows.ts';
import { summariseCell } from './summarise-cell.ts';
import type { Provenance, StudySummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';

/**
 * Every figure of a study from its outcome rows. MODEL.md, Statistics. Pure: the same rows in any order give the same
 * bits. A study that is still running may be summarised from the draws it has; `provenance.draws` says how many.
 *
 * @returns strategies listed alternative by alternative, each in the outline's order.
 * @throws RangeError as `outcomeCells`.
 */
export function summarise(outline: StudyOutline, rows: OutcomeRows): StudySummary {
  const cells = outcomeCells(outline, rows);
  return {
    provenance: provenanceOf(outline, cells),
    horizonDays: outline.horizonDays,
    strategies: outline.alternatives.flatMap((_, a) =>
      outline.strategies.map((_, s) => summariseCell(outline, cells, a, s)),
    ),
    differences: compareCells(outline, cells),
  };
}

/** What it takes to repeat the figures drawn from `cells`. */
export function provenanceOf(outline: StudyOutline, cells: OutcomeCells): Provenance {
  return {
    scenarioHash: outline.scenarioHash,
    scenarioTitle: outline.scenario.title,
    seed: outline.seed,
    draws: cells.draws.length,
    version: outline.version,
    weatherName: outline.weatherName,
  };
}
