/** A ladder in a scenario file: read whole, or every fault told with its line. */
import { describe, expect, it } from 'vitest';
import { GENERATOR_CAUTION, resolveScenario, scenarioCautions } from '../../../packages/sim/src/index.ts';
import { BRIDGE_CAUTION } from '../../../packages/sim/src/advice/bridge-caution.ts';
import type { Scenario } from '../../../packages/sim/src/index.ts';
import { householdAfter } from '../../../packages/sim/src/scenario/ladder-plan.ts';
import { findingsOf, HOUSE, lineWith, onlyFinding, read } from './written.ts';

const LADDER = `prices:
  currency: $
  items: { unit: 900, module: 500 }
ladder:
  start:
    title: One unit
    without: [units.west]
    change: { units.east.leg: both }
    strategy: everything
  budget: 3000
  incentivePercent: 10
  steps:
    - { id: second-unit, title: Second unit, buys: { unit: 1, module: 2 }, brings: [units.west], change: { units.east.leg: L1 } }
    - { id: module, title: A module, price: 500, add: { 'units.*.battery.modules': 1 }, needs: [second-unit], atMost: 2 }
    - { id: lamp, title: One lamp, price: 10, change: { circuits.hall.appliances: [{ typical: lamp }] } }
    - { id: sparing, title: Sparing, strategy: sparing }
`;
const SPARING = `  - id: sparing
    title: Sparing
    rules: [{ by: outage, circuits: { tiers: [2] } }]
alternatives:`;

const FILE = HOUSE.replace('alternatives:', SPARING) + LADDER;

function spoilt(part: string, by: string): string {
  if (!FILE.includes(part)) throw new Error(`nothing to spoil: ${part}`);
  return FILE.replace(part, by);
}

function resolved(text: string): Scenario {
  const monthly = {
    clearnessMean: new Array<number>(12).fill(0.5),
    dryBulbMeanC: new Array<number>(12).fill(10),
  };
  const normals = new Map([['boston', { name: 'Boston', monthly }]]);
  return resolveScenario(read(text), { normals, years: new Map(), profiles: new Map() });
}

describe('a ladder', () => {
  const { ladder, alternatives } = resolved(FILE);
  const after = (...counts: number[]) => householdAfter(ladder!.household, ladder!, counts);

  it('starts without what is missing, changed as it says', () => {
    const { units, circuits } = after(0, 0, 0, 0);
    expect(units.map((u) => [u.id, u.leg, u.battery.modules])).toEqual([['east', 'both', 1]]);
    expect(circuits.map((c) => c.id)).toEqual(['kitchen', 'hall', 'pump']);
  });

  it('adds to numbers that nobody wrote: a default is a number too', () => {
    expect(after(1, 2, 0, 0).units.map((u) => [u.id, u.leg, u.battery.modules])).toEqual([
      ['east', 'L1', 3],
      ['west', 'L2', 3],
    ]);
  });

  it('fills typical appliances in', () => {
    const { appliances } = after(0, 0, 1, 0).circuits[1]!;
    expect(appliances).toMatchObject([{ kind: 'steady', runningW: 9, count: 1, dayScatterFraction: 0.1 }]);
  });

  it('leaves the household as described and its alternatives alone', () => {
    const before = structuredClone(ladder!.household);
    after(1, 2, 1, 1);
    expect(ladder!.household).toEqual(before);
    expect(alternatives.map((a) => a.id)).toEqual(['as-it-is', 'more']);
  });

  it('is the same each time it is climbed: what one step sets, another may change, and the plan keeps its own', () => {
    const brighter = `    - { id: brighter, title: Brighter, price: 20, add: { circuits.hall.appliances.lamp.runningW: 2 }, needs: [lamp] }
`;
    const lamp = '{ id: lamp, kind: steady, runningW: 9 }] }';
    const { ladder: plan } = resolved(FILE.replace('{ typical: lamp }] }', lamp) + brighter);
    const hall = () => householdAfter(plan!.household, plan!, [0, 0, 1, 0, 1]).circuits[1]!.appliances;
    expect([hall(), hall()]).toMatchObject([[{ runningW: 11 }], [{ runningW: 11 }]]);
  });

  it('takes the incentive off prices and adds up what a step buys', () => {
    expect(ladder!.steps.map((step) => step.price)).toEqual([1710, 450, 9, 0]);
    expect(ladder).toMatchObject({ currency: '$', budget: 3000, confidence: 0.9 });
    expect(ladder!.steps.map((step) => step.needs)).toEqual([[], [0], [], []]);
  });

  it('can bring a generator to a household that had no other source, and then its caution is said', () => {
    const charger = 'startFraction: 0.9\n    charger: { maxW: 1000 }';
    const generator = `    - id: generator
      title: A generator
      price: 700
      change: { sources.generator: { ratedW: 5000, volts: 240, tankL: 20, run: { by: charge, startBelowFraction: 0.3, stopAboveFraction: 0.8 } } }
`;
    const scenario = resolved(FILE.replaceAll('startFraction: 0.9', charger) + generator);
    const taken = (n: number) =>
      householdAfter(scenario.ladder!.household, scenario.ladder!, [1, 0, 0, 0, n]);
    expect(taken(0).sources).toBeUndefined();
    expect(taken(1).sources?.generator).toMatchObject({ ratedW: 5000, tankL: 20 });
    expect(scenarioCautions(scenario)).toEqual([GENERATOR_CAUTION, BRIDGE_CAUTION]);
    expect(scenarioCautions(resolved(FILE))).toEqual([BRIDGE_CAUTION]);
  });

  it('need not fit strategies that it never follows: one unit keeps no watch', () => {
    expect(read(FILE).scenario.strategies.map((s) => s.id)).toContain('careful');
    expect(findingsOf(spoilt('strategy: everything', 'strategy: careful'))[0]).toMatchObject({
      expected: 'the id of a unit',
      line: lineWith('  start:', FILE),
    });
  });
});

describe('a fault in a ladder', () => {
  it('hides none of another step, and is not told again of steps that need it', () => {
    const text = FILE.replace('price: 500', 'price: -500')
      .replace('{ unit: 1,', '{ unti: 1,')
      .replace('typical: lamp }] }', 'typical: lamp, count: 0 }] }')
      .replace('title: Sparing, strategy: sparing', 'title: Sparing, strategy: spraing')
      .concat('    - { id: shed, title: Shed, change: { units.east.battery.moduls: 2 }, needs: [lamp] }\n');
    expect(
      findingsOf(text)
        .map(({ line, path }) => [line, path])
        .sort(),
    ).toEqual(
      [
        [lineWith('unti: 1', text), 'ladder.steps.second-unit.buys.unti'],
        [lineWith('price: -500', text), 'ladder.steps.module.price'],
        [lineWith('count: 0', text), 'circuits.hall.appliances.lamp.count'],
        [lineWith('spraing', text), 'ladder.steps.sparing.strategy'],
        [lineWith('moduls', text), 'units.east.battery.moduls'],
      ].sort(),
    );
  });

  it.each([
    ['price: 500', 'price: -500', 'price: -500', '-500', 'a number of at least 0'],
    ['budget: 3000', 'budget: -1', 'budget: -1', '-1', 'a number of at least 0'],
    ['incentivePercent: 10', 'incentivePercent: 110', 'incentivePercent', '110', 'a number of at most 100'],
    ['module: 500 }', 'module: -5 }', 'module: -5', '-5', 'a number of at least 0'],
    ['atMost: 2', 'atMost: 0', 'id: module', '0', 'a number of at least 1'],
    ['buys: { unit: 1,', 'buys: { unti: 1,', 'unti', '"unti"', 'an item of prices.items'],
    [
      'needs: [second-unit]',
      'needs: [module]',
      'id: module',
      '"module"',
      'another step: none can come before itself',
    ],
    ['needs: [second-unit]', 'needs: [lamp]', 'id: module', '"lamp"', 'a step further up the list'],
    ['needs: [second-unit]', 'needs: [secnd-unit]', 'id: module', '"secnd-unit"', 'the id of a step'],
    ['id: lamp', 'id: module', 'title: One lamp', '"module"', 'an id used once only among the steps'],
    ['strategy: sparing }', 'strategy: spraing }', 'spraing', '"spraing"', 'the id of a strategy'],
    [
      'Sparing, strategy: sparing',
      'Sparing',
      'title: Sparing }',
      'a step that does nothing',
      'at least one of brings, change, add, strategy',
    ],
    [
      'price: 10,',
      'price: 10, buys: { unit: 1 },',
      'One lamp',
      'a price and a list of what it buys',
      'either price or buys',
    ],
    [
      'without: [units.west]',
      'without: [units.wets]',
      'without',
      '"units.wets"',
      'the path of a part of the household, such as units.west',
    ],
    [
      'brings: [units.west]',
      "brings: ['units.*']",
      'id: second-unit',
      '"units.*"',
      'a part that ladder.start.without names',
    ],
    [
      'units.east.leg: both }',
      'units.east.leg: both, strategies.careful.title: Calm }',
      'strategies.careful.title',
      'a change of "strategies"',
      'strategy and the id of a strategy, instead of a change to strategies',
    ],
    [
      'circuits.hall.appliances: [{',
      'strategies.careful.rules: [{',
      'id: lamp',
      'a change of "strategies"',
      'strategy and the id of a strategy, instead of a change to strategies',
    ],
    [
      "'units.*.battery.modules': 1",
      "'units.*.battery.modulse': 1",
      'modulse',
      'nothing named "units.*.battery.modulse" there',
      'the path of a number that the household has once the steps it needs are taken',
    ],
    ["'units.*.battery.modules': 1", "'units.*.leg': 1", "'units.*.leg'", '"L1"', 'a number to add to'],
  ])('is told once with its line: %s as %s', (part, by, at, found, expected) => {
    const text = spoilt(part, by);
    const findings = findingsOf(text).filter((f) => f.expected === expected);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ found, line: lineWith(at, text) });
    if (!by.includes('wets')) expect(findingsOf(text)).toHaveLength(1);
  });

  it('is an empty list of steps', () => {
    const text = FILE.slice(0, FILE.indexOf('  steps:\n')) + '  steps: []\n';
    expect(onlyFinding(text)).toMatchObject({
      path: 'ladder.steps',
      line: lineWith('steps: []', text),
      expected: 'a list with a length of at least 1',
    });
  });

  it('is a price without a currency', () => {
    const text = FILE.replace(/prices:\n.*\n.*\n/, '').replace('buys: { unit: 1, module: 2 }', 'price: 0');
    const findings = findingsOf(text);
    expect(findings.map((f) => f.path)).toEqual(['ladder.steps.module.price', 'ladder.steps.lamp.price']);
  });

  it('is a second unit that comes while the first still feeds both sides', () => {
    const finding = findingsOf(spoilt(', change: { units.east.leg: L1 }', ''))[0]!;
    expect(finding).toMatchObject({
      path: 'units.east.leg',
      line: lineWith('id: second-unit', FILE),
      expected: 'L1 or L2: each unit of a pair feeds its own; both is for a unit alone',
    });
  });

  it('is a part of a unit that is not there yet, told at the step that asks for it', () => {
    const text = spoilt(
      "'units.*.battery.modules': 1 }, needs: [second-unit]",
      "'units.west.battery.modules': 1 }",
    );
    expect(onlyFinding(text)).toMatchObject({
      line: lineWith('id: module', text),
      expected: 'the path of a number that the household has once the steps it needs are taken',
    });
  });

  it('is a number that grows past its limit when the step is taken as often as it may be', () => {
    const text = spoilt("'units.*.battery.modules': 1", "'units.*.battery.modules': 40");
    expect(findingsOf(text)[0]).toMatchObject({ expected: 'a number of at most 64', found: '81' });
  });
});
