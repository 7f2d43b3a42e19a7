/** The form that describes a household, its checks, and the answer beside it. */
import { html } from '../elements.ts';
import { scenarioHash, type Scenario, type ScenarioSpec } from '@rideout/sim';
import { embeddedStudy } from './embedded-study.ts';
import { houseAnswer, type HouseAnswer } from './house-answer.ts';
import { checkHouse, type HouseCheck } from './house-check.ts';
import { circuitsPart } from './house-circuits.ts';
import { comparisonsPart, personPart } from './house-comparisons.ts';
import { HouseDraft } from './house-draft.ts';
import { HouseFields, pressButton } from './house-fields.ts';
import { focusAgain, focusIn } from './house-focus.ts';
import { draftOffer } from './house-draft-offer.ts';
import { browserStore, KeptDrafts } from './house-kept-drafts.ts';
import { houseFindings } from './house-findings.ts';
import { fileButton } from './house-files-given.ts';
import { writtenHouse } from './house-from-scenario.ts';
import { openAndSave } from './house-open-save.ts';
import { outagePart, placePart } from './house-place.ts';
import { pageTables } from './house-page-tables.ts';
import type { Path } from './house-schema.ts';
import { strategiesPart } from './house-strategies.ts';
import type { HouseTables } from './house-tables.ts';
import { fieldLinks, showTroubles } from './house-troubles.ts';
import { unitsPart } from './house-units.ts';
import { lookTwice, lookTwiceAt } from './look-twice.ts';
import { lookForm, lookPart, usualLook } from './look-form.ts';
import { PageLink } from './page-link.ts';
import type { SettingsForm } from './settings-forms.ts';
import { complaintsNote } from './trouble.ts';
import type { Look } from '../charts/look.ts';
import { ownStyle } from './house-own-style.ts';
import formStyle from '../style/house-form.css?inline';

export interface HouseEditor {
  readonly element: HTMLElement;
  /** The newest answer: an input whose value is a StudySummary. */
  readonly live: HouseAnswer['live'];
  /** How times and temperatures are written. */
  readonly look: SettingsForm<Look>;
  /** The household that the newest answer is, or will be, of. */
  readonly scenario: () => Scenario;
}

const CHECK_MS = 200; // a word is typed letter by letter

export function describeHouse(): HouseEditor {
  const study = embeddedStudy();
  const tables = pageTables();
  const draft = new HouseDraft(writtenHouse(study.scenario, tables));
  const look = lookForm(usualLook(), { clock: true, temperature: true });
  const link = new PageLink([lookPart(look)]);
  const fields = new HouseFields(draft, () => look.value);
  const answer = houseAnswer(study, study.scenario);
  const form = html`<div class="house-form"></div>`;
  const mending = html`<div>${lookTwice()}</div>`;
  let faults = 0;
  let last = study.scenario;
  const check = () => {
    const found = checkHouse(draft.spec, draft.files, tables);
    faults = found.findings.length + found.missing.profiles.length + found.missing.years.length;
    mending.replaceChildren(...whatToMend(form, found, fields));
    if (!found.scenario) {
      answer.holdBack(faults);
      return findings.follow(faults);
    }
    if (scenarioHash(found.scenario) !== scenarioHash(last)) last = found.scenario;
    answer.ask(last);
    findings.follow(0);
  };
  let waiting: ReturnType<typeof setTimeout>;
  draft.onChange((change, at) => {
    if (change === 'shape') drawForm(form, fields, tables, at);
    clearTimeout(waiting);
    waiting = setTimeout(check, CHECK_MS);
  });
  look.addEventListener('input', () => drawForm(form, fields, tables));
  drawForm(form, fields, tables);
  const drafts = new KeptDrafts(browserStore(), scenarioHash(study.scenario), Date.now());
  const files = openAndSave(fields, tables, () => faults, drafts);
  const offered = draftOffer(drafts, (spec) => isTaken(draft, spec, tables));
  const findings = houseFindings(
    answer.live,
    study.seed,
    () => last,
    fieldLinks(form, () => draft.spec),
    look,
  );
  const element = html`<div class="house">
    ${ownStyle(formStyle)} ${answer.element}
    <div class="screen-only">${complaintsNote(link)}${offered}${files}${look}${mending}${form}</div>
    ${findings.element}
  </div>`;
  return { element, live: answer.live, look, scenario: () => last };
}

/** The form shows another household; false, and as it was, where it cannot. */
function isTaken(draft: HouseDraft, spec: ScenarioSpec, tables: HouseTables): boolean {
  const before = draft.spec;
  try {
    checkHouse(spec, draft.files, tables);
    draft.replace(spec);
    return true;
  } catch {
    draft.replace(before);
    return false;
  }
}

/** The findings, and a button for each file that is still to be given. */
function whatToMend(
  form: HTMLElement,
  { findings, missing, notes }: HouseCheck,
  fields: HouseFields,
): HTMLElement[] {
  const troubles = showTroubles(form, findings, fields.draft.spec);
  const wanted = [
    ...missing.profiles.map((name) => [name, 'profile'] as const),
    ...missing.years.map((name) => [name, 'year'] as const),
  ].map(
    ([name, use]) =>
      html`<div class="trouble">
        <p>This household names the file <strong>${name}</strong>, which a page cannot open by itself.</p>
        ${fileButton(`Choose ${name}`, '.csv,.epw,.txt', use, fields)}
      </div>`,
  );
  return [
    ...(troubles ? [troubles] : []),
    ...partsToLeaveOut(findings, fields),
    ...wanted,
    lookTwiceAt(notes),
  ];
}

/** Parts of a file that this form has no fields for: kept as they are, or left out where they no longer fit. */
const KEPT_PARTS: Readonly<Record<string, string>> = {
  ladder: 'the ladder (what to buy next)',
  needs: 'the needs as a family would notice them',
  unknowns: 'what is not known',
  outageLengths: 'how long outages last',
  sources: 'the generator and other sources',
};

function partsToLeaveOut(findings: HouseCheck['findings'], { draft }: HouseFields): HTMLElement[] {
  const parts = [...new Set(findings.map(({ path }) => path.split(/[.[]/)[0]!))];
  return parts.flatMap((part) => {
    const name = KEPT_PARTS[part];
    if (name === undefined || draft.at([part]) === undefined) return [];
    return [
      html`<div class="trouble">
        <p>This form has no fields for ${name}. Mend it in the file, or leave it out of this one.</p>
        ${pressButton(`Leave out ${name}`, () => draft.set([part], undefined, 'shape'))}
      </div>`,
    ];
  });
}

/** Every part anew; what was open stays open, and the focus goes to where one goes on. `at`: what was changed. */
function drawForm(form: HTMLElement, fields: HouseFields, tables: HouseTables, at?: Path): void {
  const focused = focusIn(form);
  const open = new Set([...form.querySelectorAll<HTMLDetailsElement>('details[open]')].map(detailsName));
  const parts: readonly [string, string, HTMLElement][] = [
    ['place', 'Place and weather', placePart(fields, tables)],
    ['outage', 'The outage', outagePart(fields)],
    ['units', 'Units, batteries and panels', unitsPart(fields)],
    ['circuits', 'Circuits', circuitsPart(fields, tables)],
    ['person', 'The household’s day', personPart(fields)],
    ['strategies', 'Strategies', strategiesPart(fields)],
    ['comparisons', 'Households compared', comparisonsPart(fields)],
  ];
  form.replaceChildren(
    ...parts.map(
      ([id, title, part]) =>
        html`<section aria-labelledby=${`house-part-${id}`}>
          <h2 id=${`house-part-${id}`}>${title}</h2>
          ${part}
        </section>`,
    ),
  );
  for (const details of form.querySelectorAll<HTMLDetailsElement>('details'))
    if (open.has(detailsName(details))) details.open = true;
  if (focused) focusAgain(form, focused, at);
}

/** What it is about, whatever its place in the list. */
function detailsName(details: HTMLDetailsElement): string {
  return details.dataset['about'] ?? '';
}
