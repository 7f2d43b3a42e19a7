/**
 * One strategy in every alternative of the household: the share of outages still running, day by day.
 *
 * Vega-Lite: the very specification of the survival chart, with alternatives in the place of strategies.
 */
import { reachText, type StrategySummary, type StudySummary } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { curveSentence } from './curve-sentences.ts';
import { curvesTable } from './curves-table.ts';
import { tooFewEnding } from './outage-count.ts';
import { seriesKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import { drawn } from './survival-curves.ts';
import { namesFit, survivalSpec } from './survival-spec.ts';

export interface AlternativeCurvesOptions {
  readonly strategyId: string;
  /** Picture width, px. */
  readonly width: number;
}

export async function alternativeCurves(
  study: StudySummary,
  { strategyId, width }: AlternativeCurvesOptions,
): Promise<HTMLElement> {
  const { horizonDays, provenance } = study;
  const summaries = study.strategies.filter((s) => s.strategyId === strategyId);
  const series = summaries.map((s, i) => ({ summary: namedByAlternative(s), style: seriesStyle(i) }));
  const lettered = !namesFit(series, width);
  const named = curvesTable(
    series.map((s) => s.summary),
    horizonDays,
  );
  return chartFrame({
    id: 'alternative-curves',
    title: finding(summaries, horizonDays),
    note: 'Share of simulated outages in which the essentials are still on, by time since the outage began, for each household. Bands: 95\u00a0% interval at each moment.',
    picture: await drawn(survivalSpec(series, horizonDays, width)),
    key: series.map(({ summary, style }) => ({
      sample: seriesKey(style),
      text: `${lettered ? `${style.letter}: ` : ''}${curveSentence(summary, horizonDays)}`,
    })),
    table: {
      ...named,
      columns: [{ name: 'Household' }, ...named.columns.slice(1)],
      exact: curvesTable(summaries, horizonDays).exact,
    },
    provenance,
  });
}

/** The survival chart names its curves by strategy; here the strategy is the same and the household differs. */
function namedByAlternative(summary: StrategySummary): StrategySummary {
  return { ...summary, strategyId: summary.alternativeId, strategyTitle: summary.alternativeTitle };
}

function finding(summaries: readonly StrategySummary[], horizonDays: number): string {
  const reaches = summaries.map(
    (s) => `${reachText(s.nineInTenDays.value, horizonDays)} with “${s.alternativeTitle}”`,
  );
  return `“${summaries[0]?.strategyTitle ?? ''}”: nine outages in ten reach ${reaches.join(', ')}${tooFewEnding(summaries[0]?.draws ?? 0)}`;
}
