/** `matters`, `needs` and `next-outage` as people run them, and their answers in words. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from '@uwdata/flechette';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, rideout, ROOT, SMALL } from './rideout.ts';

let folder = '';
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'rideout-advice-'))));
afterAll(() => rmSync(folder, { recursive: true }));

const widest = (text: string) => Math.max(...text.split('\n').map((line) => Array.from(line).length));

describe.each([
  ['matters', SMALL, ['-d', '20', '-t', 'tiers'], /Sobol’ indices/, ['matters'], 6],
  [
    'needs',
    DEMO,
    ['-d', '2'],
    /Food kept cold: fails when a refrigerator or freezer is above 4\.4 °C/,
    ['needs'],
    48,
  ],
  ['next-outage', DEMO, ['-d', '4'], /Outages: 1\.4 a year, 5\.6 hours long on average/, ['next-outage'], 8],
] as const)('rideout %s', (verb, scenario, options, says, tables, rows) => {
  it('answers in words no wider than the terminal, with how to repeat it, and writes tables whole', async () => {
    const out = join(folder, verb);
    const { code, out: answer, told } = await rideout([verb, scenario, ...options, '-w', '2', '-o', out]);
    expect(told).toContain(`Written to ${out}`);
    expect(code).toBe(0);
    expect(answer.replaceAll('\n', ' ').replaceAll(/ +/g, ' ')).toMatch(says);
    expect(answer).toMatch(/scenario [0-9a-f]{12}; seed rideout;/);
    expect(widest(answer)).toBeLessThanOrEqual(80);
    expect(answer).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(readdirSync(out).sort()).toEqual(
      tables.flatMap((table) => [`${table}.arrow`, `${table}.csv`, `${table}.json`]),
    );
    expect(tableFromIPC(readFileSync(join(out, `${verb}.arrow`))).numRows).toBe(rows);
    expect(
      readFileSync(join(out, `${verb}.csv`), 'utf8')
        .trimEnd()
        .split('\n'),
    ).toHaveLength(rows + 1);
    const inJson = await rideout([verb, scenario, ...options, '-w', '0', '--json', '-q']);
    expect(inJson.told).toBe('');
    expect(inJson.out).toBe(readFileSync(join(out, `${verb}.json`), 'utf8')); // threads change nothing
  });
});

describe('bad input', () => {
  it.each([
    [
      ['next-outage', DEMO, '--published', 'us-2071'],
      '--published: found "us-2071"; expected one of us-2017, us-2024. Did you mean us-2017?',
    ],
    [['next-outage', DEMO, '--hours', '4,-1'], '--hours: found "-1"; expected a number above 0'],
    [
      ['next-outage', DEMO, '--per-year', '3'],
      '--per-year: found without --hours; expected both, or neither',
    ],
    [
      ['next-outage', DEMO, '--hours', '4', '--published', 'us-2017'],
      '--published and --hours: found both; expected one of them',
    ],
    [
      ['matters', DEMO, '-t', 'frugel'],
      '--strategy: found "frugel"; expected one of everything, tiers-by-hand, tiers-by-switch, frugal. Did you mean frugal?',
    ],
    [['matters', DEMO, '-d', '5'], '--draws: found "5"; expected a whole number from 20 to 1000000'],
  ])('%j is told in one line', async (args, words) => {
    const { code, out, told } = await rideout([...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(told.trimEnd()).toBe(words);
  });

  it('a house whose circuits serve no need is told what to add', async () => {
    const path = join(folder, 'needless.yaml');
    const text = readFileSync(join(ROOT, 'data/small-house.yaml'), 'utf8');
    writeFileSync(path, text.replaceAll(/need: [a-z]+,? ?/g, '').replaceAll(/, *}/g, ' }'));
    const { code, told } = await rideout(['needs', path]);
    expect(code).toBe(2);
    expect(told.trimEnd()).toBe(
      `${path}: found no needs; expected a list under needs, or a need on some circuit, such as need: food`,
    );
  });
});
