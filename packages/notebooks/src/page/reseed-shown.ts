/** What the charts of "Re-seed" are given. */
import type { StrategySummary, StudySummary } from '@rideout/sim';
import type { ToldProvenance } from '../charts/changes-sentence.ts';
import type { SeedAnswer } from '../charts/seed-estimates.ts';
import { provenanceText } from '../charts/chart-frame.ts';
import type { DoneRun } from './live-runs.ts';
import type { ViewSettings } from './page-settings.ts';

/** The one strategy and household shown; undefined where the study has none such. */
export function shownCell(
  { strategies }: StudySummary,
  { alternativeId, strategyIds }: ViewSettings,
): StrategySummary | undefined {
  return strategies.find((s) => s.alternativeId === alternativeId && s.strategyId === strategyIds[0]);
}

/** Titles and provenance of the strategy and household shown. */
export function runningOf(summary: StudySummary, view: ViewSettings) {
  const { strategyTitle, alternativeTitle } = shownCell(summary, view)!;
  const { horizonDays, provenance } = summary;
  return { strategyTitle, alternativeTitle, horizonDays, provenance };
}

/** Seeds from as many outages as the coarsest of them; the hash is that of the whole file. */
export function seedAnswers(
  done: readonly DoneRun[],
  { provenance }: { readonly provenance: ToldProvenance },
): { answers: SeedAnswer[]; horizonDays: number; provenance: string } {
  const most = Math.max(...done.map(({ summary }) => summary.provenance.draws));
  const whole = done.filter(({ summary }) => summary.provenance.draws === most);
  const answers = whole.map(({ title, summary }) => ({ seed: title, summary: summary.strategies[0]! }));
  const seeds = answers.map(({ seed }) => seed).join(', ');
  const from = { ...provenance, draws: most, seed: provenance.seed };
  return {
    answers,
    horizonDays: done[0]!.summary.horizonDays,
    provenance: provenanceText(from).replace(`seed “${from.seed}”`, `each of the seeds ${seeds}`),
  };
}
