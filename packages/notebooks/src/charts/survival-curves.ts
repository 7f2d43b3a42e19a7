/**
 * How long each strategy holds: the share of outages still running, day by day.
 *
 * Vega-Lite, because this is a layered chart (bands, steps, markers, names) over one table whose look follows from
 * the data, and the specification is itself a thing to publish and reuse.
 */
import embed, { type Result } from 'vega-embed';
import type { TopLevelSpec } from 'vega-lite';
import type { StudySummary } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { curveSentence } from './curve-sentences.ts';
import { curvesTable } from './curves-table.ts';
import { alternativeShown, nineInTenTitle, shownStrategies, type Shown } from './nine-in-ten-words.ts';
import { seriesKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import type { CurveSeries } from './survival-rows.ts';
import { namesFit, survivalSpec } from './survival-spec.ts';

export interface SurvivalCurvesOptions extends Shown {
  /** Picture width, px. */
  readonly width: number;
}

/** A figure: curves, sentences, table. */
export async function survivalCurves(
  study: StudySummary,
  options: SurvivalCurvesOptions,
): Promise<HTMLElement> {
  const { horizonDays, provenance } = study;
  const series = chosenSeries(study, options);
  const lettered = !namesFit(series, options.width);
  return chartFrame({
    id: 'survival-curves',
    title: nineInTenTitle(study, options),
    note: 'Share of simulated outages in which the essentials are still on, by time since the outage began. Bands: 95\u00a0% interval at each moment.',
    picture: await drawn(survivalSpec(series, horizonDays, options.width)),
    key: series.map(({ summary, style }) => ({
      sample: seriesKey(style),
      text: `${lettered ? `${style.letter}: ` : ''}${curveSentence(summary, horizonDays)}`,
    })),
    table: curvesTable(
      series.map((s) => s.summary),
      horizonDays,
    ),
    provenance,
    alternative: alternativeShown(study.strategies, options),
  });
}

/** A strategy's place in the whole study decides its look, whatever else is shown. */
function chosenSeries(study: StudySummary, shown: Shown): CurveSeries[] {
  const all = shownStrategies(study, { alternativeId: shown.alternativeId });
  return shownStrategies(study, shown).map((summary) => ({
    summary,
    style: seriesStyle(all.indexOf(summary)),
  }));
}

export async function drawn(
  spec: TopLevelSpec,
  /** Told of the view, to listen to what a reader selects in it. */
  withView?: (view: Result['view']) => void,
): Promise<SVGSVGElement> {
  const stage = document.createElement('div');
  const { view } = await embed(stage, spec, {
    mode: 'vega-lite',
    renderer: 'svg',
    ast: true, // expressions are interpreted: the page's policy forbids making code from text
    actions: false, // the frame saves pictures, with their title and provenance: chart-export.ts
    tooltip: false,
    defaultStyle: false,
  });
  withView?.(view);
  return stage.querySelector('svg')!;
}
