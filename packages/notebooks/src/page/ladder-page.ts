/** What the page "What to buy next" starts from: the ladder of the household's file, its money and its sureness. */
import * as Inputs from '@observablehq/inputs';
import { findLadder, type LadderAnswer, type Scenario } from '@rideout/sim';
import { moneyText } from '../charts/ladder-words.ts';
import { html } from '../elements.ts';
import { studyAsker } from '../study-asker.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords, withChanges } from './changed-words.ts';
import { embeddedStudy } from './embedded-study.ts';
import { liveWork, type LiveWork } from './live-work.ts';
import { openPage, type OpenPage } from './open-page.ts';
import { wordReader, type LinkPart } from './page-link.ts';
import { settingFault, spaced } from './setting-fault.ts';
import { fixedForm, group, runForm, translated, type SettingsForm } from './settings-forms.ts';

export interface LadderSettings {
  /** Most money for all steps; undefined: as in the file, or any. */
  readonly budget: number | undefined;
  /** The share of outages that must reach the days counted. */
  readonly confidence: number;
}

export interface LadderPage extends OpenPage {
  readonly moneyForm: SettingsForm<LadderSettings>;
}

const DRAWS_AT_FIRST = 100;
/** Of the outages that tell the gains; the order is chosen on fewer, as many households are tried then. */
const CHOOSING_SHARE = 0.4;
const LEAST_CHOOSING = 20;
const SHARES = [0.5, 0.8, 0.9, 0.95];
const MOST_MONEY = 10_000_000;

/** Undefined where the file has no ladder. */
export function openLadder(): LadderPage | undefined {
  const { scenario, seed, draws } = embeddedStudy();
  const { ladder } = scenario;
  if (!ladder) return undefined;
  const usual: LadderSettings = { budget: ladder.budget, confidence: ladder.confidence };
  const moneyForm = moneyControls(usual);
  const page = openPage({
    study: { scenario, seed, draws: Math.min(draws, DRAWS_AT_FIRST) },
    runForm: (s, asked) => runForm(s, asked, ['modulesPerUnit', 'carriedOutBy']), // the ladder decides these
    viewForm: (_, start) => fixedForm(start),
    parts: [moneyPart(moneyForm, usual)],
  });
  return { ...page, moneyForm };
}

function moneyControls({ budget, confidence }: LadderSettings): SettingsForm<LadderSettings> {
  const shares = [...new Set([...SHARES, confidence])].sort();
  const form = Inputs.form(
    {
      budget: moneyField('Most money for all steps (empty: any)', budget),
      confidence: Inputs.select(shares, {
        label: 'The days that so many outages reach',
        value: confidence,
        format: (share) => `${Math.round(share * 100)}\u00a0%`,
      }),
    },
    {
      template: (i) =>
        html`<div class="controls screen-only">
          ${group('The money, and how surely', i.budget, i.confidence)}
        </div>`,
    },
  );
  return translated(
    form,
    (shown): LadderSettings => ({ ...shown }),
    (set) => ({ ...set }),
  );
}

function said(budget: number | undefined): string {
  return budget === undefined ? '' : String(budget);
}

/** Undefined: any. An amount that cannot be is told of under the field, and the one before it still holds. */
function moneyField(label: string, start: number | undefined): SettingsForm<number | undefined> {
  const form = Inputs.text({ label, value: said(start) });
  const input = form.querySelector<HTMLInputElement>('input')!;
  const { note, tell } = settingFault(input);
  let budget = start;
  input.addEventListener('input', (event) => {
    const amount = moneyFrom(input.value);
    const isFaulty = input.value.trim() !== '' && amount === undefined;
    if (isFaulty)
      event.stopPropagation(); // nothing has changed for the rest of the page
    else budget = amount;
    const holds = budget === undefined ? 'any amount' : spaced(budget);
    tell(
      isFaulty
        ? `An amount of money from 0 to ${spaced(MOST_MONEY)}, please, or nothing; still showing ${holds}.`
        : '',
    );
  });
  const outer = html`<div>${form}${note}</div>`;
  Object.defineProperty(outer, 'value', {
    get: () => budget,
    set: (to: number | undefined) => {
      budget = to;
      form.value = said(to);
      tell('');
    },
  });
  return outer as SettingsForm<number | undefined>;
}

/** Digits, perhaps grouped by spaces or commas; undefined for anything else. */
function moneyFrom(text: string): number | undefined {
  const plain = text.replace(/[\s,\u00a0]/g, '');
  return /^\d+(\.\d+)?$/.test(plain) && Number(plain) <= MOST_MONEY ? Number(plain) : undefined;
}

function moneyPart(form: SettingsForm<LadderSettings>, usual: LadderSettings): LinkPart {
  return {
    words: ['budget', 'confidence'],
    forms: [form],
    say: () => {
      const { budget, confidence } = form.value;
      const words = new URLSearchParams();
      if (budget !== usual.budget && budget !== undefined) words.set('budget', String(budget));
      if (confidence !== usual.confidence) words.set('confidence', String(confidence));
      return words;
    },
    take: (words) => {
      const complaints: string[] = [];
      const read = wordReader(words, complaints);
      const known = (text: string) => [...SHARES, usual.confidence].find((share) => String(share) === text);
      form.value = {
        budget: read('budget', usual.budget, moneyFrom, 'an amount of money'),
        confidence: read('confidence', usual.confidence, known, `one of ${SHARES.join(', ')}`),
      };
      return { complaints };
    },
  };
}

/** The share of outages stands in the chart's own title. */
function moneyWords({ ladder }: Scenario, { budget }: LadderSettings): string[] {
  if (budget === undefined || budget === ladder?.budget) return [];
  return [`at most ${moneyText(budget, ladder!)} for all steps`];
}

export function liveLadder({ study, runForm: run, moneyForm }: LadderPage): LiveWork<LadderAnswer> {
  const work = async (tell: (done: number) => void, stopped: AbortSignal) => {
    const asker = studyAsker(tell);
    stopped.addEventListener('abort', asker.dismiss, { once: true });
    const { seed, draws } = run.value;
    const choosingDraws = Math.max(LEAST_CHOOSING, Math.round(draws * CHOOSING_SHARE));
    try {
      const scenario = changedScenario(study.scenario, run.value);
      const money = moneyForm.value;
      const changes = [...changedWords(study.scenario, run.value), ...moneyWords(study.scenario, money)];
      const answer = await findLadder(scenario, { seed, draws, choosingDraws, ...money }, asker.ask);
      return withChanges(answer, changes);
    } finally {
      asker.dismiss();
    }
  };
  return liveWork({
    work,
    what: 'What to buy next',
    counted: 'runs',
    forms: [run, moneyForm],
    after: { source: new EventTarget(), done: () => true },
  });
}
