/** The table behind the figures: its first rows on the page, all of it as files. */
import { END_CAUSES, exportFiles, prepareStudy, type OutcomeRows, type StudySummary } from '@rideout/sim';
import { saveBytes } from '../charts/chart-export.ts';
import { dataTable } from '../charts/data-table.ts';
import { clockTimesIn, type Look } from '../charts/look.ts';
import { html } from '../elements.ts';
import { changedScenario } from './changed-scenario.ts';
import { withoutChanges } from './changed-words.ts';
import type { LiveStudy } from './live-study.ts';
import type { OpenPage } from './open-page.ts';
import type { ViewSettings } from './page-settings.ts';
import { positions } from './reseed-page.ts';

const SHOWN = 12;

const FILES = [
  { name: 'outcomes.arrow', label: 'Save every outcome as Arrow', type: 'application/vnd.apache.arrow.file' },
  { name: 'outcomes.csv', label: 'Save every outcome as CSV', type: 'text/csv;charset=utf-8' },
  { name: 'study.json', label: 'Save the study as JSON', type: 'application/json' },
] as const;

export function outcomesBehind(
  page: OpenPage,
  own: LiveStudy,
  summary: StudySummary,
  shown: ViewSettings,
  look: Pick<Look, 'clock'>,
): HTMLElement {
  const { rows } = own;
  if (!rows)
    return html`<section>
      <h2>The table behind it</h2>
      <p class="soft">It stands here once every outage is simulated.</p>
    </section>`;
  const save = (name: string, type: string) => {
    const scenario = changedScenario(page.study.scenario, page.runForm.value);
    const outline = prepareStudy(scenario, { seed: summary.provenance.seed });
    saveBytes(
      exportFiles(outline, rows, withoutChanges(summary)).find((file) => file.name === name)!.bytes,
      type,
      name,
    );
  };
  return html`<section aria-labelledby="outcomes-title">
    <h2 id="outcomes-title">The table behind it</h2>
    <p>
      A row for each outage, strategy and household: ${rows.length} rows, ${Object.keys(rows.columns).length}
      columns. The files are the very ones that the command line writes.
    </p>
    <div class="buttons screen-only">
      ${FILES.map(({ name, label, type }) => html`<button type="button" onclick=${() => save(name, type)}>${label}</button>`)}
    </div>
    <div class="table-scroll" tabindex="0" role="region" aria-label="Table: the first outages">
      ${dataTable(firstRows(rows, positions(page, shown), startWriter(page.study.scenario.site.timeZone, look), summary.horizonDays))}
    </div>
  </section>`;
}

function startWriter(timeZone: string, { clock }: Pick<Look, 'clock'>): (epochMinute: number) => string {
  const [date, time] = [
    new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }),
    new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'short' }),
  ];
  return (epochMinute) => {
    const at = epochMinute * 60_000;
    return `${date.format(at)} ${clockTimesIn(time.format(at), clock)}`;
  };
}

function firstRows(
  rows: OutcomeRows,
  { alternative, strategy }: { readonly alternative: number; readonly strategy: number },
  startText: (epochMinute: number) => string,
  horizonDays: number,
) {
  const column = (name: string) => rows.columns[name]!;
  const own = Array.from({ length: rows.length }, (_, row) => row)
    .filter((row) => column('alternative')[row] === alternative && column('strategy')[row] === strategy)
    .sort((a, b) => column('draw')[a]! - column('draw')[b]!)
    .slice(0, SHOWN);
  const number = true;
  return {
    caption: `The first ${own.length} outages of the strategy and household shown, by the clock of the household.`,
    columns: [
      { name: 'Draw' },
      { name: 'Begins' },
      { name: 'Runtime (days)', number },
      { name: 'Ended by' },
      { name: 'Circuits switched', number },
    ],
    rows: own.map((row) => [
      String(column('draw')[row]),
      startText(column('startEpochMinute')[row]!),
      column('censored')[row] === 1 ? `≥ ${horizonDays}` : (column('runtimeMinutes')[row]! / 1440).toFixed(2),
      END_CAUSES[column('endCause')[row]!] ?? '',
      String(column('switchThrows')[row]),
    ]),
    exact: [],
  };
}
