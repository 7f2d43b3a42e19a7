import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planNormals } from '../../../packages/sim/src/weather/normals-plan.ts';
import { readNormals } from '../../../packages/sim/src/weather/normals-table.ts';

const text = readFileSync(new URL('../../../data/normals.csv', import.meta.url), 'utf8');
const places = readNormals(text);

describe('readNormals', () => {
  it('gives at least twenty places, each with twelve finite values of everything', () => {
    expect(places.size).toBeGreaterThanOrEqual(20);
    for (const { id, monthly } of places.values()) {
      for (const [name, values] of Object.entries(monthly)) {
        expect(values, `${id} ${name}`).toHaveLength(12);
        expect((values as number[]).every(Number.isFinite), `${id} ${name}`).toBe(true);
      }
    }
  });

  it('takes measured years as they are', () => {
    const { monthly, observed, kind, utcOffsetHours } = places.get('penn-state')!;
    expect(kind).toBe('measured');
    expect(utcOffsetHours).toBe(-5);
    expect(monthly).toEqual(observed);
    expect(monthly.clearnessMean[11]).toBe(0.347);
  });

  it('keeps the means of a typical year and widens its spreads', () => {
    const { monthly, observed } = places.get('boston')!;
    expect(monthly.clearnessMean).toEqual(observed.clearnessMean);
    expect(monthly.dryBulbMeanC).toEqual(observed.dryBulbMeanC);
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / 12;
    const gain = mean(monthly.clearnessSd!) / mean(observed.clearnessSd);
    expect(gain).toBeGreaterThan(1.08); // 1.07 for modelled radiation, 1.02 to 1.04 for the missing years
    expect(gain).toBeLessThan(1.13);
    expect(mean(monthly.clearnessLag1!)).toBeGreaterThan(mean(observed.clearnessLag1));
  });

  it('fills months without sun from their neighbours', () => {
    const { monthly, observed } = places.get('fairbanks')!;
    expect(observed.clearnessMean[0]).toBeNaN();
    expect(monthly.clearnessMean[0]).toBeCloseTo(0.431 + (2 / 3) * (0.476 - 0.431), 9); // November to February
    expect(() => planNormals(monthly)).not.toThrow();
  });

  it('names the place whose months are not twelve, and the cell that is no number', () => {
    const lines = text.split('\n');
    expect(() => readNormals([...lines.slice(0, 6), ...lines.slice(7)].join('\n'))).toThrow(
      'normals.csv, place "seattle": 11 rows; twelve are expected',
    );
    expect(() =>
      readNormals(
        text.replace(
          'seattle,Seattle-Tacoma WA,47.47,-122.32,122,-8.0,3,0.422',
          'seattle,x,47.47,-122.32,122,-8.0,3,much',
        ),
      ),
    ).toThrow('normals.csv, seattle, month 3: clearness_mean reads "much"; a number is expected');
  });
});

describe('planNormals', () => {
  it('needs no more than mean clearness and mean dry-bulb', () => {
    const plan = planNormals({
      clearnessMean: new Array<number>(12).fill(0.5),
      dryBulbMeanC: [0, 1, 5, 10, 15, 19, 22, 21, 17, 11, 6, 2],
    });
    const { meanC, sdC, lag1, innovationTie, dailyRangeC } = plan.dryBulb;
    const numbers = [
      ...plan.quickLag1,
      ...plan.clearness.clearness,
      meanC,
      sdC,
      lag1,
      innovationTie,
      dailyRangeC,
    ].flat();
    expect(numbers.every(Number.isFinite)).toBe(true);
    expect(plan.dryBulb.sdC[0]).toBeGreaterThan(2);
  });

  it.each([
    ['the lowest', 0.05, 0.01],
    ['the highest', 0.85, 0.35],
    ['a wild', 0.4, 0.35],
    ['a still', 0.6, 0.01],
  ])('bears %s clearness that a scenario may give', (_, mean, sd) => {
    const twelve = (value: number): number[] => new Array<number>(12).fill(value);
    for (const clearnessSd of [undefined, twelve(sd)]) {
      const plan = planNormals({
        clearnessMean: twelve(mean),
        clearnessSd,
        clearnessLag1: twelve(0.95),
        dryBulbMeanC: twelve(10),
        dryBulbLag1: twelve(0.99),
        clearnessDryBulbCorrelation: twelve(-1),
      });
      const table = [...plan.clearness.clearness];
      expect(table.every((value) => value > 0 && value < 0.95)).toBe(true);
      expect(
        [...plan.quickLag1, ...plan.dryBulb.innovationTie, ...plan.dryBulb.lag1].every(
          (value) => Math.abs(value) < 1,
        ),
      ).toBe(true);
    }
  });
});
