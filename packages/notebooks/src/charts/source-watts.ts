/** What came in besides the sun: from hours of grid, a generator, a car. */
import { html } from '../elements.ts';
import { chartFrame } from './chart-frame.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, type OutageView } from './outage-view.ts';
import { SOURCE_NAMES, sourceSentences, sourceTotals, type SourceId } from './source-totals.ts';
import { shareKey, stackedWatts, type WattsLook } from './stacked-watts.ts';

const LOOKS: Readonly<Record<SourceId, WattsLook>> = {
  grid: { colour: 'var(--series-1)', opacity: 0.85, edge: '' },
  generator: { colour: 'var(--series-2)', opacity: 0.5, edge: '3 2' },
  vehicle: { colour: 'var(--series-4)', opacity: 0.2, edge: '1 2' },
};

/** Nothing to see where the household has no source. */
export function sourceWatts(outage: OutageView): HTMLElement {
  const { trace, household, from, to } = outage;
  const shares = trace.sources.map(({ id, inW }) => ({
    id,
    name: SOURCE_NAMES[id],
    watts: inW,
    ...LOOKS[id],
  }));
  if (shares.length === 0) return html`<div></div>`;
  const totals = sourceTotals(trace, from, to);
  const sentences = sourceSentences(totals, household);
  const kWh = totals.reduce((sum, total) => sum + total.kWh, 0);
  return chartFrame({
    id: 'source-watts',
    title:
      kWh > 0
        ? `${kWh.toFixed(1)}\u00a0kWh came in besides the sun in the time shown`
        : 'Nothing came in besides the sun in the time shown',
    note: `Watts taken from each source, before what chargers lose. ${shownText(outage)}`,
    picture: stackedWatts(outage, shares),
    key: shares.map((share, i) => ({ sample: shareKey(share), text: sentences[i]! })),
    table: minutesTable(
      outage,
      'Mean watts taken from each source.',
      shares.map(({ id, name, watts }) => ({
        name: `${name} (W)`,
        id: `${id}InW`,
        values: watts,
        take: 'mean',
        show: (w) => w.toFixed(0),
      })),
    ),
    provenance: outage.provenance,
  });
}
