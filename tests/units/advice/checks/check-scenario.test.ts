/** The report as a whole. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CHECK_RULES } from '../../../../packages/sim/src/advice/checks/check-rules.ts';
import {
  checkScenario,
  checkSubjectsTable,
  findingNumbersTable,
  findingsTable,
  prepareStudy,
  runShard,
  SEVERITIES,
  uncheckedTable,
  type Scenario,
} from '../../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../../packages/sim/src/node.ts';

const SOURCE = fileURLToPath(new URL('../../../../packages/sim/src/', import.meta.url));
const { scenario } = loadScenario(
  fileURLToPath(new URL('../../../../data/full-house.yaml', import.meta.url)),
);
const options = { seed: 'rideout', draws: 3, days: 1 };
const report = checkScenario(scenario, options);

describe('a check', () => {
  it('looks at every subject once and tells how many things it looked at', () => {
    const ids = report.subjects.map((s) => s.id);
    expect(ids).toHaveLength(18);
    expect(new Set(ids).size).toBe(18);
    for (const { id, findings, unchecked } of report.subjects) {
      expect(findings, id).toBe(report.findings.filter((f) => f.check === id).length);
      expect(unchecked, id).toBe(report.unchecked.filter((u) => u.check === id).length);
    }
  });

  it('tells the most pressing first', () => {
    const order = report.findings.map((f) => SEVERITIES.indexOf(f.severity));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(order).size).toBe(3);
  });

  it('gives every finding its numbers, what to do and the rule it rests on', () => {
    expect(report.findings.length).toBeGreaterThan(15);
    for (const { found, todo, where, rule, numbers } of report.findings) {
      for (const text of [found, todo, where, rule.source, rule.says]) expect(text).not.toBe('');
      expect(found).not.toMatch(/NaN|undefined|Infinity/);
      expect(numbers.length, found).toBeGreaterThan(0);
      for (const { what, value } of numbers) expect(Number.isFinite(value), what).toBe(true);
    }
  });

  it('finds the slips that the demo house holds on purpose', () => {
    const mend = report.findings.filter((f) => f.severity === 'mend').map((f) => f.where);
    expect(mend).toEqual([
      'circuits.garage-fridge.breakerA',
      'units.west.wiring.wireAwg',
      'units.west.wiring.breakerA',
      'circuits.kitchen.sharedNeutralWith',
      'units.west.solar.arrays.0.string.inSeries',
      'units.west.charger.feed',
    ]);
  });

  it('says which draws it watched, and gives the same bits again', () => {
    expect(report.provenance).toMatchObject({ seed: 'rideout', draws: 3 });
    expect(checkScenario(scenario, options)).toEqual(report);
  });

  it('looks at the version it is asked for', () => {
    const two = checkScenario(scenario, { ...options, alternative: 1 });
    expect(two.alternativeId).toBe('two-modules');
    expect(() => checkScenario(scenario, { ...options, alternative: 9 })).toThrow(RangeError);
  });

  it('defers to code and electrician, and warns of exhaust where an engine is', () => {
    expect(report.caution).toContain('local code and a licensed electrician');
    expect(report.caution).not.toContain('carbon monoxide');
    const back = loadScenario('data/energy-back.yaml').scenario;
    const generator = back.alternatives.filter(({ household }) => household.sources?.generator !== undefined);
    const engine = checkScenario({ ...back, alternatives: generator }, { ...options, draws: 1 });
    expect(engine.caution).toContain('carbon monoxide');
  });
});

describe('the words of a check', () => {
  const files = [
    ...readdirSync(`${SOURCE}advice/checks`).map((name) => `${SOURCE}advice/checks/${name}`),
    `${SOURCE}cli/render-check.ts`,
    `${SOURCE}cli/check.ts`,
  ];

  it('never call anything safe', () => {
    expect(files.length).toBeGreaterThan(30);
    for (const file of files)
      expect(readFileSync(file, 'utf8'), file).not.toMatch(/\b(un)?safe(ly|r|ty)?\b/i);
  });

  it('name a standard, or say that there is none, or that it is from memory', () => {
    for (const { source, standing } of Object.values(CHECK_RULES)) {
      if (standing === 'published') expect(source).toMatch(/^NEC (Table )?\d/);
      else if (standing === 'from memory') expect(source).toContain('from memory');
      else expect(source).toBe('common practice, no source');
    }
  });
});

describe('its tables', () => {
  it('have a row for every finding, number, unchecked thing and subject', () => {
    expect(findingsTable(report).numRows()).toBe(report.findings.length);
    expect(findingNumbersTable(report).numRows()).toBe(report.findings.flatMap((f) => f.numbers).length);
    expect(uncheckedTable(report).numRows()).toBe(report.unchecked.length);
    expect(checkSubjectsTable(report).numRows()).toBe(18);
    expect(findingsTable(report).get('severity', 0)).toBe('mend');
    const [first] = report.findings;
    expect(findingNumbersTable(report).get('value', 0)).toBe(first!.numbers[0]!.value);
  });
});

describe('the kernel', () => {
  it('reads none of the keys of wires, strings, feeds and records', () => {
    const rowsOf = (one: Scenario) =>
      runShard(prepareStudy({ ...one, outage: { ...one.outage, horizonDays: 2 } }, { seed: 'x' }), 0, 2);
    expect(rowsOf(withoutWiring(scenario))).toEqual(rowsOf(scenario));
  });
});

function withoutWiring(one: Scenario): Scenario {
  const bare = structuredClone(one) as unknown as {
    site: Record<string, unknown>;
    alternatives: { household: { units: Record<string, never>[]; circuits: Record<string, never>[] } }[];
  };
  delete bare.site['recordLowC'];
  delete bare.site['recordHighC'];
  for (const { household } of bare.alternatives) {
    for (const circuit of household.circuits)
      for (const key of ['breakerA', 'wireAwg', 'runM', 'sharedNeutralWith']) delete circuit[key];
    for (const unit of household.units) {
      delete unit['wiring'];
      const { solar, charger } = unit as unknown as {
        solar: { window?: unknown; arrays: { string?: unknown }[] };
        charger: { feed?: unknown };
      };
      delete solar.window;
      delete charger.feed;
      for (const array of solar.arrays) delete array.string;
    }
  }
  return bare as unknown as Scenario;
}
