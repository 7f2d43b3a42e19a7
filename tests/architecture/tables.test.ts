/** TABLES.md and the tables name the same columns: none is left out, none is made up. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { ColumnTable } from 'arquero';
import { describe, expect, it } from 'vitest';
import {
  askDrawsHere,
  askHere,
  askNeeds,
  askNextOutage,
  checkScenario,
  checkSubjectsTable,
  differencesTable,
  endsTable,
  findingNumbersTable,
  findingsTable,
  findLadder,
  findLegs,
  ladderTable,
  legsTable,
  mattersTable,
  needsEnduranceTable,
  needsTable,
  nextOutageTable,
  outcomesTable,
  prepareStudy,
  runShard,
  sourcesTable,
  summarise,
  summaryTable,
  survivalTable,
  traceDraw,
  traceTable,
  uncheckedTable,
  whatMatters,
  type Scenario,
} from '../../packages/sim/src/index.ts';
import { loadScenario } from '../../packages/sim/src/node.ts';

const TEXT = readFileSync(new URL('../../packages/sim/TABLES.md', import.meta.url), 'utf8');

/** Two days of it: columns do not hang on the horizon. */
function demo(name: string): Scenario {
  const { scenario } = loadScenario(fileURLToPath(new URL(`../../data/${name}.yaml`, import.meta.url)));
  return { ...scenario, outage: { ...scenario.outage, horizonDays: 2 } };
}
const full = demo('full-house');
const sources = demo('energy-back');
const QUESTION = { seed: 'tables', draws: 2, choosingDraws: 2 };

async function everyTable(): Promise<Record<string, ColumnTable>> {
  const study = prepareStudy(sources, { seed: 'tables' });
  const rows = runShard(study, 0, 4);
  const summary = summarise(study, rows);
  const report = checkScenario(full, { seed: 'tables', draws: 1 });
  const fed = sources.alternatives.findIndex(({ household }) => household.sources?.generator !== undefined);
  const one = { ...QUESTION, alternative: 0, strategy: 0 };
  return {
    outcomesTable: outcomesTable(study, rows),
    summaryTable: summaryTable(summary),
    survivalTable: survivalTable(summary),
    endsTable: endsTable(summary),
    needsTable: needsTable(summary),
    sourcesTable: sourcesTable(summary),
    differencesTable: differencesTable(summary),
    traceTable: traceTable(traceDraw(study, { draw: 0, alternative: fed, strategy: 0 })),
    needsEnduranceTable: needsEnduranceTable(await askNeeds(full, QUESTION, askDrawsHere)),
    mattersTable: mattersTable(await whatMatters(full, one, askDrawsHere)),
    legsTable: legsTable(await findLegs(full, one, askHere)),
    ladderTable: ladderTable(await findLadder(full, { ...QUESTION, mostRuns: 100 }, askHere)),
    nextOutageTable: nextOutageTable(await askNextOutage(full, QUESTION, askHere)),
    findingsTable: findingsTable(report),
    findingNumbersTable: findingNumbersTable(report),
    uncheckedTable: uncheckedTable(report),
    checkSubjectsTable: checkSubjectsTable(report),
  };
}

/** A column's name without what the household or the day brings: `circuit.fridge.wantedW` is `circuit.<id>.wantedW`. */
function kindOf(column: string): string {
  return column
    .replace(/^(unit|circuit)\.[^.]+\./, '$1.<id>.')
    .replace(/^source\.[^.]+\./, 'source.<kind>.')
    .replace(/^need:[^:]+:/, 'need:<need>:')
    .replace(/^mean:.+/, 'mean:<column>')
    .replace(/Tier\d/, 'Tier<n>')
    .replace(/^reach\d+Days/, 'reach<n>Days');
}

/** The ends of an interval go with the column that they belong to. */
function withoutEnds(kinds: readonly string[]): string[] {
  const all = new Set(kinds);
  const isEnd = (kind: string) => /(Low|High)$/.test(kind) && all.has(kind.replace(/(Low|High)$/, ''));
  return [...all].filter((kind) => !isEnd(kind)).sort();
}

/** What the document's table of that name lists in its first cells. */
function listed(name: string): string[] {
  const lines = TEXT.split('\n');
  const head = lines.findIndex((line) => line.startsWith(`| \`${name}\``));
  const end = lines.findIndex((line, i) => i > head && !line.startsWith('|'));
  const cells = lines.slice(head + 2, end).map((line) => line.split(' | ')[0]!);
  return cells.flatMap((cell) => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1]!));
}

describe('TABLES.md', () => {
  it('lists every column of every table, and no other', async () => {
    const tables = await everyTable();
    for (const [name, table] of Object.entries(tables)) {
      const columns = withoutEnds(table.columnNames().map(kindOf));
      expect(columns.length, name).toBeGreaterThan(2);
      expect(withoutEnds(listed(name).map(kindOf)), name).toEqual(columns);
    }
    const named = [...TEXT.matchAll(/^\| `(\w+Table)`/gm)].map((match) => match[1]);
    expect(named.sort()).toEqual(Object.keys(tables).sort());
  });
});
