/** The line on the page that writes one outage out minute by minute: an input whose value is what it wrote. */
import type { DrawTrace, Scenario } from '@rideout/sim';
import { html } from '../elements.ts';
import { openTracer, type DrawTracer } from '../study-client.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords } from './changed-words.ts';
import { placeShown } from './household-shown.ts';
import { SETTLE_MS, show } from './live-study.ts';
import type { OutagePage } from './outage-page.ts';
import { trouble } from './trouble.ts';

/** One outage, with the household it befell: as changed by the reader. */
export interface WrittenOutage {
  readonly trace: DrawTrace;
  readonly scenario: Scenario;
  readonly seed: string;
  /** What the reader changed from the household's file. */
  readonly changes: readonly string[];
}

export type LiveTrace = HTMLElement & { readonly value: WrittenOutage | undefined };

export function liveTrace(page: OutagePage): LiveTrace {
  const line = html`<div class="outage-line screen-only"></div>`;
  const root = html`<div>${line}</div>` as HTMLElement & { value: WrittenOutage | undefined };
  let tracer: { readonly key: string; readonly hand: DrawTracer; readonly scenario: Scenario } | undefined;
  let asked = 0;
  const tracerNow = () => {
    const key = JSON.stringify({ ...page.runForm.value, draws: undefined });
    if (tracer?.key === key) return tracer;
    tracer?.hand.dismiss();
    const scenario = changedScenario(page.study.scenario, page.runForm.value);
    return (tracer = { key, scenario, hand: openTracer(scenario, page.runForm.value.seed) });
  };
  const write = async () => {
    const mine = ++asked;
    const draw = page.outageForm.value;
    const { seed } = page.runForm.value;
    const changes = changedWords(page.study.scenario, page.runForm.value);
    show(line, [html`<span role="status">Writing out outage ${draw} …</span>`]);
    try {
      const { hand, scenario } = tracerNow();
      const trace = await hand.trace({ draw, ...positions(page) });
      if (mine !== asked) return;
      root.value = { trace, scenario, seed, changes };
      show(line, [html`<span role="status">Outage ${draw} is written out below.</span>`]);
      root.dispatchEvent(new CustomEvent('input'));
    } catch (error) {
      if (mine !== asked) return;
      tracer?.hand.dismiss();
      tracer = undefined;
      show(line, [trouble(error, write)]);
    }
  };
  let waiting: ReturnType<typeof setTimeout>;
  let before = wanted(page);
  const soon = () => {
    if (wanted(page) === before) return;
    before = wanted(page);
    clearTimeout(waiting);
    waiting = setTimeout(() => void write(), SETTLE_MS);
  };
  for (const form of [page.runForm, page.viewForm, page.outageForm]) form.addEventListener('input', soon);
  void write();
  return root;
}

/** Changes when, and only when, another outage must be written out. */
function wanted({ runForm, viewForm, outageForm }: OutagePage): string {
  const run = { ...runForm.value, draws: undefined };
  return JSON.stringify([run, viewForm.value, outageForm.value]);
}

function positions(page: OutagePage): { alternative: number; strategy: number } {
  const { strategyIds } = page.viewForm.value;
  return {
    alternative: placeShown(page, page.viewForm.value),
    strategy: page.choices.strategies.findIndex((s) => s.id === strategyIds[0]),
  };
}
