/** The form that describes a household, its checks, and the answer beside it. */
import { html } from '../elements.ts';
import { scenarioHash, type Scenario } from '@rideout/sim';
import { embeddedStudy } from './embedded-study.ts';
import { houseAnswer, type HouseAnswer } from './house-answer.ts';
import { checkHouse, type HouseCheck } from './house-check.ts';
import { circuitsPart } from './house-circuits.ts';
import { comparisonsPart, personPart } from './house-comparisons.ts';
import { HouseDraft } from './house-draft.ts';
import { HouseFields } from './house-fields.ts';
import { fileButton } from './house-files-given.ts';
import { writtenHouse } from './house-from-scenario.ts';
import { openAndSave } from './house-open-save.ts';
import { outagePart, placePart } from './house-place.ts';
import { pageTables } from './house-page-tables.ts';
import { strategiesPart } from './house-strategies.ts';
import type { HouseTables } from './house-tables.ts';
import { showTroubles } from './house-troubles.ts';
import { unitsPart } from './house-units.ts';
import { ownStyle } from './house-own-style.ts';
import formStyle from '../style/house-form.css?inline';

export interface HouseEditor {
  readonly element: HTMLElement;
  /** The newest answer: an input whose value is a StudySummary. */
  readonly live: HouseAnswer['live'];
  /** The household that the newest answer is, or will be, of. */
  readonly scenario: () => Scenario;
}

const CHECK_MS = 200; // a word is typed letter by letter

export function describeHouse(): HouseEditor {
  const study = embeddedStudy();
  const tables = pageTables();
  const draft = new HouseDraft(writtenHouse(study.scenario, tables));
  const fields = new HouseFields(draft);
  const answer = houseAnswer(study, study.scenario);
  const form = html`<div class="house-form"></div>`;
  const mending = html`<div></div>`;
  let faults = 0;
  let last = study.scenario;
  const check = () => {
    const found = checkHouse(draft.spec, draft.files, tables);
    faults = found.findings.length + found.missing.profiles.length + found.missing.years.length;
    mending.replaceChildren(...whatToMend(form, found, fields));
    if (!found.scenario) return answer.holdBack(faults);
    if (scenarioHash(found.scenario) !== scenarioHash(last)) last = found.scenario;
    answer.ask(last);
  };
  let waiting: ReturnType<typeof setTimeout>;
  draft.onChange((change) => {
    if (change === 'shape') drawForm(form, fields, tables);
    clearTimeout(waiting);
    waiting = setTimeout(check, CHECK_MS);
  });
  drawForm(form, fields, tables);
  const files = openAndSave(fields, tables, () => faults);
  const element = html`<div class="house">
    ${ownStyle(formStyle)} ${answer.element}
    <div class="screen-only">${files}${mending}${form}</div>
  </div>`;
  return { element, live: answer.live, scenario: () => last };
}

/** The findings, and a button for each file that is still to be given. */
function whatToMend(
  form: HTMLElement,
  { findings, missing }: HouseCheck,
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
  return troubles ? [troubles, ...wanted] : wanted;
}

/** Every part anew; what was open stays open, and the focus stays where it was. */
function drawForm(form: HTMLElement, fields: HouseFields, tables: HouseTables): void {
  const focused = form.contains(document.activeElement) ? document.activeElement?.id : undefined;
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
  if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
}

/** What it is about, whatever its place in the list. */
function detailsName(details: HTMLDetailsElement): string {
  return details.dataset['about'] ?? '';
}
