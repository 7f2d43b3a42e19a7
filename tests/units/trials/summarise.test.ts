import { describe, expect, it } from 'vitest';
import { summarise } from '../../../packages/sim/src/trials/summarise.ts';
import { joinRows } from '../../../packages/sim/src/trials/shard.ts';
import { fabricatedOutline, fabricatedRows, reversedRows } from './fabricated-study.ts';

const outline = fabricatedOutline();
const rows = fabricatedRows(outline, 0, 200);
const summary = summarise(outline, rows);
const cell = (alternativeId: string, strategyId: string) =>
  summary.strategies.find((s) => s.alternativeId === alternativeId && s.strategyId === strategyId)!;

describe('summarise', () => {
  it('gives the same bits for the same rows in any order and any sharding', () => {
    expect(summarise(outline, reversedRows(rows))).toEqual(summary);
    const shards = joinRows([fabricatedRows(outline, 120, 200), fabricatedRows(outline, 0, 120)]);
    expect(summarise(outline, shards)).toEqual(summary);
  });

  it('leaves the rows as they were', () => {
    const fresh = fabricatedRows(outline, 0, 30);
    summarise(outline, fresh);
    expect(fresh).toEqual(fabricatedRows(outline, 0, 30));
  });

  it('means nothing by the columns that name or date a row', () => {
    const means = Object.keys(cell('as-is', 'everything').meanByColumn);
    const names = ['draw', 'alternative', 'strategy', 'startEpochMinute', 'endCause', 'endUnit'];
    expect(means.filter((name) => names.includes(name))).toEqual([]);
    expect(means).toContain('runtimeMinutes');
  });

  it('lists strategies alternative by alternative', () => {
    expect(summary.strategies.map((s) => `${s.alternativeId}/${s.strategyId}`)).toEqual([
      'as-is/everything',
      'as-is/by-charge',
      'as-is/essentials',
      'two-modules/everything',
      'two-modules/by-charge',
      'two-modules/essentials',
    ]);
  });

  it('carries what it takes to repeat a number, with the draws it really has', () => {
    expect(summarise(outline, fabricatedRows(outline, 0, 37)).provenance).toEqual({
      scenarioHash: outline.scenarioHash,
      scenarioTitle: 'A made-up house on a hill, January',
      seed: 'winter',
      draws: 37,
      version: '0.1.0',
      weatherName: 'made-up normals',
    });
  });

  it('keeps curves, days reached and chances of one cell in agreement', () => {
    let compared = 0;
    for (const s of summary.strategies) {
      for (const { days, chance } of s.reach.filter(({ days }) => days < 14)) {
        const at = s.curve.day.findLastIndex((day) => day < days);
        expect(chance.value).toBeCloseTo(s.curve.survival[at]!, 12);
        compared += 1;
      }
      const reachNine = s.curve.day.findIndex((_, i) => s.curve.survival[i]! < 0.9 - 1e-9);
      expect(s.nineInTenDays.value).toBe(reachNine < 0 ? null : s.curve.day[reachNine]);
    }
    expect(compared).toBe(18);
  });

  it('counts a run cut off at the horizon as reaching the horizon', () => {
    const s = cell('two-modules', 'essentials');
    expect(s.censoredDraws).toBeGreaterThan(0);
    expect(s.reach.at(-1)).toMatchObject({ days: 14, chance: { value: s.censoredDraws / 200 } });
  });

  it('leaves out days past the horizon', () => {
    const short = fabricatedOutline({ horizonDays: 3 });
    const days = summarise(short, fabricatedRows(short, 0, 20)).strategies[0]!.reach.map((r) => r.days);
    expect(days).toEqual([1, 3]);
  });

  it('shares out the ends: they add up to one, commonest first, with the unit that stopped', () => {
    for (const { ends } of summary.strategies) {
      expect(ends.reduce((sum, end) => sum + end.fraction, 0)).toBeCloseTo(1, 12);
      expect(ends.map((e) => e.fraction)).toEqual(ends.map((e) => e.fraction).sort((a, b) => b - a));
    }
    expect(cell('as-is', 'everything').ends[0]).toMatchObject({ cause: 'battery empty', unitId: 'west' });
    expect(cell('two-modules', 'essentials').ends).toContainEqual({
      cause: 'still running',
      unitId: null,
      fraction: cell('two-modules', 'essentials').censoredDraws / 200,
    });
  });

  it('turns watt-hours into mean kilowatt-hours per draw', () => {
    expect(cell('as-is', 'essentials').unservedKWhByTier).toEqual([0, 10, 0, 0, 0]);
  });

  it('takes means over the draws in which a thing happened, and null when it never did', () => {
    expect(cell('as-is', 'everything').meanByColumn.firstShedMinute).toBeNull();
    expect(cell('as-is', 'by-charge').meanByColumn.firstShedMinute).toBe(60);
    expect(cell('as-is', 'by-charge').meanByColumn.draw).toBeUndefined();
  });

  it('treats a need never unmet as censored at the horizon', () => {
    const [food, water] = cell('two-modules', 'essentials').needs;
    expect(food!.nineInTenDays).toEqual(cell('two-modules', 'essentials').nineInTenDays); // made to go first in these rows
    expect(water!.medianDays.value).toBeNull();
    expect(water!.meanMinutesUnmet).toBeGreaterThan(0);
  });

  it('compares strategies with the first within each alternative, alternatives with the first within each strategy', () => {
    expect(
      summary.differences.map(
        ({ first, second }) =>
          `${first.alternativeId}/${first.strategyId} − ${second.alternativeId}/${second.strategyId}`,
      ),
    ).toEqual([
      'as-is/by-charge − as-is/everything',
      'as-is/essentials − as-is/everything',
      'two-modules/by-charge − two-modules/everything',
      'two-modules/essentials − two-modules/everything',
      'two-modules/everything − as-is/everything',
      'two-modules/by-charge − as-is/by-charge',
      'two-modules/essentials − as-is/essentials',
    ]);
    for (const d of summary.differences) {
      const [a, b] = [
        cell(d.first.alternativeId, d.first.strategyId),
        cell(d.second.alternativeId, d.second.strategyId),
      ];
      expect(d.meanDays.value! * 1440).toBeCloseTo(
        a.meanByColumn.runtimeMinutes! - b.meanByColumn.runtimeMinutes!,
        6,
      );
      expect(d.nineInTenDays.value).toBeCloseTo(a.nineInTenDays.value! - b.nineInTenDays.value!, 12);
      expect(d.nineInTenDays.low!).toBeLessThanOrEqual(d.nineInTenDays.value!);
      expect(d.nineInTenDays.high!).toBeGreaterThanOrEqual(d.nineInTenDays.value!);
    }
  });

  it('says nothing it cannot know from a single draw', () => {
    const one = summarise(outline, fabricatedRows(outline, 3, 4));
    expect(one.strategies[0]!.nineInTenDays.low).toBe(0);
    expect(one.differences[0]!.meanDays.low).toBeNull();
  });
});
