/** A ladder on a house whose days can be worked out on paper: bank over load, no sun, no chance. */
import { beforeAll, describe, expect, it } from 'vitest';
import { askHere } from '../../../../packages/sim/src/index.ts';
import type { AskStudy, ScenarioSpec } from '../../../../packages/sim/src/index.ts';
import { findLadder } from '../../../../packages/sim/src/advice/ladder/find-ladder.ts';
import type { LadderAnswer } from '../../../../packages/sim/src/advice/ladder/ladder-answer.ts';
import { ladderTable } from '../../../../packages/sim/src/advice/ladder/ladder-table.ts';
import { darkSpec, scenarioOf } from '../read-written.ts';

type LadderInput = NonNullable<ScenarioSpec['ladder']>;

const STEPS: LadderInput['steps'] = [
  { id: 'careful', title: 'Comforts off', strategy: 'careful' },
  {
    id: 'module',
    title: 'A module on the first unit',
    price: 100,
    add: { 'units.east.battery.modules': 1 },
    atMost: 2,
  },
  {
    id: 'second',
    title: 'A second unit',
    price: 400,
    brings: ['units.west'],
    change: { 'units.east.leg': 'L1' },
  },
  {
    id: 'west-module',
    title: 'A module on the second unit',
    buys: { module: 1 },
    add: { 'units.west.battery.modules': 1 },
    needs: ['second'],
  },
  {
    id: 'thrift',
    title: 'A thrifty refrigerator',
    price: 1000,
    change: { 'circuits.a.appliances': [{ kind: 'steady', runningW: 150, dayScatterFraction: 0 }] },
  },
  { id: 'paint', title: 'Paint it green', price: 5, change: { 'units.*.inverter.surgeW': 200_000 } },
];

/** Tier 1: 300 W on L1 and 100 W on L2; 200 W of comforts on L2. Banks of 6 kWh. */
function houseWith(ladder: Partial<LadderInput> = {}): ScenarioSpec {
  const spec = darkSpec({
    units: [{}, {}],
    circuits: { a: { watts: 300 }, b: { watts: 100, leg: 'L2' }, c: { watts: 200, leg: 'L2', tier: 5 } },
    hours: 240,
  });
  return {
    ...spec,
    strategies: [
      { id: 'everything', title: 'Everything' },
      { id: 'careful', title: 'Careful', rules: [{ by: 'outage', circuits: { tiers: [5] } }] },
      {
        id: 'nightly',
        title: 'Not followed here',
        rules: [{ by: 'sleep', unit: 'west', during: ['23:00-05:00'] }],
      },
    ],
    prices: { currency: '¤', items: { module: 120 } },
    ladder: {
      start: { without: ['units.west'], change: { 'units.east.leg': 'both' }, strategy: 'everything' },
      steps: STEPS,
      ...ladder,
    },
  };
}

/** Hours on paper: a unit alone carries both sides; of a pair, the first to run dry ends it. */
function hoursOnPaper(counts: Readonly<Record<string, number>>): number {
  const n = (id: string) => counts[id] ?? 0;
  const a = n('thrift') > 0 ? 150 : 300;
  const eastWh = 6000 * (1 + n('module'));
  const comfortsW = n('careful') > 0 ? 0 : 200;
  if (n('second') === 0) return eastWh / (a + 100 + comfortsW);
  return Math.min(eastWh / a, (6000 * (1 + n('west-module'))) / (100 + comfortsW));
}

const QUESTION = { seed: 'paper', choosingDraws: 2, draws: 3 };
const ask = (spec: ScenarioSpec, more = {}, how: AskStudy = askHere) =>
  findLadder(scenarioOf(spec), { ...QUESTION, ...more }, how);

describe('the ladder of a house on paper', () => {
  let answer: LadderAnswer;
  beforeAll(async () => {
    answer = await ask(houseWith());
  });

  it('starts with one unit on both legs, everything on', () => {
    expect(answer.start).toMatchObject({ title: 'Where you start', strategyId: 'everything' });
    expect(24 * answer.start.days.value!).toBeCloseTo(10, 9);
  });

  it('takes the free step, then each time the most hours for the money, as on paper', () => {
    expect(answer.rungs.map((rung) => rung.stepIds)).toEqual(orderOnPaper());
  });

  it('tells days and gains of every rung as on paper, and what was paid', () => {
    const counts: Record<string, number> = {};
    let before = hoursOnPaper(counts);
    let paid = 0;
    for (const rung of answer.rungs) {
      for (const id of rung.stepIds) counts[id] = (counts[id] ?? 0) + 1;
      const hours = hoursOnPaper(counts);
      paid += rung.price;
      expect(24 * rung.days.value!).toBeCloseTo(hours, 9);
      expect(24 * rung.gainDays.value!).toBeCloseTo(hours - before, 9);
      expect(24 * rung.gainMeanDays.value!).toBeCloseTo(hours - before, 9);
      expect(rung.told).toBe('clear');
      expect(rung.paid).toBeCloseTo(paid, 9);
      before = hours;
    }
    expect(answer.rungs.length).toBeGreaterThan(3);
  });

  it('leaves the step that gains nothing, and says so', () => {
    expect(answer.ended).toBe('no gain');
    expect(answer.left).toEqual([{ id: 'paint', title: 'Paint it green', price: 5, why: 'no gain found' }]);
  });

  it('has looked at every combination: the free one, two units and their modules, and the rest', () => {
    // careful 2 × module 3 × (no second, or second with 2 × west-module) 3 × thrift 2 × paint 2
    expect(answer.all!.combinations).toBe(72);
  });

  it('follows the best of the strategies at hand', () => {
    expect(answer.rungs.every((rung) => rung.strategyId === 'careful')).toBe(true);
  });

  it('chooses on one set of draws and tells the gains on another', () => {
    expect(answer.provenance).toMatchObject({ seed: 'paper', draws: 3, choosingDraws: 2 });
    expect(answer.freshSeed).toBe('paper/fresh');
  });

  it('repeats to the last bit', async () => {
    expect(await ask(houseWith())).toEqual(answer);
  });

  it('as a table has a row for the start and one for each rung', () => {
    const table = ladderTable(answer);
    expect(table.numRows()).toBe(answer.rungs.length + 1);
    expect(table.array('paid')).toEqual([0, ...answer.rungs.map((rung) => rung.paid)]);
    expect(table.array('told')[0]).toBeNull();
  });
});

/** The same climb by the formula: free first, then by hours per money, with what it needs; pairs where no step gains. */
function orderOnPaper(): string[][] {
  const price: Record<string, number> = {
    careful: 0,
    module: 100,
    second: 400,
    'west-module': 120,
    thrift: 1000,
    paint: 5,
  };
  const most: Record<string, number> = {
    careful: 1,
    module: 2,
    second: 1,
    'west-module': 1,
    thrift: 1,
    paint: 1,
  };
  const counts: Record<string, number> = {};
  const order: string[][] = [];
  for (;;) {
    const baskets = Object.keys(price).map((id) =>
      id === 'west-module' && !counts['second'] ? ['second', id] : [id],
    );
    const pairs = baskets.flatMap((one, i) => baskets.slice(i + 1).map((other) => [...one, ...other]));
    const offersOf = (offered: readonly string[][]) =>
      offered.flatMap((basket) => {
        const after = { ...counts };
        for (const step of basket) after[step] = (after[step] ?? 0) + 1;
        if (Object.keys(after).some((id) => after[id]! > most[id]!)) return [];
        const gain = hoursOnPaper(after) - hoursOnPaper(counts);
        const money = basket.reduce((sum, step) => sum + price[step]!, 0);
        return gain > 1e-9 ? { basket, after, rank: money === 0 ? 1e6 + gain : gain / money } : [];
      });
    const singles = offersOf(baskets);
    const offers = singles.length > 0 ? singles : offersOf(pairs);
    if (offers.length === 0) return order;
    const best = offers.reduce((a, b) => (b.rank > a.rank ? b : a));
    order.push(best.basket);
    Object.assign(counts, best.after);
  }
}

describe('the ladder', () => {
  it('takes the incentive off every price, and off a step its own', async () => {
    const steps = STEPS.map((step) => (step.id === 'thrift' ? { ...step, incentivePercent: 0 } : step));
    const { rungs } = await ask(houseWith({ steps, incentivePercent: 30 }));
    const priceOf = (id: string) => rungs.find((rung) => rung.stepIds.at(-1) === id)!.price;
    expect(priceOf('module')).toBeCloseTo(70, 9);
    // Together with the module on the second unit, which gains nothing without it: 84 + 1000.
    expect(priceOf('thrift')).toBeCloseTo(1084, 9);
  });

  it('keeps to the budget asked for instead of the scenario’s', async () => {
    const { rungs, ended, left, budget } = await ask(houseWith({ budget: 5000 }), { budget: 150 });
    expect(budget).toBe(150);
    expect(rungs.map((rung) => rung.stepIds)).toEqual([['careful'], ['module']]);
    expect(ended).toBe('budget');
    expect(left.find((step) => step.id === 'second')!.why).toBe('over the budget');
    // it takes the second unit with it: 520 beyond the 100 paid
    expect(left.find((step) => step.id === 'west-module')!.why).toBe('over the budget');
  });

  it('says that everything outlasts the horizon, and that more days would show more', async () => {
    const spec = houseWith();
    const { rungs, ended, left } = await ask({ ...spec, outage: { ...spec.outage, horizonDays: 0.6 } });
    expect(ended).toBe('horizon');
    expect(rungs.map((rung) => rung.stepIds)).toEqual([['careful']]);
    expect(rungs[0]!.days.value).toBeNull();
    expect(left.every((step) => step.why === 'not needed within the horizon')).toBe(true);
  });

  it('does without the check when there are too many combinations, and climbs the same', async () => {
    const [with_, without] = [await ask(houseWith()), await ask(houseWith(), { mostRuns: 3 })];
    expect(without.all).toBeNull();
    expect(without.rungs).toEqual(with_.rungs);
  });

  it('asks one study for all combinations and one for the fresh draws', async () => {
    const seeds: string[] = [];
    const counted: AskStudy = (scenario, question) => {
      seeds.push(question.seed);
      return askHere(scenario, question);
    };
    await ask(houseWith(), {}, counted);
    expect(seeds).toEqual(['paper', 'paper/fresh']);
  });

  it('takes a rung back that loses on the fresh draws, and goes on without it', async () => {
    const hold = await ask(houseWith());
    const thriftLoses: AskStudy = async (scenario, question) => {
      const { outline, rows } = await askHere(scenario, question);
      if (question.seed === 'paper') return { outline, rows };
      const { alternative, runtimeMinutes } = rows.columns;
      const isThrifty = (a: number) => outline.alternatives[a]!.id.split('-').at(-2) === '1';
      const times = runtimeMinutes!.map((time, row) => (isThrifty(alternative![row]!) ? 60 : time));
      return { outline, rows: { ...rows, columns: { ...rows.columns, runtimeMinutes: times } } };
    };
    const answer = await ask(houseWith(), {}, thriftLoses);
    const ids = ({ rungs }: LadderAnswer) => rungs.flatMap((rung) => rung.stepIds);
    expect(ids(hold)).toContain('thrift');
    expect(ids(answer)).not.toContain('thrift');
    expect(ids(answer)).toEqual(ids(hold).slice(0, ids(answer).length));
    expect(answer.takenBack.length).toBeGreaterThan(0);
    for (const { stepIds, told, gainDays } of answer.takenBack) {
      expect(stepIds).toContain('thrift');
      expect([told, gainDays.high! < 0]).toEqual(['a loss', true]);
    }
    expect(answer.left.find(({ id }) => id === 'thrift')!.why).toBe('taken back');
    expect(answer.rungs.every(({ told }) => told === 'clear')).toBe(true);
  });

  it('is refused where the scenario has none', async () => {
    await expect(ask({ ...houseWith(), ladder: undefined })).rejects.toThrow('no ladder');
  });
});
