/** The exact calls that repeat the page: in code, and on the command line. */
import { html } from '../elements.ts';
import type { OpenPage } from './open-page.ts';
import type { RunSettings, ViewSettings } from './page-settings.ts';
import { slug } from './slug.ts';
import { positions, seedNames, type ReseedPage, type Repeats } from './reseed-page.ts';

export interface RepeatedStudy {
  readonly file: string;
  readonly run: Pick<RunSettings, 'seed' | 'draws' | 'months'>;
  readonly alternative: { readonly id: string; readonly position: number };
  readonly strategy: { readonly id: string; readonly position: number };
  readonly repeats: Repeats;
}

export function repeatCalls(
  page: ReseedPage,
  run: RunSettings,
  shown: ViewSettings,
  repeats: Repeats,
): HTMLElement {
  const study = repeatedStudy(page, run, shown, repeats);
  return html`<section aria-labelledby="repeat-title">
    <h2 id="repeat-title">Repeat it elsewhere</h2>
    <p>
      The same figures, to the last bit, from the file that this page was published from (here called
      <code>${study.file}</code>). In code:
    </p>
    ${codeBlock('repeat-code', codeText(study), 'TypeScript')}
    <p>On the command line: the study with its files, the seeds, and what matters.</p>
    ${codeBlock('repeat-commands', commandText(study), 'commands')}
  </section>`;
}

function repeatedStudy(
  page: OpenPage,
  run: RunSettings,
  shown: ViewSettings,
  repeats: Repeats,
): RepeatedStudy {
  const at = positions(page, shown);
  return {
    file: `${slug(page.study.scenario.title) || 'household'}.yaml`,
    run,
    alternative: { id: shown.alternativeId, position: at.alternative },
    strategy: { id: shown.strategyIds[0]!, position: at.strategy },
    repeats,
  };
}

/** Ten lines of a module that Node runs. */
export function codeText({ file, run, alternative, strategy }: RepeatedStudy): string {
  const months = run.months ? `, { months: [${run.months.join(', ')}] }` : '';
  return `import { prepareStudy, runningEstimate, runShard, summarise } from '@rideout/sim';
import { loadScenario } from '@rideout/sim/node';

const { scenario } = loadScenario('${file}'${months});
const study = prepareStudy(scenario, { seed: ${quoted(run.seed)} });
const rows = runShard(study, 0, ${run.draws}); // draws 0 to ${run.draws - 1}, everything in them
const { strategies } = summarise(study, rows);
const cell = strategies.find((s) => s.alternativeId === '${alternative.id}' && s.strategyId === '${strategy.id}');
console.log(cell.nineInTenDays, cell.medianDays); // value, low, high
console.log(runningEstimate(rows, { alternative: ${alternative.position}, strategy: ${strategy.position} }));
`;
}

/** A line each. */
export function commandText({ file, run, alternative, strategy, repeats }: RepeatedStudy): string {
  const months = run.months ? ` --months ${run.months.join(',')}` : '';
  const seeds = seedNames(run.seed, repeats.seeds);
  return `rideout days ${file} --seed ${shellWord(run.seed)} --draws ${run.draws}${months} --out outcomes
${seeds
  .slice(1)
  .map((seed) => `rideout days ${file} --seed ${shellWord(seed)} --draws ${run.draws}${months}`)
  .join('\n')}
rideout matters ${file} --seed ${shellWord(run.seed)} --draws ${repeats.rows}${months} --alternative ${alternative.id} --strategy ${strategy.id}
`;
}

function quoted(text: string): string {
  return JSON.stringify(text);
}

/** For a shell that takes single quotes. */
function shellWord(text: string): string {
  return /^[\w.-]+$/.test(text) && !text.startsWith('-') ? text : `'${text.replaceAll("'", `'\\''`)}'`;
}

function codeBlock(id: string, text: string, what: string): HTMLElement {
  const said = html`<span role="status"></span>`;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      said.textContent = 'Copied.';
    } catch {
      getSelection()?.selectAllChildren(document.getElementById(id)!);
      said.textContent = 'Selected: copy it with the keyboard.';
    }
  };
  return html`<div class="code-block">
    <pre id=${id}>${text}</pre>
    <p class="screen-only">
      <button type="button" onclick=${() => void copy()}>Copy the ${what}</button> ${said}
    </p>
  </div>`;
}
