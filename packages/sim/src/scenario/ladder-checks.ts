/** What the keys of a ladder cannot tell alone: names, prices, order. */
import type { Finding } from './findings.ts';
import type { FittingLadder } from './fitting-parts.ts';
import { spelledOut } from './household-parts.ts';
import type { LocatedDocument, Path } from './located-document.ts';
import { meantHint } from './nearest.ts';
import type { CheckedScenario } from './schema.ts';
import { spellPath, spellValue, valueAt } from './schema-findings.ts';
import type { LadderSpec, LadderStepSpec } from './schema-ladder.ts';

/** What the checks of one ladder report through. */
interface Told {
  readonly found?: string;
  readonly hint?: string | undefined;
}
type Report = (path: Path, expected: string, told?: Told) => void;

export interface LadderFindings {
  readonly start: readonly Finding[];
  /** Per step. */
  readonly steps: readonly (readonly Finding[])[];
}

/** Findings of the scenario's ladder, its households aside (`read-ladder.ts`). */
export function ladderFindings(
  scenario: CheckedScenario,
  { spec: ladder, unfit }: FittingLadder,
  document: LocatedDocument,
): LadderFindings {
  const findingsOf = (check: (report: Report) => void): Finding[] => {
    const findings: Finding[] = [];
    check((path, expected, { found, hint } = {}) => {
      const full = ['ladder', ...path];
      findings.push({
        file: document.file,
        line: document.lineOf(full),
        path: spellPath(scenario, full),
        found: found ?? spellValue(valueAt(scenario, full)),
        expected,
        hint,
      });
    });
    return findings;
  };
  return {
    start: findingsOf((report) => checkStart(scenario, ladder, report)),
    steps: ladder.steps.map((step, i) => {
      if (unfit.has(i)) return [];
      return findingsOf((report) => {
        checkId(ladder, i, report);
        checkNeeds(ladder, i, report);
        checkPrice(scenario, step, i, report);
        checkDeeds(scenario, ladder, step, i, report);
      });
    }),
  };
}

function checkStart(scenario: CheckedScenario, { start }: LadderSpec, report: Report): void {
  checkStrategy(scenario, start.strategy, ['start', 'strategy'], report);
  (start.without ?? []).forEach((path, i) => {
    if (spelledOut(scenario, [path]).length === 0)
      report(['start', 'without', i], 'the path of a part of the household, such as units.west');
  });
  checkPaths(start.change, ['start', 'change'], report);
}

function checkId({ steps }: LadderSpec, i: number, report: Report): void {
  const first = steps.findIndex((step) => step.id === steps[i]!.id);
  if (first !== i) report(['steps', i, 'id'], 'an id used once only among the steps');
}

function checkNeeds({ steps }: LadderSpec, i: number, report: Report): void {
  const ids = steps.map((s) => s.id);
  steps[i]!.needs.forEach((need, n) => {
    const path = ['steps', i, 'needs', n];
    const at = ids.indexOf(need);
    if (need === ids[i]) report(path, 'another step: none can come before itself');
    else if (at < 0) report(path, 'the id of a step', { hint: meantHint(need, ids) });
    else if (at > i)
      report(path, 'a step further up the list', { hint: 'Changes are made in the order of the list.' });
  });
}

function checkPrice({ prices }: CheckedScenario, step: LadderStepSpec, i: number, report: Report): void {
  const { price, buys } = step;
  if (price !== undefined && buys !== undefined)
    report(['steps', i, 'price'], 'either price or buys', { found: 'a price and a list of what it buys' });
  if ((price ?? 0) > 0 && prices === undefined)
    report(['steps', i, 'price'], 'prices with a currency beside it, at the top of the file');
  for (const item of Object.keys(buys ?? {})) {
    const items = Object.keys(prices?.items ?? {});
    if (!items.includes(item))
      report(['steps', i, 'buys', item], 'an item of prices.items', {
        found: JSON.stringify(item),
        hint: meantHint(item, items),
      });
  }
}

function checkDeeds(
  scenario: CheckedScenario,
  ladder: LadderSpec,
  step: LadderStepSpec,
  i: number,
  report: Report,
): void {
  const { strategy, brings, change, add } = step;
  if ([strategy, brings, change, add].every((deed) => deed === undefined))
    report(['steps', i], 'at least one of brings, change, add, strategy', {
      found: 'a step that does nothing',
    });
  if (strategy !== undefined) checkStrategy(scenario, strategy, ['steps', i, 'strategy'], report);
  const missing = spelledOut(scenario, ladder.start.without ?? []);
  (brings ?? []).forEach((path, b) => {
    const parts = spelledOut(scenario, [path]);
    if (parts.length === 0 || parts.some((part) => !missing.includes(part)))
      report(['steps', i, 'brings', b], 'a part that ladder.start.without names', {
        hint: meantHint(path, missing),
      });
  });
  checkPaths(change ?? {}, ['steps', i, 'change'], report);
}

function checkStrategy({ strategies }: CheckedScenario, id: string, path: Path, report: Report): void {
  const ids = strategies.map((s) => s.id);
  if (!ids.includes(id)) report(path, 'the id of a strategy', { hint: meantHint(id, ids) });
}

/** Every rung is lived under the same strategies, so that they can be compared. */
function checkPaths(change: Readonly<Record<string, unknown>>, path: Path, report: Report): void {
  for (const spelt of Object.keys(change)) {
    if (spelt.split('.')[0] === 'strategies')
      report([...path, spelt], 'strategy and the id of a strategy, instead of a change to strategies', {
        found: 'a change of "strategies"',
      });
  }
}
