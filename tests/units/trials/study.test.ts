import { describe, expect, it } from 'vitest';
import { prepareStudy, runShard, scenarioHash, VERSION } from '../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../packages/sim/src/node.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const scenario = tinyScenario({
  units: [{}, {}],
  circuits: {
    a: { watts: 1, need: 'talk' },
    b: { watts: 1, need: 'food', leg: 'L2' },
    c: { watts: 1, need: 'talk' },
  },
  hours: 36,
});

describe('prepareStudy', () => {
  it('tells what the rows’ positions mean, and what is needed to repeat them', () => {
    expect(prepareStudy(scenario, { seed: 'any text' })).toMatchObject({
      scenarioHash: scenarioHash(scenario),
      seed: 'any text',
      version: VERSION,
      horizonDays: 1.5,
      minutes: 2160,
      alternatives: [{ id: 'as-described' }],
      strategies: [{ id: 'rules', carriedOutBy: 'switch' }],
      unitIds: ['east', 'west'],
      needs: ['talk', 'food'],
    });
  });

  it('refuses a seed that is no text and rows that there are not', () => {
    const attempt = (options: object) => () => prepareStudy(scenario, options as { seed: string });
    expect(attempt({ seed: 7 })).toThrow(new TypeError('seed: found 7; expected a text'));
    expect(attempt({ seed: 'a', rows: 'all' })).toThrow(
      new RangeError('rows: found all; expected outcomes or runtimes'),
    );
    expect(attempt({ seed: '' })).not.toThrow();
  });

  it('makes studies that come to the same whatever site and sky were studied before', () => {
    const { scenario: demo } = loadScenario('data/full-house.yaml');
    const here = { ...demo, outage: { ...demo.outage, horizonDays: 2 } };
    const elsewhere = {
      ...here,
      site: { ...here.site, latitudeDeg: 30, longitudeDeg: -100 },
      weather: { ...here.weather, source: loadScenario('data/small-house.yaml').scenario.weather.source },
    };
    const rowsOf = (scenario: typeof here) => runShard(prepareStudy(scenario, { seed: 'sky' }), 0, 3);
    const first = rowsOf(here);
    const other = rowsOf(elsewhere);
    expect(rowsOf(here)).toStrictEqual(first);
    expect(rowsOf(elsewhere)).toStrictEqual(other);
    expect(other).not.toStrictEqual(first);
  });

  it('does not change the scenario, and does no draw', () => {
    const frozen = deepFreeze(structuredClone(scenario));
    expect(() => prepareStudy(frozen, { seed: 'x' })).not.toThrow();
    expect(frozen).toEqual(scenario);
  });

  it('names the needs of every alternative', () => {
    const [first] = scenario.alternatives;
    const circuits = first!.household.circuits.map((c) => ({ ...c, need: 'water' }));
    const second = { id: 'other', title: 'Other', household: { ...first!.household, circuits } };
    expect(prepareStudy({ ...scenario, alternatives: [first!, second] }, { seed: 'x' }).needs).toEqual([
      'talk',
      'food',
      'water',
    ]);
  });
});

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
