/** What the charts of one outage are given, from what was written out and what is looked at. */
import { traceTable, VERSION, scenarioHash } from '@rideout/sim';
import { saveText } from '../charts/chart-export.ts';
import { changesSentence } from '../charts/changes-sentence.ts';
import type { OutageView } from '../charts/outage-view.ts';
import { html } from '../elements.ts';
import type { Look } from '../charts/look.ts';
import type { OutageSpan } from './outage-page.ts';
import { rangeWithin } from './outage-range.ts';
import type { WrittenOutage } from './outage-trace.ts';

export function outageShown(
  written: WrittenOutage,
  { clock, temperature }: Look,
  span: OutageSpan['value'],
  width: number,
): OutageView {
  const { trace, scenario } = written;
  const { household } = scenario.alternatives[trace.alternative]!;
  return {
    trace,
    household,
    carriedOutBy: household.strategies[trace.strategy]!.carriedOutBy,
    ...rangeWithin(span, trace.minutes),
    clock,
    temperature,
    width,
    provenance: provenanceOf(written),
  };
}

export function outageTitles({ trace, scenario }: WrittenOutage): { strategy: string; household: string } {
  const { title, household } = scenario.alternatives[trace.alternative]!;
  return { strategy: household.strategies[trace.strategy]!.title, household: title };
}

/** The line that lets somebody else repeat the figures. */
function provenanceOf(written: WrittenOutage): string {
  const { trace, scenario, seed, changes } = written;
  const { strategy, household } = outageTitles(written);
  const { source } = scenario.weather;
  const weather = source.kind === 'year' ? source.year.name : source.name;
  return (
    `${scenario.title}.${changesSentence(changes)} Simulated outage ${trace.draw} of seed “${seed}”, ${household}, ${strategy}, weather: ${weather}. ` +
    `Scenario ${scenarioHash(scenario)}, Rideout ${VERSION}.`
  );
}

/** Everything that was written out, a row a minute; the last column says in every row where it is from. */
export function saveMinutes(written: WrittenOutage): HTMLElement {
  const { trace } = written;
  const study = new Array<string>(trace.minutes).fill(provenanceOf(written));
  const save = () =>
    saveText(traceTable(trace).assign({ study }).toCSV(), 'text/csv', `outage-${trace.draw}.csv`);
  return html`<p class="screen-only">
    <button type="button" onclick=${save}>Save every minute as CSV</button>
  </p>`;
}
