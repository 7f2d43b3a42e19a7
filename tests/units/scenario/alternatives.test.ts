/** Alternatives: one thing changed, and the same weather. */
import { describe, expect, it } from 'vitest';
import type { ReadScenario } from '../../../packages/sim/src/index.ts';
import { lineWith, onlyFinding, read, spoilt } from './written.ts';

const changeLine = lineWith('change:');
const changed = (change: string) => spoilt("{ 'units.*.battery.modules': 2 }", change);

type Household = ReadScenario['scenario'];
const modules = (s: Household) => s.units.map((u) => u.battery.modules);
const hallKinds = (s: Household) => s.circuits[1]!.appliances.map((a) => ('kind' in a ? a.kind : ''));

describe('a change', () => {
  it.each([
    ["{ 'units.west.battery.modules': 3 }", modules, [1, 3]],
    ["{ 'units.0.battery.modules': 3 }", modules, [3, 1]],
    ["{ 'units.*.battery.modules': 3, 'units.east.battery.modules': 4 }", modules, [4, 3]],
    ["{ 'pair.stopsTogether': true }", (s: Household) => s.pair.stopsTogether, true],
    [
      "{ person: { awake: '05:00-21:00' } }",
      (s: Household) => [s.person.awake, s.person.looksEveryMinutes],
      ['05:00-21:00', 60],
    ],
    ["{ 'circuits.hall.appliances.0': { typical: kettle } }", hallKinds, ['events', 'steady']],
    ["{ 'circuits.hall.appliances.lamp': { typical: kettle } }", hallKinds, ['events', 'steady']],
  ] as const)('%s is made in its alternative and nowhere else', (change, look, expected) => {
    const { scenario, alternatives } = read(changed(change));
    expect(look(alternatives[1]!.scenario)).toEqual(expected);
    expect(look(alternatives[0]!.scenario)).toEqual(look(scenario));
    expect(look(scenario)).not.toEqual(expected);
  });

  it.each([
    ["{ 'weather.normals': phoenix }", 'weather.normals', 'a change of "weather"'],
    ["{ 'outage.months': [7] }", 'outage.months', 'a change of "outage"'],
    ["{ 'site.latitudeDeg': 10 }", 'site.latitudeDeg', 'a change of "site"'],
    ["{ 'alternatives.more.title': x }", 'alternatives.more.title', 'a change of "alternatives"'],
    ["{ '': 1 }", '', 'a change of ""'],
  ])('%s is refused: every alternative meets the same draws', (change, path, found) => {
    expect(onlyFinding(changed(change))).toMatchObject({ path, found, line: changeLine });
    expect(onlyFinding(changed(change)).expected).toBe(
      'a path into units, pair, sources, circuits, usage, person, strategies: every alternative meets the same weather',
    );
  });

  it.each([
    ["{ 'units.wets.battery.modules': 2 }", 'nothing named "wets" there', 'Did you mean west?'],
    ["{ 'units.7.battery.modules': 2 }", 'nothing named "7" there', 'There is: east, west.'],
    ["{ 'units.east.': 2 }", 'nothing named "" there', undefined],
    ["{ 'site-of-another': 2 }", 'a change of "site-of-another"', undefined],
  ])('%s that leads nowhere is told so', (change, found, hint) => {
    expect(onlyFinding(changed(change))).toMatchObject({ found, hint, line: changeLine });
  });

  it.each([
    ["{ 'units.east.battery.moduls': 2 }", 'units.east.battery.moduls', 'Did you mean modules?'],
    ["{ 'units.east.battery.modules': 200 }", 'units.east.battery.modules', undefined],
    ["{ 'circuits.hall.leg': L3 }", 'circuits.hall.leg', 'Did you mean L1?'],
    [
      "{ 'strategies.careful.rules.1.unit': north }",
      'strategies.careful.rules.1.unit',
      'There is: east, west.',
    ],
  ])('%s that makes an unsound household is told on its own line', (change, path, hint) => {
    expect(onlyFinding(changed(change))).toMatchObject({ path, hint, line: changeLine });
  });

  it('of the strategies’ names is refused: curves are compared strategy by strategy', () => {
    expect(onlyFinding(changed("{ 'strategies.careful.id': bold }"))).toMatchObject({
      found: 'everything, bold',
      expected: 'the same strategies as the scenario: everything, careful',
    });
  });

  it('cannot reach past the household into the program', () => {
    for (const path of [
      'person.__proto__.polluted',
      '__proto__.polluted',
      'units.__proto__.polluted',
      'person.constructor.prototype.polluted',
    ]) {
      expect(() => read(changed(`{ '${path}': 1 }`))).toThrow();
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    }
  });
});
