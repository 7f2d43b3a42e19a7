/** `legs` and `ladder` as people run them, and their answers in words. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from '@uwdata/flechette';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { LadderAnswer, LegsAnswer } from '../../../packages/sim/src/index.ts';
import { tellAnswer } from '../../../packages/sim/src/cli/advice-verb.ts';
import { withStudies } from '../../../packages/sim/src/cli/asking.ts';
import { renderLadder } from '../../../packages/sim/src/cli/render-ladder.ts';
import { renderLegs } from '../../../packages/sim/src/cli/render-legs.ts';
import { darkSpec, scenarioOf } from '../advice/read-written.ts';
import { DEMO, rideout, SMALL } from './rideout.ts';

let folder = '';
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'rideout-legs-'))));
afterAll(() => rmSync(folder, { recursive: true }));

const widest = (text: string) => Math.max(...text.split('\n').map((line) => Array.from(line).length));
const inOneLine = (text: string) => text.replaceAll(/\s+/g, ' ');

describe.each([
  ['legs', ['-t', 'tiers-by-hand', '--choose', '3'], /circuits can be on either leg: 131072 assignments/, 20],
  ['ladder', ['--choose', '2'], /Check: all 320 combinations were looked at\./, undefined],
] as const)('rideout %s', (verb, options, says, rows) => {
  it('answers in words no wider than the terminal, with how to repeat it, and writes its table whole', async () => {
    const out = join(folder, verb);
    const {
      code,
      out: answer,
      told,
    } = await rideout([verb, DEMO, '-d', '3', ...options, '-w', '0', '-o', out]);
    expect(told).toContain(`Written to ${out}`);
    expect(code).toBe(0);
    expect(inOneLine(answer)).toMatch(says);
    expect(inOneLine(answer)).toMatch(
      /scenario [0-9a-f]{12}; seed rideout; draws 3 of rideout\/fresh, chosen on \d+ others;/,
    );
    expect(inOneLine(answer)).toMatch(/licensed electrician/);
    expect(widest(answer)).toBeLessThanOrEqual(80);
    expect(answer).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(readdirSync(out).sort()).toEqual([`${verb}.arrow`, `${verb}.csv`, `${verb}.json`]);
    const told_ = JSON.parse(readFileSync(join(out, `${verb}.json`), 'utf8')) as LadderAnswer & LegsAnswer;
    const expected = rows ?? told_.rungs.length + 1;
    expect(tableFromIPC(readFileSync(join(out, `${verb}.arrow`))).numRows).toBe(expected);
    expect(told_.provenance).toMatchObject({ seed: 'rideout', draws: 3 });
  });
});

describe('bad input', () => {
  it.each([
    [
      ['ladder', SMALL],
      `${SMALL}: found no ladder; expected a block ladder: with a start and steps. data/full-house.yaml has one to start from.`,
    ],
    [
      ['legs', SMALL],
      `${SMALL}: one unit feeds whatever it feeds: which leg a circuit is on makes no difference.`,
    ],
    [['ladder', DEMO, '--budget', '-5'], '--budget: found "-5"; expected a number of at least 0'],
    [['ladder', DEMO, '--confidence', '90'], '--confidence: found "90"; expected a number from 0.5 to 0.99'],
    [['legs', DEMO, '--choose', '0'], '--choose: found "0"; expected a whole number from 1 to 10000000'],
  ])('%j is told in one line', async (args, words) => {
    const { code, out, told } = await rideout([...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(told.trimEnd()).toBe(words);
  });
});

describe('Ctrl-C', () => {
  it('has its own exit code: no answer is neither told nor written', async () => {
    const scenario = scenarioOf(darkSpec({ circuits: { a: { watts: 1 } }, hours: 24 }));
    const never = () => expect.fail('there is nothing to tell');
    const options = { draws: 1, seed: 'x', workers: 0, out: '/nowhere' };
    expect(await tellAnswer(undefined, scenario, options, { name: 'a', render: never, tables: never })).toBe(
      130,
    );
  });

  it('ends the search with no half answer', async () => {
    const scenario = scenarioOf(darkSpec({ circuits: { a: { watts: 1 } }, hours: 24 * 30 }));
    let asked = 0;
    const answer = await withStudies({ workers: 0, quiet: true }, async (ask) => {
      setImmediate(() => process.emit('SIGINT'));
      await ask(scenario, { seed: 'x', draws: 2000 });
      asked++;
      return 'an answer';
    });
    expect(answer).toBeUndefined();
    expect(asked).toBe(0);
    expect(process.listeners('SIGINT').some((listener) => listener.name === 'onInterrupt')).toBe(false);
  });

  it.each([0, 1])(
    'does not wait for what is begun, with %d threads: nothing of it is told',
    async (workers) => {
      const scenario = scenarioOf(darkSpec({ circuits: { a: { watts: 1 } }, hours: 24 * 30 }));
      const told: string[] = [];
      const stderr = vi
        .spyOn(process.stderr, 'write')
        .mockImplementation((text) => told.push(String(text)) > 0);
      const never = new Promise<string>(() => undefined);
      const answer = await withStudies({ workers }, async (ask) => {
        setTimeout(() => process.emit('SIGINT'), 50);
        await Promise.all([never, ask(scenario, { seed: 'x', draws: 100_000 })]);
        return 'an answer';
      }).finally(() => stderr.mockRestore());
      expect(answer).toBeUndefined();
      expect(told.join('').trim()).toBe('Interrupted before the answer was ready: nothing to report.');
    },
  );
});

const PROVENANCE = {
  scenarioHash: '3f2a9c41d07b',
  scenarioTitle: 'A made-up house',
  seed: 'x',
  draws: 400,
  choosingDraws: 120,
  version: '0',
  weatherName: 'made-up',
};
const look = { width: 80, colour: false };
const at = (value: number, low = value, high = value) => ({ value, low, high });

describe('a ladder in words', () => {
  const stand = { strategyId: 's', strategyTitle: 'As always', days: at(2, 1.5, 2.5), meanDays: 3 };
  const rung = {
    ...stand,
    title: 'A module',
    stepIds: ['module'],
    price: 12_500,
    paid: 12_500,
    gainDays: at(1, 0.5, 1.5),
    gainMeanDays: at(1, 0.5, 1.5),
    pricePerDay: 12_500,
    told: 'clear' as const,
  };
  const answer: LadderAnswer = {
    provenance: PROVENANCE,
    freshSeed: 'x/fresh',
    horizonDays: 14,
    currency: '€',
    budget: null,
    confidence: 0.9,
    start: { ...stand, title: 'Start', days: at(1) },
    rungs: [rung],
    ended: 'no gain',
    left: [],
    takenBack: [],
    all: { combinations: 2, mostBehindDays: 0, other: null },
  };
  const told = (changes: Partial<LadderAnswer>) => inOneLine(renderLadder({ ...answer, ...changes }, look));

  it('writes money with its thousands apart, in any currency', () => {
    expect(told({})).toContain('A module € 12 500');
    expect(told({ rungs: [{ ...rung, price: 0, pricePerDay: null }] })).toContain('A module free');
  });

  it('marks rungs whose gain is not told from zero, and explains the mark', () => {
    expect(told({})).not.toContain('?');
    const weak = { ...rung, told: 'not told from zero' as const, gainDays: at(0.2, -0.1, 0.5) };
    expect(told({ rungs: [weak] })).toMatch(
      /1 \? A module.*5 h \(−3 to 12 h\).*\?: the gain cannot be told from none/,
    );
    expect(told({ rungs: [{ ...rung, told: 'on average' }] })).toMatch(/1 ~ A module.*~: longer on average/);
  });

  it('marks a rung that gains the days counted and loses on average, and says what', () => {
    const traded = { ...rung, told: 'clear, less on average' as const, gainMeanDays: at(-1.8, -2.2, -1.4) };
    expect(told({ rungs: [traded] })).toMatch(
      /1 rung up.*1 \* A module.*\*: rung 1 reaches more days in nine outages in ten, but fewer in the mean outage: −1\.8 d \(−2\.2 to −1\.4 d\)/,
    );
  });

  it('ends its headline at the last rung whose gain is clear', () => {
    const weak = { ...rung, title: 'Paint', paid: 13_000, told: 'on average' as const, days: at(9) };
    expect(told({ rungs: [rung, weak] })).toMatch(
      /1 rung up, for € 12 500 in all, they reach 2 days \(“As always”, 95 % interval 1\.5 to 2\.5 days\)\. One rung more may bring more, but not clearly/,
    );
    expect(told({ rungs: [weak] })).toMatch(/reach 1 day\. One rung more may bring more, but not clearly/);
  });

  it('says which rung was taken back, and what it lost', () => {
    const back = { ...rung, title: 'Drop it', told: 'a loss' as const, gainDays: at(-8.3, -10.8, -4.2) };
    expect(told({ takenBack: [back] })).toContain(
      'on other outages it loses: Drop it (then by “As always”): −8.3 d (−10.8 to −4.2 d).',
    );
  });

  it('keeps to its columns whatever the horizon hides', () => {
    const gains = [at(13.9, -13.9, 13.9), { value: null, low: null, high: null }];
    const rungs = gains.map((gainDays) => ({ ...rung, price: 1_234_567, gainDays }));
    expect(widest(renderLadder({ ...answer, rungs }, look))).toBeLessThanOrEqual(80);
  });

  it('says that the horizon hides the rest', () => {
    const hidden = {
      ...rung,
      days: { value: null, low: 3, high: null },
      gainDays: { value: null, low: 2, high: null },
    };
    expect(told({ rungs: [hidden], ended: 'horizon' })).toMatch(
      /reach 14 days or more .*a longer outage\.horizonDays would show.*hidden \(2\.0 d to hidden\)/,
    );
  });

  it('says when a combination is ahead for the same money, and when nobody looked', () => {
    const other = {
      stepTitles: ['This', 'That'],
      paid: 12_000,
      days: at(3),
      gainDays: at(1, 0.4, 1.6),
      gainMeanDays: at(1),
    };
    expect(told({ all: { combinations: 9, mostBehindDays: 1, other } })).toContain(
      'This, That together reach 3 days on the fresh outages: 1.0 d (9 h to 1.6 d) against the ladder’s end. That costs € 12 000.',
    );
    expect(told({ all: null })).toContain('not proven best as a whole');
  });

  it('says what was left, and why', () => {
    const left = [{ id: 'p', title: 'Panels', price: 900, why: 'over the budget' as const }];
    expect(told({ left, ended: 'budget', budget: 100 })).toContain(
      'Not on the ladder: Panels (€ 900): over the budget.',
    );
  });

  it('fits a narrow terminal, and plain signs', () => {
    const narrow = renderLadder(answer, { width: 44, colour: false, ascii: true });
    expect(widest(narrow)).toBeLessThanOrEqual(44);
  });
});

describe('legs in words', () => {
  const stand = { days: at(2, 1.5, 2.5), meanDays: 3, tripsPerOutage: 1.5 };
  const circuit = {
    id: 'a',
    title: 'Sump pump',
    tier: 2,
    breakerA: 15,
    nameplateW: 700,
    moved: true,
    kept: null,
  };
  const leg = {
    leg: 'L1' as const,
    unitId: 'east',
    circuits: [circuit],
    nameplateW: 700,
    unattendedW: 0,
    continuousW: 3000,
  };
  const answer: LegsAnswer = {
    provenance: PROVENANCE,
    freshSeed: 'x/fresh',
    horizonDays: 14,
    alternativeTitle: 'As it is',
    strategyId: 's',
    strategyTitle: 'As always',
    present: stand,
    best: { ...stand, days: at(3), tripsPerOutage: 0.5 },
    gainDays: at(1, 0.5, 1.5),
    gainMeanDays: at(1, 0.5, 1.5),
    gainTrips: at(-1, -1.2, -0.8),
    told: 'clear',
    moves: [{ id: 'a', title: 'Sump pump', from: 'L2', to: 'L1' }],
    search: {
      movableCircuits: 3,
      assignments: 8,
      simulated: 8,
      how: 'best guesses of all',
      presentDays: 2,
      bestDays: 3,
    },
    bound: { days: 4.06, kind: 'placings', ruledOutFraction: 0.5, drawsBeyond: 0, drawsChecked: 960 },
    legs: [leg, { ...leg, leg: 'L2', unitId: 'west', circuits: [] }],
    across: [],
  };
  const told = (changes: Partial<LegsAnswer>) => inOneLine(renderLegs({ ...answer, ...changes }, look));

  it('tell the gain in days and in trips, the moves and the schedule', () => {
    expect(told({})).toContain('With 1 circuit moved they reach 3 days: 1 day more (12 hours to 1.5 days)');
    expect(told({})).toContain('Trips per outage: 1.50 now, 0.50 then (fewer).');
    expect(told({})).toContain('- Sump pump: from L2 to L1');
    expect(told({})).toContain('* Sump pump tier 2 15 A 700 W');
  });

  it('advise against opening the panel for a gain that is not told from zero', () => {
    const weak = { told: 'not told from zero' as const, gainDays: at(0.1, -0.4, 0.6) };
    expect(told(weak)).toMatch(
      /does not hold up on fresh outages: 2 hours more.*Nothing here is worth opening the panel for/,
    );
    expect(told({ ...weak, moves: [] })).toContain('No other assignment was found to last longer.');
  });

  it('tell how far any other could be ahead, and when the bound is in doubt', () => {
    const bound = answer.bound!;
    expect(told({})).toMatch(
      /no more than 4\.1 days with any assignment.*50 % of all assignments cannot beat/,
    );
    expect(told({ bound: { ...bound, drawsBeyond: 3 } })).toContain(
      '3 of 960 simulated runs outlasted theirs',
    );
    expect(told({ bound: { ...bound, days: null } })).toContain('nothing is proven below it');
    expect(told({ bound: { ...bound, kind: 'pooled' } })).toContain('both banks and all panels as one');
    expect(told({ bound: null })).toContain('No bound');
    expect(told({ search: { ...answer.search, how: 'every one simulated' } })).toContain(
      'on these outages none lasts longer',
    );
  });

  it('fit a narrow terminal', () => {
    expect(widest(renderLegs(answer, { width: 44, colour: false }))).toBeLessThanOrEqual(44);
  });
});
