/** The command as people run it: a process of its own, its answers, its exit code. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tableFromIPC } from '@uwdata/flechette';
import { scenarioJsonSchema, VERSION } from '../../../packages/sim/src/index.ts';
import { rideout, ROOT, SMALL } from './rideout.ts';

let folder = '';
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'rideout-cli-'))));
afterAll(() => rmSync(folder, { recursive: true }));

describe('rideout days', () => {
  it('tells how many days, and with --out writes rows and summary whole', async () => {
    const out = join(folder, 'days');
    const { code, out: answer, told } = await rideout(['days', SMALL, '-d', '6', '-w', '0', '-o', out]);
    expect(code).toBe(0);
    expect(answer).toContain('Fern Street, one unit');
    expect(answer).toMatch(/seed rideout; draws 6; version/);
    expect(told).toMatch(/^6 outages, 36 runs in [\d.]+ s: /m);
    expect(readdirSync(out).sort()).toEqual(['outcomes.arrow', 'outcomes.csv', 'study.json']);
    expect(tableFromIPC(readFileSync(join(out, 'outcomes.arrow'))).numRows).toBe(36);
    expect(readFileSync(join(out, 'outcomes.csv'), 'utf8').trimEnd().split('\n')).toHaveLength(37);
    expect(JSON.parse(readFileSync(join(out, 'study.json'), 'utf8'))).toBeTypeOf('object');
  });

  it('answers in JSON, and with --quiet in nothing else', async () => {
    const { code, out, told } = await rideout([
      'days',
      SMALL,
      '-d',
      '3',
      '-w',
      '2',
      '--json',
      '--quiet',
      '-s',
      'x',
    ]);
    expect(code).toBe(0);
    expect(told).toBe('');
    expect(JSON.parse(out)).toMatchObject({
      provenance: { seed: 'x', draws: 3, version: VERSION },
      horizonDays: 7,
    });
  });

  it('keeps the finished outages when it is interrupted, and says so with its exit code', async () => {
    const out = join(folder, 'interrupted');
    // the remark about so short a profile is made just before the outages begin
    writeFileSync(
      join(folder, 'hour.csv'),
      `time,watts\n${Array.from({ length: 60 }, (_, m) => `2026-01-01 00:${String(m).padStart(2, '0')},50`).join('\n')}\n`,
    );
    const measured = readFileSync(join(ROOT, SMALL), 'utf8').replace(
      '{ typical: ceiling-fan }',
      '{ kind: measured, file: hour.csv }',
    );
    writeFileSync(join(folder, 'measured.yaml'), measured);
    const {
      code,
      out: answer,
      told,
    } = await rideout(
      ['days', join(folder, 'measured.yaml'), '-d', '100000', '-w', '0', '--json', '-o', out],
      (child) => child.stderr.once('data', () => child.kill('SIGINT')),
    );
    expect(told).toMatch(/^hour\.csv: it lasts 1 h, less than a day/);
    expect(told).toContain('Stopping: the outages begun are finished first.');
    expect(code).toBe(130);
    const { provenance } = JSON.parse(answer) as { provenance: { draws: number } };
    expect(provenance.draws).toBeGreaterThan(0);
    expect(provenance.draws).toBeLessThan(100_000);
    expect(told).toContain(`Interrupted: ${provenance.draws} of 100000 outages are in these figures.`);
    expect(tableFromIPC(readFileSync(join(out, 'outcomes.arrow'))).numRows).toBe(provenance.draws * 6);
  });

  it('says before the run that results cannot be written, and leaves what was there', async () => {
    const inTheWay = join(folder, 'a-file');
    writeFileSync(inTheWay, 'mine');
    const { code, told } = await rideout(['days', SMALL, '-d', '1', '-w', '0', '-o', inTheWay]);
    expect(code).toBe(3);
    expect(told).toBe(`nothing can be written to "${inTheWay}": that is a file, not a folder\n`);
    expect(readFileSync(inTheWay, 'utf8')).toBe('mine');
  });
});

describe('rideout minutes', () => {
  it('writes one outage as a table, a row a minute', async () => {
    const { code, out, told } = await rideout([
      'minutes',
      SMALL,
      '-n',
      '2',
      '-a',
      'two-modules',
      '-t',
      'tiers',
    ]);
    const lines = out.trimEnd().split('\n');
    expect(code).toBe(0);
    expect(lines).toHaveLength(1 + 7 * 1440);
    expect(lines[0]).toMatch(/^minute,localTime,ghiWm2,dryBulbC,unit\.unit\.solarAvailableW,/);
    const hash =
      /^Draw 2 of seed rideout, scenario ([0-9a-f]{12}): Two modules; Comfort off below half\.\n$/.exec(
        told,
      )![1]!;
    const stamp = `scenario ${hash}; seed rideout; draw 2; alternative two-modules; strategy tiers; version ${VERSION}`;
    expect(lines[0]).toMatch(/,events,study$/);
    expect(lines.slice(1).every((line) => line.endsWith(`,${stamp}`))).toBe(true);
  });

  it('writes what the ending of the file’s name says, with what it takes to repeat it', async () => {
    const at = (name: string) => join(folder, name);
    const runs = ['m.csv', 'm.arrow', 'm.json'].map((name) =>
      rideout(['minutes', SMALL, '-q', '-o', at(name)]),
    );
    for (const run of runs) expect(await run).toEqual({ code: 0, out: '', told: '' });
    const arrow = tableFromIPC(readFileSync(at('m.arrow')));
    const json = JSON.parse(readFileSync(at('m.json'), 'utf8')) as Record<string, unknown>[];
    expect(arrow.numRows).toBe(7 * 1440);
    expect(json.map((row) => row['unit.unit.loadW'])).toEqual(
      Array.from(arrow.getChild('unit.unit.loadW').toArray()),
    );
    const kept = Object.fromEntries(arrow.schema.metadata!);
    expect(kept).toMatchObject({
      'rideout.seed': 'rideout',
      'rideout.draw': '0',
      'rideout.version': VERSION,
    });
    expect(new Set(json.map((row) => row['study']))).toEqual(
      new Set([
        `scenario ${kept['rideout.scenarioHash']}; seed rideout; draw 0; alternative ${kept['rideout.alternative']}; strategy ${kept['rideout.strategy']}; version ${VERSION}`,
      ]),
    );
    expect(readFileSync(at('m.csv'), 'utf8').split('\n')[0]).toMatch(/,study$/);
  });

  it.each([
    [['-o', 'out/m.xlsx'], '"out/m.xlsx"; expected a name that ends in .csv, .arrow or .json'],
    [['-o', 'out/minutes'], '"out/minutes"; expected a name that ends in .csv, .arrow or .json'],
    [['-o', 'out/m.csv', '--json'], '"out/m.csv"; expected a name that ends in .json'],
    [['-o', 'out/m.csv', '--events'], '"out/m.csv"; expected a name that ends in .txt or .json'],
  ])('refuses %j before the work', async (args, told) => {
    expect(await rideout(['minutes', SMALL, ...args])).toEqual({
      code: 2,
      out: '',
      told: `--out: found ${told}\n`,
    });
  });

  it('tells an outage in words', async () => {
    const { out } = await rideout(['minutes', SMALL, '--events', '-q']);
    const lines = out.trimEnd().split('\n');
    expect(lines[0]).toMatch(/^\d{4}-\d\d-\d\d \d\d:\d\d {2}the grid goes$/);
    expect(lines.at(-1)).toMatch(
      /^tier 1 (went without after [\d.]+ days|never went without within the horizon)$/,
    );
  });

  it('tells what happened as JSON, each with its time and minute', async () => {
    const { out } = await rideout(['minutes', SMALL, '--events', '--json', '-q']);
    const events = JSON.parse(out) as { minute: number; localTime: string; text: string }[];
    expect(events.length).toBeGreaterThan(0);
    for (const event of events) {
      expect(event.localTime).toMatch(/^\d{4}-\d\d-\d\d \d\d:\d\d$/);
      expect(event).toMatchObject({
        minute: expect.any(Number) as number,
        text: expect.any(String) as string,
      });
    }
  });

  it('does not mind a reader that has seen enough', async () => {
    const { code, told } = await rideout(['minutes', SMALL, '-q'], ({ stdout }) =>
      stdout.once('data', () => stdout.destroy()),
    );
    expect({ code, told }).toEqual({ code: 0, told: '' });
  });
});

describe('rideout check', () => {
  it('tells a sound scenario back', async () => {
    const { code, out } = await rideout(['check', 'data/full-house.yaml', '-d', '1']);
    expect(code).toBe(0);
    expect(out).toMatch(/^data\/full-house\.yaml can be used \(scenario [0-9a-f]{12}\): /);
    expect(out).toMatch(/unit {6}east on L1: /);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/the first \d+ days? of 1 outage watched minute by minute/);
  });

  it('then says what to look into, writes it as tables, and ends as with a file that can be used', async () => {
    const out = join(folder, 'check');
    const { code, out: answer } = await rideout([
      'check',
      'data/full-house.yaml',
      '-d',
      '1',
      '-q',
      '-o',
      out,
    ]);
    expect(code).toBe(0);
    expect(answer).toMatch(/^Alder Row, a pair of units\n/);
    expect(answer).toMatch(/\n\d+ to mend first, \d+ to watch out for, \d+ to know; \d+ left unchecked\.\n/);
    expect(answer).toMatch(/seed rideout; draws 1; version/);
    const tables = ['findings', 'numbers', 'subjects', 'unchecked'].flatMap((t) => [
      `${t}.arrow`,
      `${t}.csv`,
    ]);
    expect(readdirSync(out).sort()).toEqual(['check.json', ...tables].sort());
    const written = JSON.parse(readFileSync(join(out, 'check.json'), 'utf8')) as { findings: unknown[] };
    expect(tableFromIPC(readFileSync(join(out, 'findings.arrow'))).numRows).toBe(written.findings.length);
  });

  it('gives the report as JSON, of the version asked for', async () => {
    const { code, out } = await rideout(['check', SMALL, '-d', '1', '-a', 'two-modules', '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ alternativeId: 'two-modules', provenance: { draws: 1 } });
  });

  it('tells every fault of an unsound one, with its line, and nothing on standard output', async () => {
    const path = join(folder, 'faulty.yaml');
    writeFileSync(
      path,
      readFileSync(join(ROOT, SMALL), 'utf8')
        .replace('horizonDays: 7', 'horizonDays: week')
        .replace('startFraction: 1', 'startFraction: 100'),
    );
    const { code, out, told } = await rideout(['check', path]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(told).toMatch(
      /^2 things need mending:\n.*:17: outage\.horizonDays: found "week"; expected a number\.\n.*:32: .*For 100 percent write 1\.\n$/,
    );
  });
});

describe('rideout', () => {
  it('gives the schema, its version and its help, which lists the exit codes', async () => {
    const [schema, version, help] = await Promise.all([
      rideout(['schema']),
      rideout(['--version']),
      rideout(['--help']),
    ]);
    expect([schema.code, version.code, help.code]).toEqual([0, 0, 0]);
    expect(JSON.parse(schema.out)).toEqual(JSON.parse(JSON.stringify(scenarioJsonSchema())));
    expect(version.out).toBe(`${VERSION}\n`);
    expect(help.out).toMatch(/Exit codes:\n {2}0 {4}done/);
  });

  it.each([
    [
      ['days', 'data/nowhere.yaml'],
      'data/nowhere.yaml: found no file at data/nowhere.yaml; expected a file that can be read.',
    ],
    [['days', SMALL, '--months', '1,13'], '--months: found "13"; expected a whole number from 1 to 12'],
    [
      ['minutes', SMALL, '-t', 'teirs'],
      '--strategy: found "teirs"; expected one of everything, tiers, cool-in-the-sun. Did you mean tiers?',
    ],
    [['dyas', SMALL], "unknown command 'dyas'"],
  ])('%j is told in one message, without a stack, and ends with 2', async (args, message) => {
    const { code, out, told } = await rideout(args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(told).toContain(message);
    expect(told).not.toMatch(/^\s+at /m);
  });
});
