/**
 * The line on the page that runs the study: an input whose value is the newest StudySummary.
 *
 * It runs anew when the settings change, says how far it has come, can be stopped, and says what to do when it
 * cannot go on. A page that carries its own summary shows that first, and runs nothing until something is changed.
 */
import { html } from '../elements.ts';
import type { OutcomeRows, StudySummary } from '@rideout/sim';
import { runStudy, type StudyProgress } from '../study-client.ts';
import { changedScenario } from './changed-scenario.ts';
import type { EmbeddedStudy } from './embedded-study.ts';
import type { RunSettings } from './page-settings.ts';
import type { SettingsForm } from './settings-forms.ts';
import { trouble } from './trouble.ts';

export type LiveStudy = HTMLElement & {
  readonly value: StudySummary | undefined;
  /** Every outcome behind `value`, once a run in this page has settled. */
  readonly rows: OutcomeRows | undefined;
};

export const SETTLE_MS = 400; // a number is typed digit by digit

/** Is this what the page's own summary was made with? */
function isOwn(study: EmbeddedStudy, run: RunSettings): boolean {
  return (
    changedScenario(study.scenario, run) === study.scenario &&
    study.summary?.provenance.seed === run.seed &&
    study.summary.provenance.draws === run.draws
  );
}

export function liveStudy(study: EmbeddedStudy, form: SettingsForm<RunSettings>): LiveStudy {
  const line = html`<div class="run screen-only"></div>`;
  const root = html`<div class="run-place">${line}</div>` as HTMLElement & {
    value: StudySummary | undefined;
    rows: OutcomeRows | undefined;
  };
  let stop = new AbortController();
  const tell = (summary: StudySummary) => {
    if (summary === root.value) return;
    root.value = summary;
    root.dispatchEvent(new CustomEvent('input'));
  };
  const run = async () => {
    stop.abort();
    const mine = (stop = new AbortController());
    const { draws, seed } = form.value;
    root.rows = undefined;
    try {
      const scenario = changedScenario(study.scenario, form.value);
      const cancel = () => (mine.abort(), show(line, stoppedLine(root.value, run)));
      show(line, progressLine({ drawsDone: 0, draws }, cancel));
      for await (const progress of runStudy(scenario, { draws, seed, signal: mine.signal })) {
        if (mine.signal.aborted) return;
        root.rows = progress.rows;
        if (progress.summary) tell(progress.summary);
        if (progress.settled) show(line, settledLine(progress));
        else advance(line, progress);
      }
    } catch (error) {
      if (mine.signal.aborted) return;
      show(line, [trouble(error, run)]);
      line.scrollIntoView({ block: 'nearest' });
    }
  };
  let waiting: ReturnType<typeof setTimeout>;
  form.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void run(), SETTLE_MS);
  });
  if (isOwn(study, form.value)) {
    root.value = study.summary;
    show(line, publishedLine(study.draws, run));
  } else void run();
  return root;
}

export function show(line: HTMLElement, content: readonly (HTMLElement | string)[]): void {
  line.replaceChildren(...content);
}

export function progressLine(
  { drawsDone, draws }: Pick<StudyProgress, 'drawsDone' | 'draws'>,
  cancel: () => void,
): HTMLElement[] {
  return [
    html`<progress max=${draws} value=${drawsDone} aria-label="Simulated outages so far"></progress>`,
    html`<span class="count">${drawsDone} of ${draws} outages simulated</span>`,
    html`<button type="button" onclick=${cancel}>Stop</button>`,
  ];
}

/** Moves the bar without replacing it, so that the focus on the button stays. */
export function advance(
  line: HTMLElement,
  { drawsDone, draws }: Pick<StudyProgress, 'drawsDone' | 'draws'>,
): void {
  const bar = line.querySelector('progress');
  if (bar) bar.value = drawsDone;
  const count = line.querySelector('.count');
  if (count) count.textContent = `${drawsDone} of ${draws} outages simulated`;
}

function settledLine({ draws }: StudyProgress): HTMLElement[] {
  return [html`<span role="status">Settled: ${draws} outages simulated in this page.</span>`];
}

function stoppedLine(summary: StudySummary | undefined, again: () => Promise<void>): HTMLElement[] {
  const shown = summary
    ? `What is shown is of ${summary.provenance.draws} outages.`
    : 'Nothing was worked out yet.';
  return [html`<span role="status">Stopped. ${shown}</span>`, runButton('Run again', again)];
}

function publishedLine(draws: number, run: () => Promise<void>): HTMLElement[] {
  return [
    html`<span role="status">Worked out from ${draws} simulated outages when this page was made.</span>`,
    runButton('Work it out again here', run),
  ];
}

export function runButton(label: string, run: () => Promise<void>): HTMLElement {
  return html`<button type="button" onclick=${() => void run()}>${label}</button>`;
}
