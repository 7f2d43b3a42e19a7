import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import { loadScenario } from '../../packages/sim/src/node.ts';
import { createWorkspace, fillDraw } from '../../packages/sim/src/trials/workspace.ts';
import { DRAW_STAGES, drawLaps } from './draw-laps.ts';
import type { Figure } from './figure.ts';
import { inverterMinutesPerDraw, speed } from './figure.ts';
import { SEED } from './session.ts';
import { digits, renderFigures } from './table.ts';
import { variant } from './variant.ts';

const demo = loadScenario(fileURLToPath(new URL('../../data/full-house.yaml', import.meta.url))).scenario;
const householdOf = (options: Parameters<typeof variant>[1]) =>
  variant(demo, options).alternatives[0]!.household;

describe('variant', () => {
  it('asked for nothing gives the same scenario', () => {
    expect(variant(demo, {})).toEqual(demo);
  });

  it.each([5, 20, 60])('makes %i circuits with ids of their own', (circuits) => {
    const ids = householdOf({ circuits }).circuits.map((c) => c.id);
    expect(new Set(ids).size).toBe(circuits);
  });

  it('shares the watts among the copies of a circuit', () => {
    const { circuits } = householdOf({ circuits: 60 });
    const copies = circuits.filter((c) => /^well(-\d)?$/.test(c.id)).map((c) => c.appliances[0]!);
    const whole = demo.alternatives[0]!.household.circuits.find((c) => c.id === 'well')!.appliances[0]!;
    const watts = (a: typeof whole) => ('runningW' in a ? a.runningW : 0);
    expect(copies).toHaveLength(3);
    expect(copies.reduce((sum, a) => sum + watts(a), 0)).toBeCloseTo(watts(whole), 9);
  });

  it('has rules name the copies, and no circuit that is gone', () => {
    for (const circuits of [5, 60]) {
      const { circuits: there, strategies } = householdOf({ circuits });
      const named = strategies.flatMap((s) =>
        s.rules.flatMap((r) => (r.by === 'sleep' ? [] : (r.circuits.ids ?? []))),
      );
      const ids = there.map((c) => c.id);
      expect(named.filter((id) => !ids.includes(id))).toEqual([]);
      if (circuits === 60)
        expect(named).toEqual(expect.arrayContaining(['freezer', 'freezer-2', 'freezer-3']));
    }
  });

  it('makes a dozen strategies that differ', () => {
    const { strategies } = householdOf({ strategies: 12 });
    expect(new Set(strategies.map((s) => s.id)).size).toBe(12);
    expect(
      new Set(
        strategies.filter((s) => s.rules.length > 0).map((s) => JSON.stringify([s.carriedOutBy, s.rules])),
      ).size,
    ).toBe(9);
  });

  it.each([{ circuits: 5 }, { circuits: 60 }, { strategies: 1 }, { strategies: 12 }, { horizonDays: 3 }])(
    'can be run: %o',
    (options) => {
      const study = prepareStudy(variant(demo, { horizonDays: 1, ...options }), { seed: 'smoke' });
      const { length, columns } = runShard(study, 0, 1);
      expect(length).toBe(study.strategies.length * 2);
      expect(Math.min(...columns['runtimeMinutes']!)).toBeGreaterThan(0);
    },
  );
});

describe('laps of a draw', () => {
  const study = prepareStudy(variant(demo, { horizonDays: 2 }), { seed: SEED });
  const byStage = createWorkspace(study);
  const whole = createWorkspace(study);

  it('leave together what fillDraw leaves, to the last bit', () => {
    for (const stage of Object.values(DRAW_STAGES)) stage(study, byStage, streamsOf(SEED, 3));
    fillDraw(study, whole, streamsOf(SEED, 3));
    expect(byStage).toEqual(whole);
    fillDraw(study, whole, streamsOf(SEED, 4));
    expect(byStage).not.toEqual(whole);
  });

  it('are one per stage and one per run', () => {
    expect(drawLaps(study, byStage, 0)).toHaveLength(3 + 2 * 4);
  });
});

describe('figures and their table', () => {
  const ms = { best: 2, median: 4 };
  const timed = { inverterMinutes: 80_000, ms, yardstick: { best: 100, median: 80 }, samples: 9 };
  const figure = speed({ measurement: 'kernel', name: 'loop' }, timed);

  it('counts units × minutes × strategies × alternatives', () => {
    const study = prepareStudy(variant(demo, { horizonDays: 2, strategies: 3 }), { seed: 'smoke' });
    expect(inverterMinutesPerDraw(study)).toBe(2 * 2880 * 3 * 2);
  });

  it('takes best over best and median over median', () => {
    expect(figure).toMatchObject({ best: 40, median: 20, ofYardstick: { best: 0.4, median: 0.25 } });
  });

  it('lines up every column and puts notes below', () => {
    const memory: Figure = {
      ...figure,
      measurement: 'memory',
      name: 'most',
      unit: 'MB',
      ofYardstick: null,
      note: 'one day',
    };
    const lines = renderFigures([figure, memory]).split('\n');
    expect(lines).toHaveLength(6);
    expect(lines[1]).toMatch(/^ {2}loop +40\.0 +20\.0 {2}M inverter-min\/s +0\.400 +0\.250 +9$/);
    expect(lines[4]).toMatch(/^ {2}most +40\.0 +20\.0 {2}MB +– +– +9$/);
    expect(new Set([0, 1, 3, 4].map((i) => lines[i]!.length)).size).toBe(1);
    expect(lines[5]).toBe('  (most: one day)');
  });

  it('keeps three digits', () => {
    expect([0.01234, 0.9, 12.345, 123.45, 12345.6].map(digits)).toEqual([
      '0.012',
      '0.900',
      '12.3',
      '123',
      '12346',
    ]);
  });
});
