/** Twelve hex digits that name a scenario's content, whatever it looks like on disk. */
import { describe, expect, it } from 'vitest';
import { scenarioHash, type Scenario } from '../../../packages/sim/src/index.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const scenario = tinyScenario({ circuits: { a: { watts: 100 }, b: { watts: 50 } }, hours: 24 });

/** The same content with the keys of every block in the other order. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, part]) => [key, reversed(part)]),
  );
}

describe('scenarioHash', () => {
  it('is twelve hex digits', () => {
    expect(scenarioHash(scenario)).toMatch(/^[0-9a-f]{12}$/);
  });

  it('is the same for the same content in another order of keys, a copy, or with keys left out that hold nothing', () => {
    const other = { ...(reversed(scenario) as Scenario), prices: undefined };
    expect(Object.keys(other)[0]).not.toBe(Object.keys(scenario)[0]);
    expect(scenarioHash(other)).toBe(scenarioHash(scenario));
    expect(scenarioHash(JSON.parse(JSON.stringify(scenario)) as Scenario)).toBe(scenarioHash(scenario));
  });

  it.each([
    ['a title', { title: 'Another' }],
    ['a place', { site: { ...scenario.site, latitudeDeg: 40.000001 } }],
    ['a horizon', { outage: { ...scenario.outage, horizonDays: 2 } }],
    [
      'an order of alternatives',
      { alternatives: [...scenario.alternatives, { ...scenario.alternatives[0]!, id: 'second' }] },
    ],
  ] as const)('changes with %s', (_, change) => {
    expect(scenarioHash({ ...scenario, ...change })).not.toBe(scenarioHash(scenario));
  });

  it('changes with the order of circuits, which names them in the rows', () => {
    const [first] = scenario.alternatives;
    const circuits = [...first!.household.circuits].reverse();
    const turned = {
      ...scenario,
      alternatives: [{ ...first!, household: { ...first!.household, circuits } }],
    };
    expect(scenarioHash(turned)).not.toBe(scenarioHash(scenario));
  });

  it('is unchanged since 0.1.0 for this scenario', () => {
    expect(scenarioHash(scenario)).toBe('c181ff39834a');
  });
});
