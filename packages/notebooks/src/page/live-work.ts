/**
 * The line on the page that does one long piece of work: an input whose value is what came of it.
 *
 * Like the line of the page's own study it begins anew when a setting changes, says how far it has come, can be
 * stopped, and says what to do when it cannot go on. It waits until what comes before it is done.
 */
import { html } from '../elements.ts';
import { runButton, SETTLE_MS, show } from './live-study.ts';
import { trouble } from './trouble.ts';

export type LiveWork<T> = HTMLElement & { readonly value: T | undefined };

export interface WorkOptions<T> {
  /** Tells how many are done, and of how many where that is known; ends at once when stopped. */
  readonly work: (tell: (done: number, of?: number) => void, stopped: AbortSignal) => Promise<T>;
  /** In the words of the line: "What matters". */
  readonly what: string;
  /** What is counted: "runs". */
  readonly counted: string;
  /** A change in any of these starts anew, as soon as it may begin. */
  readonly forms: readonly EventTarget[];
  /** What goes before, and whether it is done. */
  readonly after: { readonly source: EventTarget; readonly done: () => boolean };
}

export function liveWork<T>(options: WorkOptions<T>): LiveWork<T> {
  const { what, counted, after } = options;
  const line = html`<div class="run screen-only"></div>`;
  const root = html`<div class="run-place">${line}</div>` as HTMLElement & { value: T | undefined };
  let stop = new AbortController();
  const begin = async () => {
    stop.abort();
    const mine = (stop = new AbortController());
    const cancel = () => {
      mine.abort();
      show(line, [
        html`<span role="status">Stopped: ${what.charAt(0).toLowerCase()}${what.slice(1)}.</span>`,
        runButton('Run again', begin),
      ]);
    };
    const progress = workProgress(what, cancel);
    show(line, progress.elements);
    try {
      const value = await options.work((done, of) => progress.tell(done, of, counted), mine.signal);
      if (mine.signal.aborted) return;
      root.value = value;
      show(line, [
        html`<span role="status">Settled: ${what.charAt(0).toLowerCase()}${what.slice(1)}.</span>`,
      ]);
      root.dispatchEvent(new CustomEvent('input'));
    } catch (error) {
      if (!mine.signal.aborted) show(line, [trouble(error, begin)]);
    }
  };
  let timer: ReturnType<typeof setTimeout>;
  const soon = () => {
    clearTimeout(timer);
    stop.abort();
    if (after.done()) timer = setTimeout(() => void begin(), SETTLE_MS);
    else show(line, [html`<span>${what} follows when the simulation above has settled.</span>`]);
  };
  for (const source of [...options.forms, after.source]) source.addEventListener('input', soon);
  soon();
  return root;
}

/** The bar moves without being replaced, so that the focus on the button stays. */
function workProgress(what: string, cancel: () => void) {
  const bar = html`<progress
    max="1"
    value="0"
    aria-label=${`${what}, so far`}
  ></progress>` as HTMLProgressElement;
  const count = html`<span class="count">${what} …</span>`;
  return {
    elements: [bar, count, html`<button type="button" onclick=${cancel}>Stop</button>`],
    tell(done: number, of: number | undefined, counted: string) {
      if (of === undefined) bar.removeAttribute('value');
      else bar.value = done / of;
      count.textContent = `${what}: ${Math.round(done)}${of === undefined ? '' : ` of ${of}`} ${counted}`;
    },
  };
}
