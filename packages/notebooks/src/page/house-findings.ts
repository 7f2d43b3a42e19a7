/** What the checks find in the household as described, under its form: most pressing first, each with what to do. */
import {
  SEVERITIES,
  SEVERITY_WORDS,
  scenarioHash,
  type CheckFinding,
  type CheckReport,
  type Scenario,
  type Severity,
} from '@rideout/sim';
import { provenanceText } from '../charts/chart-frame.ts';
import { clockTimesIn, degreesIn, inDegrees, type Look } from '../charts/look.ts';
import { lookOver } from '../check-client.ts';
import { html } from '../elements.ts';
import { saidBy } from '../error-words.ts';
import { heldBackWords } from './house-answer.ts';
import type { FieldLinks } from './house-troubles.ts';
import type { LiveStudy } from './live-study.ts';
import type { SettingsForm } from './settings-forms.ts';

const DRAWS = 8; // outages watched; the command line watches more
const FOLLOWS =
  'This is of the household as it was: what you have changed is looked over once its days are worked out.';
const SIGNS: Readonly<Record<Severity, string>> = { mend: '■', watch: '▲', note: '○' };

export interface HouseFindings {
  readonly element: HTMLElement;
  /** The form has changed, and has so many faults: says whether the list is of it, and follows it with its links. */
  readonly follow: (faults: number) => void;
}

/** Looks again each time that the answer has settled on another household. */
export function houseFindings(
  live: LiveStudy,
  seed: string,
  scenario: () => Scenario,
  links: FieldLinks,
  look: SettingsForm<Look>,
): HouseFindings {
  const place = html`<div></div>`;
  const held = html`<p class="findings-held"></p>`;
  let stop = new AbortController();
  let last: Scenario | undefined;
  let report: CheckReport | undefined;
  let faultsNow = 0;
  const isOfAnother = () => last !== undefined && scenarioHash(scenario()) !== scenarioHash(last);
  const follow = (faults = faultsNow) => {
    faultsNow = faults;
    held.textContent = faults > 0 ? heldBackWords(faults) : isOfAnother() ? FOLLOWS : '';
    links.follow(place);
  };
  const tell = () => {
    if (report) place.replaceChildren(...told(inWords(report, look.value), links.to));
    follow();
  };
  const lookAgain = async () => {
    const now = scenario();
    if (last !== undefined && !isOfAnother()) return;
    last = now;
    follow();
    stop.abort();
    const mine = (stop = new AbortController());
    place.replaceChildren(html`<p class="soft" role="status">Looking the household over …</p>`);
    try {
      const found = await lookOver(now, { seed, draws: DRAWS }, mine.signal);
      if (mine.signal.aborted) return;
      report = found;
      tell();
    } catch (error) {
      const said = saidBy(error);
      place.replaceChildren(html`<p class="soft">The checks could not be made: ${said}</p>`);
    }
  };
  look.addEventListener('input', tell);
  live.addEventListener('input', () => {
    if (live.rows) void lookAgain();
  });
  if (live.value) void lookAgain(); // the page came with its answer
  const element = html`<section class="house-findings" aria-labelledby="findings-title">
    <h2 id="findings-title">What to look into</h2>
    ${held} ${place}
  </section>`;
  return { element, follow };
}

/** Temperatures as the reader writes them. */
function inWords(report: CheckReport, look: Look): CheckReport {
  const words = (text: string) => clockTimesIn(degreesIn(text, look), look.clock);
  return {
    ...report,
    findings: report.findings.map((finding) => ({
      ...finding,
      found: words(finding.found),
      todo: words(finding.todo),
      numbers: finding.numbers.map((n) =>
        n.unit === '°C' ? { ...n, value: inDegrees(n.value, look), unit: `°${look.temperature}` } : n,
      ),
    })),
  };
}

function told(report: CheckReport, goTo: (where: string) => HTMLElement | string): HTMLElement[] {
  const { findings, unchecked, subjects, caution, watchedDays, provenance } = report;
  const looked = subjects.filter((subject) => subject.looked > 0).length;
  return [
    html`<p>
      ${countWords(findings)} ${looked} of ${subjects.length} checks had something to look at;
      ${provenance.draws} outages were watched for ${watchedDays} days each with everything on.
    </p>`,
    ...SEVERITIES.flatMap((severity) => severityList(severity, findings, goTo)),
    ...(unchecked.length > 0
      ? [
          html`<details data-about="unchecked">
            <summary>
              ${unchecked.length} things could not be looked at, as the file does not say enough
            </summary>
            <ul>
              ${unchecked.map(({ why, where, keys }) => html`<li>${why} <span class="soft">${where}${keys.length ? `; it would take ${keys.join(', ')}` : ''}</span></li>`)}
            </ul>
          </details>`,
        ]
      : []),
    html`<p class="house-caution">${caution}</p>`,
    html`<p class="provenance">${provenanceText(provenance)}</p>`,
  ];
}

function countWords(findings: readonly CheckFinding[]): string {
  const counts = SEVERITIES.map((s) => ({ s, n: findings.filter((f) => f.severity === s).length })).filter(
    ({ n }) => n > 0,
  );
  if (counts.length === 0) return 'Nothing was found; that is not to say that nothing is wrong.';
  return `${counts.map(({ s, n }) => `${SEVERITY_WORDS[s].title}: ${n}`).join('. ')}.`;
}

function severityList(
  severity: Severity,
  findings: readonly CheckFinding[],
  goTo: (where: string) => HTMLElement | string,
): HTMLElement[] {
  const own = findings.filter((finding) => finding.severity === severity);
  if (own.length === 0) return [];
  const { title, meaning } = SEVERITY_WORDS[severity];
  const words = html`<span
    ><span aria-hidden="true">${SIGNS[severity]}</span> ${title} <span class="soft">${meaning}</span></span
  >`;
  const list = html`<ul class=${`findings ${severity}`}>
    ${own.map((finding) => html`<li>${findingWords(finding, goTo)}</li>`)}
  </ul>`;
  if (severity !== 'note') return [html`<h3>${words}</h3>`, list];
  return [
    html`<details data-about="notes">
      <summary>${words}: ${own.length}</summary>
      ${list}
    </details>`,
  ];
}

function findingWords(
  { where, found, todo, rule, numbers }: CheckFinding,
  goTo: (where: string) => HTMLElement | string,
): HTMLElement {
  const figures = numbers.map(
    ({ what, value, unit }) => `${what} ${shortly(value)}${unit ? `\u00a0${unit}` : ''}`,
  );
  return html`<div>
    <p>${found} <strong>${todo}</strong></p>
    <p class="soft">
      ${figures.length ? `${figures.join('; ')}. ` : ''}Rule: ${rule.says} (${rule.source}). ${goTo(where)}
    </p>
  </div>`;
}

function shortly(value: number): string {
  return String(Number(value.toPrecision(3)));
}
