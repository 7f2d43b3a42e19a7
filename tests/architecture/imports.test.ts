/** Who may know of whom. The house plan in DEVELOPERS.md, as a test. */
import { describe, expect, it } from 'vitest';
import { folderOf, readSource } from './source-graph.ts';

const files = readSource();

/**
 * What each folder may import from, itself aside; types count. `sky`, `usage`, `power` and `shedding` know nothing of
 * each other; `step` puts them together; nothing but the entries knows `cli` and `node`.
 */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  portable: [],
  'version.ts': [],
  clock: [],
  chance: ['portable'],
  // what a file may say is partly known only to those who carry it out
  scenario: ['clock', 'shedding', 'usage'],
  sky: ['portable'],
  weather: ['chance', 'clock', 'portable', 'scenario', 'sky'],
  usage: ['chance', 'clock', 'portable', 'scenario'],
  power: ['portable', 'scenario'],
  shedding: ['clock', 'scenario'],
  step: ['chance', 'clock', 'portable', 'power', 'scenario', 'shedding', 'sky', 'usage', 'weather'],
  trials: ['chance', 'clock', 'portable', 'scenario', 'sky', 'step', 'usage', 'version.ts', 'weather'],
  // chance and version: a job makes its own draws, and its answer says how to repeat it
  advice: [
    'chance',
    'clock',
    'portable',
    'power',
    'scenario',
    'shedding',
    'step',
    'trials',
    'usage',
    'version.ts',
  ],
  'index.ts': [
    'advice',
    'chance',
    'clock',
    'power',
    'scenario',
    'shedding',
    'sky',
    'step',
    'trials',
    'usage',
    'version.ts',
    'weather',
  ],
  node: ['advice', 'scenario', 'trials', 'usage', 'version.ts', 'weather'],
  'node.ts': ['node'],
  cli: ['advice', 'node', 'scenario', 'trials', 'version.ts'],
};

/** Folders and entries that may touch Node's own modules. */
const OF_NODE = ['cli', 'node', 'node.ts'];

describe('packages/sim/src', () => {
  it('is read whole: every import leads to a file that is there', () => {
    expect(files.length).toBeGreaterThan(150);
    const there = new Set(files.map((file) => file.path));
    expect(
      files.flatMap((file) => file.files.filter((to) => !there.has(to)).map((to) => `${file.path} → ${to}`)),
    ).toEqual([]);
  });

  it('has no folder that the plan does not know', () => {
    expect(files.map((file) => file.folder).filter((folder) => MAY_IMPORT[folder] === undefined)).toEqual([]);
  });

  it('has no import that the plan does not allow', () => {
    const wrong = files.flatMap((file) =>
      file.files
        .filter(
          (to) => folderOf(to) !== file.folder && !(MAY_IMPORT[file.folder] ?? []).includes(folderOf(to)),
        )
        .map((to) => `${file.path} → ${to}`),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps Node’s own modules to the command line and the Node entry', () => {
    const users = files.filter((file) => file.packages.some((name) => name.startsWith('node:')));
    expect(users.map((file) => file.path).filter((path) => !OF_NODE.includes(folderOf(path)))).toEqual([]);
    expect(users.length).toBeGreaterThan(0);
  });

  it('names Node’s modules with node:, so that none slips past', () => {
    const bare = [
      'fs',
      'path',
      'os',
      'url',
      'util',
      'worker_threads',
      'child_process',
      'crypto',
      'process',
      'fs/promises',
    ];
    expect(
      files.filter((file) => file.packages.some((name) => bare.includes(name))).map((file) => file.path),
    ).toEqual([]);
  });

  it('has no cycles, types included', () => {
    expect(cycles()).toEqual([]);
  });
});

/** Each cycle once, told from its alphabetically first file. */
function cycles(): string[] {
  const byPath = new Map(files.map((file) => [file.path, file.files]));
  const done = new Set<string>();
  const found = new Set<string>();
  const visit = (path: string, way: readonly string[]): void => {
    const from = way.indexOf(path);
    if (from >= 0) {
      const round = way.slice(from);
      const start = round.indexOf([...round].sort()[0]!);
      found.add([...round.slice(start), ...round.slice(0, start)].join(' → '));
      return;
    }
    if (done.has(path)) return;
    for (const to of byPath.get(path) ?? []) visit(to, [...way, path]);
    done.add(path);
  };
  for (const { path } of files) visit(path, []);
  return [...found];
}
