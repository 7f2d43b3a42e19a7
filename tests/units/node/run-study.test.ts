/** A study on several threads is the study on one. */
import { describe, expect, it } from 'vitest';
import { runStudy, type RunOptions, type StudyRun } from '../../../packages/sim/src/node.ts';
import { runShard, prepareStudy } from '../../../packages/sim/src/index.ts';
import { tinyScenario } from '../step/tiny-house.ts';

/** A day in a house with enough chance in it for every draw to differ. */
const scenario = tinyScenario({
  circuits: {
    fridge: { appliances: [{ kind: 'duty-cycled', runningW: 130, onMinutes: 12, dutyFraction: 0.4 }] },
    kitchen: { tier: 3, appliances: [{ kind: 'events', runningW: 1200, usesPerDay: 9, minutesPerUse: 6 }] },
  },
  units: [{ capacityWh: 400 }],
  rules: [{ by: 'charge', circuits: { tiers: [3] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.7 }],
  hours: 24,
});
const run = (options: Partial<RunOptions> = {}): Promise<StudyRun> =>
  runStudy(scenario, { seed: 'node', draws: 24, workers: 0, ...options });

describe('runStudy', () => {
  it('gives the same rows, bit for bit, in this thread and on 1, 2 and 4 workers', async () => {
    const here = await run();
    expect(here.rows).toStrictEqual(runShard(prepareStudy(scenario, { seed: 'node' }), 0, 24));
    for (const workers of [1, 2, 4]) {
      const there = await run({ workers });
      expect(there.rows).toStrictEqual(here.rows);
      expect(there).toMatchObject({ draws: 24, ended: 'all draws done' });
    }
    expect(new Set(here.rows.columns['servedTier3Wh'])).toHaveProperty('size', 24);
  });

  it('tells how far it is, upwards, to the last draw', async () => {
    for (const workers of [0, 2]) {
      const told: number[] = [];
      await run({ workers, onProgress: (done, draws) => told.push(done) && expect(draws).toBe(24) });
      expect(told).toEqual([...told].sort((a, b) => a - b));
      expect(told.at(-1)).toBe(24);
      expect(told.length).toBeGreaterThan(3);
    }
  });

  it('keeps the finished draws, in order, when it is interrupted', async () => {
    const whole = await run();
    for (const workers of [0, 2]) {
      const interruption = new AbortController();
      const part = await run({
        workers,
        signal: interruption.signal,
        onProgress: (done) => done >= 5 && interruption.abort(),
      });
      expect(part.ended).toBe('interrupted');
      expect(part.draws).toBeGreaterThanOrEqual(5);
      expect(part.draws).toBeLessThan(24);
      expect(part.rows.length).toBe(part.draws);
      for (const [name, values] of Object.entries(part.rows.columns)) {
        expect(values).toStrictEqual(whole.rows.columns[name]!.slice(0, part.draws));
      }
    }
  });

  it('does nothing when it is interrupted before it begins', async () => {
    for (const workers of [0, 2]) {
      expect(await run({ workers, signal: AbortSignal.abort() })).toMatchObject({
        draws: 0,
        ended: 'interrupted',
        rows: { length: 0 },
      });
    }
  });

  it('stops at the same draw and with the same rows on any number of workers once the headline is firm', async () => {
    const [here, there] = await Promise.all(
      [0, 3].map((workers) => run({ draws: 900, workers, untilHalfWidthDays: 0.05 })),
    );
    expect(here!.ended).toBe('tight enough');
    expect([200, 400, 800]).toContain(here!.draws);
    expect(there).toMatchObject({ draws: here!.draws, ended: here!.ended });
    expect(there!.rows).toStrictEqual(here!.rows);
  });

  it.each([
    ['draws', [-1, 0, NaN, 1.5, Infinity, undefined, '5']],
    ['workers', [-1, NaN, 1.5, Infinity, undefined]],
    ['untilHalfWidthDays', [-1, 0, NaN, Infinity]],
    ['seed', [undefined, 7, null]],
    ['rows', ['everything', 7]],
  ])('refuses %s that cannot be, by name, before anything begins', async (name, values) => {
    for (const value of values) {
      const told: number[] = [];
      const attempt = run({ [name]: value, onProgress: (done) => told.push(done) });
      await expect(attempt, String(value)).rejects.toThrow(`${name}: found ${String(value)}; expected`);
      expect(told).toEqual([]);
    }
  });

  it('goes on to the last draw while the headline is not firm', async () => {
    const all = await run({ draws: 230, untilHalfWidthDays: 1e-9 });
    expect(all).toMatchObject({ draws: 230, ended: 'all draws done' });
    expect(all.rows.length).toBe(230);
  });
});
