/**
 * The line on the page that runs the study: an input whose value is the newest StudySummary.
 *
 * It runs anew when the settings change, says how far it has come, can be stopped, and says what to do when it
 * cannot go on. A page that carries its own summary shows that first, and runs nothing until something is changed.
 */
import { html } from '../elements.ts';
import type { OutcomeRows, StudySummary } from '@rideout/sim';
import { runStudy, studyHands, warmUp, type StudyProgress } from '../study-client.ts';
import type { StudyHand } from '../study-hand.ts';
import { counted } from '../charts/counted.ts';
import { simulatedOutages } from '../charts/outage-count.ts';
import { changesSentence } from '../charts/changes-sentence.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords, withChanges } from './changed-words.ts';
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
/** A choice is made at once; while a slider is drawn, a new run begins no sooner than this after the last. */
const BETWEEN_RUNS_MS = 150;
/** Idle workers are let go after this: they hold memory. */
const KEEP_IDLE_MS = 60_000;

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
  const crew = keptCrew();
  let last: StudySummary | undefined;
  const tell = (summary: StudySummary, changes: readonly string[]) => {
    if (summary === last) return;
    last = summary;
    root.value = withChanges(summary, changes);
    root.dispatchEvent(new CustomEvent('input'));
  };
  const run = async () => {
    stop.abort();
    const mine = (stop = new AbortController());
    const { draws, seed } = form.value;
    root.rows = undefined;
    try {
      const scenario = changedScenario(study.scenario, form.value);
      const changes = changedWords(study.scenario, form.value);
      const cancel = () => (mine.abort(), show(line, stoppedLine(root.value, run)));
      show(line, progressLine({ drawsDone: 0, draws }, cancel));
      const hands = crew.hands();
      for await (const progress of runStudy(scenario, { draws, seed, hands, signal: mine.signal })) {
        if (mine.signal.aborted) return;
        root.rows = progress.rows;
        if (progress.settled) show(line, settledLine(progress, changes));
        else advance(line, progress);
        if (progress.summary) tell(progress.summary, changes);
      }
    } catch (error) {
      crew.dismiss();
      if (mine.signal.aborted) return;
      show(line, [trouble(error, run)]);
      line.scrollIntoView({ block: 'nearest' });
    } finally {
      if (stop === mine) crew.rest();
    }
  };
  const warm = () => {
    if (crew.awake) return;
    stop.abort();
    const { signal } = (stop = new AbortController());
    const scenario = changedScenario(study.scenario, form.value);
    void warmUp(crew.hands(), scenario, form.value.seed, signal).then(() => signal.aborted || crew.rest());
  };
  for (const nearing of ['pointerover', 'focusin']) form.addEventListener(nearing, warm, { passive: true });
  runSoonAfter(form, () => void run());
  if (isOwn(study, form.value)) {
    root.value = study.summary;
    show(line, publishedLine(study.draws, run));
  } else void run();
  return root;
}

/** Calls `run` after changes in the form: soon after a choice or a slider's move, a while after something was typed. */
function runSoonAfter(form: HTMLElement, run: () => void): void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let dueSoon = false;
  let lastAt = -Infinity;
  const begin = () => {
    dueSoon = false;
    lastAt = performance.now();
    run();
  };
  form.addEventListener('input', ({ target }) => {
    const typed = target instanceof HTMLInputElement && ['number', 'text'].includes(target.type);
    if (dueSoon && !typed) return; // it will read what the form says then
    clearTimeout(waiting);
    dueSoon = !typed;
    waiting = setTimeout(
      begin,
      typed ? SETTLE_MS : Math.max(0, lastAt + BETWEEN_RUNS_MS - performance.now()),
    );
  });
}

interface Crew {
  /** Whether there are workers now. */
  readonly awake: boolean;
  /** The workers, started if need be. */
  readonly hands: () => readonly StudyHand[];
  /** Nothing runs now: they stay for the next run, and go when there is none for a while. */
  readonly rest: () => void;
  readonly dismiss: () => void;
}

function keptCrew(): Crew {
  let hands: readonly StudyHand[] | undefined;
  let idle: ReturnType<typeof setTimeout> | undefined;
  const dismiss = () => {
    hands?.forEach((hand) => hand.dismiss());
    hands = undefined;
  };
  return {
    get awake() {
      return hands !== undefined;
    },
    hands() {
      clearTimeout(idle);
      return (hands ??= studyHands());
    },
    rest() {
      clearTimeout(idle);
      idle = setTimeout(dismiss, KEEP_IDLE_MS);
    },
    dismiss,
  };
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
    html`<span class="count">${drawsDone} of ${counted(draws, 'outage')} simulated</span>`,
    html`<button type="button" onclick=${cancel}>Stop</button>`,
  ];
}

/** Moves the bar without replacing it, so that the focus on the button stays. */
export function advance(
  line: HTMLElement,
  { drawsDone, draws, summary }: Pick<StudyProgress, 'drawsDone' | 'draws'> & Partial<StudyProgress>,
): void {
  const bar = line.querySelector('progress');
  if (bar) bar.value = drawsDone;
  const count = line.querySelector('.count');
  if (count) count.textContent = `${drawsDone} of ${counted(draws, 'outage')} simulated${coarse(summary)}`;
}

/** Said as long as what is shown is of a part of the outages. */
function coarse(summary: StudySummary | undefined): string {
  return summary === undefined ? '' : `; what is shown is coarse still, of ${summary.provenance.draws}`;
}

function settledLine({ draws }: StudyProgress, changes: readonly string[]): HTMLElement[] {
  return [
    html`<span role="status"
      >Settled: ${counted(draws, 'outage')} simulated in this page.${changesSentence(changes)}</span
    >`,
  ];
}

function stoppedLine(summary: StudySummary | undefined, again: () => Promise<void>): HTMLElement[] {
  const shown = summary
    ? `What is shown is of ${counted(summary.provenance.draws, 'outage')}.`
    : 'Nothing was worked out yet.';
  return [html`<span role="status">Stopped. ${shown}</span>`, runButton('Run again', again)];
}

function publishedLine(draws: number, run: () => Promise<void>): HTMLElement[] {
  return [
    html`<span role="status">Worked out from ${simulatedOutages(draws)} when this page was made.</span>`,
    runButton('Work it out again here', run),
  ];
}

export function runButton(label: string, run: () => Promise<void>): HTMLElement {
  return html`<button type="button" onclick=${() => void run()}>${label}</button>`;
}
