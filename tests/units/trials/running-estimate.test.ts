import { describe, expect, it } from 'vitest';
import { joinRows, prepareStudy, runningEstimate, runShard, seedSpread, summarise } from '@rideout/sim';
import { loadScenario } from '@rideout/sim/node';
import { fileURLToPath } from 'node:url';

const { scenario } = loadScenario(fileURLToPath(new URL('../../../data/small-house.yaml', import.meta.url)));
const DRAWS = 60;
const study = prepareStudy(scenario, { seed: 'running' });
const rows = runShard(study, 0, DRAWS);

describe('runningEstimate(rows, cell, at)', () => {
  it('states for n draws what a study of n draws states', () => {
    const strategies = study.strategies.length;
    let compared = 0;
    for (const [alternative, strategy] of [
      [0, 0],
      [1, 1],
    ] as const) {
      for (const { draws, nineInTenDays, medianDays } of runningEstimate(rows, { alternative, strategy }, [
        0,
        1,
        7,
        30,
        DRAWS,
        DRAWS + 1,
      ])) {
        const cell = summarise(study, runShard(study, 0, draws)).strategies[
          alternative * strategies + strategy
        ]!;
        expect({ nineInTenDays, medianDays }).toEqual({
          nineInTenDays: cell.nineInTenDays,
          medianDays: cell.medianDays,
        });
        compared++;
      }
    }
    expect(compared).toBe(8);
  });

  it('looks often at the start, ends with all draws, and does not mind the order of the rows', () => {
    const looks = runningEstimate(rows, { alternative: 0, strategy: 0 });
    expect(looks[0]!.draws).toBe(10);
    expect(looks.at(-1)!.draws).toBe(DRAWS);
    expect(looks.map((l) => l.draws)).toEqual([...new Set(looks.map((l) => l.draws))].sort((a, b) => a - b));
    const turned = joinRows([runShard(study, 30, DRAWS), runShard(study, 0, 30)]);
    expect(runningEstimate(turned, { alternative: 0, strategy: 0 })).toEqual(looks);
    expect(runningEstimate({ length: 0, columns: rows.columns }, { alternative: 0, strategy: 0 })).toEqual(
      [],
    );
  });
});

describe('seedSpread(seeds)', () => {
  const seeds = ['a', 'b', 'c', 'd'].map((seed) => prepareStudy(scenario, { seed }));
  const cells = seeds.map((s) => summarise(s, runShard(s, 0, 40)).strategies[1]!);
  const spread = seedSpread(cells);

  it('states for all seeds together what a study of all their draws states', () => {
    const renumbered = seeds.map((s, i) => {
      const part = runShard(s, 0, 40);
      return { ...part, columns: { ...part.columns, draw: part.columns['draw']!.map((d) => d + 40 * i) } };
    });
    const all = summarise(study, joinRows(renumbered)).strategies[1]!;
    expect(spread.togetherDays).toBe(all.nineInTenDays.value);
  });

  it('counts the intervals that hold it, and gives the spread beside what one seed states', () => {
    const values = cells.map((c) => c.nineInTenDays.value!);
    const mean = values.reduce((sum, v) => sum + v, 0) / 4;
    const sd = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / 3);
    expect(spread.spreadDays).toBeCloseTo(1.959964 * sd, 5);
    const halves = cells.map(({ nineInTenDays: { low, high } }) => (high! - low!) / 2);
    expect(spread.statedDays).toBeCloseTo(halves.reduce((sum, half) => sum + half, 0) / 4, 12);
    const within = cells.filter(
      ({ nineInTenDays: { low, high } }) => low! <= spread.togetherDays! && spread.togetherDays! <= high!,
    );
    expect(spread.holding).toBe(within.length);
  });

  it.each([
    [4, 0.5, 3],
    [null, 0.95, 2],
  ])('holds days that the horizon hides only where it may: together %s', (together, survival, holding) => {
    const curve = { day: [0, 4], survival: [1, survival], low: [1, 0], high: [1, 1] };
    const seed = (low: number | null, high: number | null) => ({
      nineInTenDays: { value: 4, low, high },
      curve,
    });
    const told = seedSpread([seed(3, 5), seed(4, 4), seed(3, null), seed(null, null), seed(1, 3)]);
    expect([told.togetherDays, told.holding]).toEqual([together, holding]);
  });

  it('says nothing of a spread where the horizon hides an estimate, or there is one seed', () => {
    const hidden = {
      nineInTenDays: { value: null, low: 3, high: null },
      curve: { day: [0], survival: [1], low: [0.9], high: [1] },
    };
    expect(seedSpread([hidden, hidden])).toEqual({
      togetherDays: null,
      holding: 2,
      spreadDays: null,
      statedDays: null,
    });
    expect(seedSpread(cells.slice(0, 1)).spreadDays).toBeNull();
    expect(seedSpread([...cells, hidden]).spreadDays).toBeNull();
    expect(seedSpread([...cells, hidden]).statedDays).toBeNull();
  });
});
