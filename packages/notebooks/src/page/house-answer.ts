/** The answer beside the form: run again whenever the household can be used, always for the newest one. */
import { html } from '../elements.ts';
import type { Scenario, StudySummary } from '@rideout/sim';
import type { Shown } from '../charts/nine-in-ten-words.ts';
import type { EmbeddedStudy } from './embedded-study.ts';
import { headline } from './headline.ts';
import { liveStudy, type LiveStudy } from './live-study.ts';
import type { RunSettings } from './page-settings.ts';
import type { SettingsForm } from './settings-forms.ts';

export interface HouseAnswer {
  readonly element: HTMLElement;
  readonly live: LiveStudy;
  /** Simulates this household; the one before is dropped. */
  readonly ask: (scenario: Scenario) => void;
  /** How many things stand in the way of a new answer. */
  readonly holdBack: (faults: number) => void;
}

/** The first household of the study, with every strategy. */
export function allShown(summary: StudySummary): Shown {
  return { alternativeId: summary.strategies[0]!.alternativeId };
}

export function houseAnswer(own: EmbeddedStudy, start: Scenario): HouseAnswer {
  let scenario = start;
  const settings = {
    months: undefined,
    modulesPerUnit: undefined,
    stormLed: undefined,
    carriedOutBy: undefined,
    draws: own.draws,
    seed: own.seed,
  } satisfies RunSettings;
  const asked = Object.assign(html`<span></span>`, { value: settings }) as SettingsForm<RunSettings>;
  const study: EmbeddedStudy = {
    get scenario() {
      return scenario;
    },
    seed: own.seed,
    draws: own.draws,
    summary: own.summary,
  };
  const live = liveStudy(study, asked);
  const answer = html`<div></div>`;
  const note = html`<p class="house-held soft" role="status"></p>`;
  const tell = () => {
    if (live.value) answer.replaceChildren(...shortAnswer(live.value));
  };
  live.addEventListener('input', tell);
  tell();
  return {
    element: html`<aside class="house-answer" aria-label="The answer">${answer}${note}${live}</aside>`,
    live,
    ask(next) {
      note.textContent = '';
      if (next === scenario) return;
      scenario = next;
      asked.dispatchEvent(new CustomEvent('input'));
    },
    holdBack(faults) {
      note.textContent = heldBackWords(faults);
    },
  };
}

/** Over whatever is still of the household before it had so many faults. */
export function heldBackWords(faults: number): string {
  const things = faults === 1 ? 'one thing is' : `${faults} things are`;
  return `This is of the household as it was: ${things} to be mended before it can be worked out again.`;
}

function shortAnswer(summary: StudySummary): HTMLElement[] {
  return [headline(summary, allShown(summary))];
}
