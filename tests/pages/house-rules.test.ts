/** What lies behind the form "Describe your house": a household written back as a file, and small rules. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioHash } from '@rideout/sim';
import { loadScenario, readDataFile } from '@rideout/sim/node';
import { changesBetween } from '../../packages/notebooks/src/page/house-changes.ts';
import { checkHouse, checkText } from '../../packages/notebooks/src/page/house-check.ts';
import { houseText, openedSpec } from '../../packages/notebooks/src/page/house-file.ts';
import { writtenHouse } from '../../packages/notebooks/src/page/house-from-scenario.ts';
import { zoneHint } from '../../packages/notebooks/src/page/house-place.ts';
import { readyStrategies } from '../../packages/notebooks/src/page/house-ready-strategies.ts';
import { withoutCircuit } from '../../packages/notebooks/src/page/house-removals.ts';
import { stretchesFrom, stretchFrom } from '../../packages/notebooks/src/page/house-times.ts';
import { houseTables } from '../../packages/notebooks/src/page/house-tables.ts';
import { slug } from '../../packages/notebooks/src/page/slug.ts';
import { fileOf, fullHouse, smallHouse } from './houses.ts';

const tables = houseTables(readDataFile('appliances.csv'), readDataFile('normals.csv'));
const small = smallHouse();
const full = fullHouse();
const MEASURED =
  'time,watts\n' + Array.from({ length: 24 }, (_, h) => `${h}:00,${h === 18 ? 900 : 40}\n`).join('');

describe('a household written back from what a page carries', () => {
  for (const [name, scenario] of [
    ['small', small],
    ['full', full],
  ] as const) {
    for (const kind of ['yaml', 'json'] as const)
      it(`gives the very same scenario when it is read again (${name}, ${kind})`, () => {
        const { spec, files } = writtenHouse(scenario, tables);
        const { scenario: again, findings } = checkText(houseText(spec, kind), 'saved', files, tables);
        expect(findings).toEqual([]);
        expect(scenarioHash(again!)).toBe(scenarioHash(scenario));
      });
  }

  it('names typical appliances by their row and leaves usual values out', () => {
    const text = houseText(writtenHouse(full, tables).spec, 'yaml');
    expect(text).toContain('typical: refrigerator-old\n        surroundings: garage');
    expect(text).toContain('units.*.battery.modules: 2');
    expect(text).not.toMatch(
      /dayScatterFraction|latitudeDeg: .*\n.*groundReflectance|timeConstantHours|dischargeEfficiency/,
    );
    expect(text.split('\n').length).toBeLessThan(520);
  });

  it('keeps measured records by name', () => {
    const folder = mkdtempSync(join(tmpdir(), 'rideout-measured-'));
    writeFileSync(join(folder, 'desk.csv'), MEASURED);
    const spec = openedSpec(readFileSync(fileOf('../../data/small-house.yaml'), 'utf8'), 'small', tables);
    const circuits = spec.circuits.map((c, i) =>
      i === 5 ? { ...c, appliances: [{ kind: 'measured' as const, file: 'desk.csv' }] } : c,
    );
    writeFileSync(join(folder, 'house.yaml'), houseText({ ...spec, circuits }, 'yaml'));
    const { scenario } = loadScenario(join(folder, 'house.yaml'));
    const written = writtenHouse(scenario, tables);
    expect([...written.files.profiles.keys()]).toEqual(['desk.csv']);
    expect(scenarioHash(checkHouse(written.spec, written.files, tables).scenario!)).toBe(
      scenarioHash(scenario),
    );
    rmSync(folder, { recursive: true, force: true });
  });
});

describe('changesBetween(before, after)', () => {
  it('says parts by id, by position, by * when all change alike, and the whole when something was taken away', () => {
    const list = (a: number, b: number) => ({
      units: [
        { id: 'x', n: a },
        { id: 'y', n: b },
      ],
    });
    expect(changesBetween(list(1, 1), list(2, 2))).toEqual({ 'units.*.n': 2 });
    expect(changesBetween(list(1, 1), list(1, 2))).toEqual({ 'units.y.n': 2 });
    expect(changesBetween({ a: [1, 2] }, { a: [1, 3] })).toEqual({ a: [1, 3] });
    expect(changesBetween({ a: [1, 2] }, { a: [1] })).toEqual({ a: [1] });
    expect(changesBetween({ a: { b: 1, c: 1 } }, { a: { b: 1 } })).toEqual({ a: { b: 1 } });
    expect(changesBetween(list(1, 1), list(1, 1))).toEqual({});
  });
});

describe('the ready-made strategies', () => {
  it('can each be used as they are, in both demo households', () => {
    let used = 0;
    for (const scenario of [small, full]) {
      const { spec, files } = writtenHouse(scenario, tables);
      const ready = readyStrategies(spec);
      const strategies = ready.map((strategy, i) => ({
        ...strategy,
        id: `ready-${i}`,
        rules: [...strategy.rules],
      }));
      delete spec.ladder; // names the strategies that it has
      expect(checkHouse({ ...spec, strategies }, files, tables).findings).toEqual([]);
      used += ready.length;
    }
    expect(used).toBeGreaterThan(11);
  });

  it('ask for nothing that a household of one unit does not have', () => {
    const ready = readyStrategies(writtenHouse(small, tables).spec);
    expect(ready.flatMap(({ rules }) => rules.map((rule) => rule.by))).not.toContain('sleep');
  });
});

describe('small rules of the form', () => {
  it('a stretch of the day is understood as people type it', () => {
    expect(stretchFrom('6:30 am – 10:30 PM')).toBe('06:30-22:30');
    expect(stretchFrom('7:00 to 23:00')).toBe('07:00-23:00');
    expect(stretchFrom('whenever')).toBe('whenever');
    expect(stretchesFrom('07:00-08:00 18:00-19:00; 9 pm - 10 pm')).toEqual([
      '07:00-08:00',
      '18:00-19:00',
      '21:00-22:00',
    ]);
  });

  it('a circuit that is taken away is let go by rules and alternatives', () => {
    const { spec, files } = writtenHouse(full, tables);
    const at = spec.circuits.findIndex((c) => c.id === 'freezer');
    const alternatives = [
      ...spec.alternatives!,
      { id: 'no', title: 'No', change: { 'circuits.freezer.tier': 5 } },
    ];
    const less = withoutCircuit({ ...spec, alternatives }, at);
    expect(JSON.stringify(less)).not.toContain('"freezer"');
    expect(checkHouse(less, files, tables).findings).toEqual([]);
  });

  it('a clock hours away from the weather place is told', () => {
    const phoenix = tables.places.get('phoenix')!;
    expect(zoneHint('America/Phoenix', phoenix)).toMatch(/^Such as/);
    expect(zoneHint('America/New_York', phoenix)).toContain('2 hours away');
    expect(zoneHint('Asia/Kolkata', phoenix)).toContain('12.5 hours away');
  });

  it('any title makes a name that a scenario takes', () => {
    for (const title of ['Café № 3', '3 fans', '', '   ', 'x'.repeat(90)])
      expect(slug(title)).toMatch(/^([a-z][a-z0-9-]{0,35})?$/);
  });
});
