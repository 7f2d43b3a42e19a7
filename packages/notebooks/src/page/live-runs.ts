/**
 * The line on the page that runs several studies one after another (seasons, months): an input whose value is what
 * is done so far. All of them coarsely first, then all of them as finely as the reader asked.
 *
 * Like the line of the page's own study it runs anew when a setting changes, says how far it has come and can be
 * stopped; it can wait for that study, so that the two never share the machine.
 */
import { html } from '../elements.ts';
import type { Scenario, StudySummary } from '@rideout/sim';
import { runStudy, studyHands } from '../study-client.ts';
import { changesSentence } from '../charts/changes-sentence.ts';
import { counted } from '../charts/counted.ts';
import type { StudyHand } from '../study-hand.ts';
import { advance, progressLine, runButton, SETTLE_MS, show, type LiveStudy } from './live-study.ts';
import type { RunSettings } from './page-settings.ts';
import { trouble } from './trouble.ts';

export interface PlannedRun {
  readonly title: string;
  readonly scenario: Scenario;
  /** Left out: that of the settings. */
  readonly seed?: string;
}

export interface DoneRun {
  readonly title: string;
  readonly summary: StudySummary;
}

/** In the order of the plan; those not yet done are left out. Undefined until the first. */
export type LiveRuns = HTMLElement & { readonly value: readonly DoneRun[] | undefined };

export interface LiveRunsOptions {
  /** Asked at every start. */
  readonly plan: () => readonly PlannedRun[];
  readonly settings: () => RunSettings;
  /** A change in any of these starts anew. */
  readonly forms: readonly HTMLElement[];
  /** Named in what the line says: "twelve months". */
  readonly what: string;
  /** What the reader changed from the household's file, where no other line of the page says it. */
  readonly changes?: () => readonly string[];
  /** Waits until this study has settled on what its form says. */
  readonly after?: { readonly study: LiveStudy; readonly form: HTMLElement };
}

const COARSE_DRAWS = 20;

export function liveRuns(options: LiveRunsOptions): LiveRuns {
  const line = html`<div class="run screen-only"></div>`;
  const root = html`<div class="run-place">${line}</div>` as HTMLElement & { value: LiveRuns['value'] };
  let stop = new AbortController();
  const tell = (done: readonly DoneRun[]) => {
    root.value = done;
    root.dispatchEvent(new CustomEvent('input'));
  };
  const run = async () => {
    stop.abort();
    const mine = (stop = new AbortController());
    const hands = hired(mine.signal);
    try {
      const { draws, seed } = options.settings();
      const plan = options.plan();
      const changes = options.changes?.();
      const passes = passesOf(draws);
      const total = passes.reduce((sum, n) => sum + n * plan.length, 0);
      const cancel = () => (mine.abort(), show(line, stoppedLine(options.what, run)));
      show(line, progressLine({ drawsDone: 0, draws: total }, cancel));
      const done = new Map<number, DoneRun>();
      let before = 0;
      for (const pass of passes) {
        for (const [i, { title, scenario, seed: own }] of plan.entries()) {
          for await (const progress of runStudy(scenario, {
            draws: pass,
            seed: own ?? seed,
            hands,
            signal: mine.signal,
          })) {
            if (mine.signal.aborted) return;
            advance(line, { drawsDone: before + progress.drawsDone, draws: total });
            if (progress.settled) done.set(i, { title, summary: progress.summary! });
          }
          if (mine.signal.aborted) return;
          before += pass;
          tell([...plan.keys()].flatMap((at) => done.get(at) ?? []));
        }
      }
      show(line, [
        html`<span role="status"
          >Settled: ${options.what}, ${counted(draws, 'outage')} each, simulated in this
          page.${changesSentence(changes)}</span
        >`,
      ]);
    } catch (error) {
      if (mine.signal.aborted) return;
      show(line, [trouble(error, run)]);
    } finally {
      hands.forEach((hand) => hand.dismiss());
    }
  };
  startWith(options, {
    run: () => void run(),
    wait: () => {
      stop.abort();
      show(line, [
        html`<span>${sentenceCase(options.what)}: follows when the simulation above has settled.</span>`,
      ]);
    },
  });
  return root;
}

/** Workers for all the studies of one run: to start one takes longer than a coarse study. Stopping ends them at once. */
function hired(signal: AbortSignal): readonly StudyHand[] {
  const hands = studyHands();
  signal.addEventListener('abort', () => hands.forEach((hand) => hand.dismiss()), { once: true });
  return hands;
}

/** Draws of each round: [20, 100], or [30] where a coarse round would save little. */
function passesOf(draws: number): readonly number[] {
  return draws > 2 * COARSE_DRAWS ? [COARSE_DRAWS, draws] : [draws];
}

/** Runs now or when `after` has settled, and again whenever a form changes. */
function startWith(
  { after, forms, settings }: LiveRunsOptions,
  { run, wait }: { readonly run: () => void; readonly wait: () => void },
): void {
  let stale: StudySummary | undefined;
  const ready = () => {
    if (!after) return true;
    const { draws, seed } = settings();
    const { value } = after.study;
    return value !== stale && value?.provenance.draws === draws && value.provenance.seed === seed;
  };
  let timer: ReturnType<typeof setTimeout>;
  const begin = () => (ready() ? run() : wait());
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(begin, SETTLE_MS);
  };
  for (const form of forms) form.addEventListener('input', soon);
  after?.study.addEventListener('input', () => (ready() ? soon() : wait()));
  after?.form.addEventListener('input', () => {
    stale = after.study.value;
    clearTimeout(timer);
    wait();
  });
  begin();
}

function stoppedLine(what: string, again: () => Promise<void>): HTMLElement[] {
  return [
    html`<span role="status">Stopped. What is shown of the ${what} is what was done until then.</span>`,
    runButton('Run again', again),
  ];
}

function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
