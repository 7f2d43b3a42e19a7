import { describe, expect, it } from 'vitest';
import {
  askHere,
  askNextOutage,
  nextOutageTable,
  type Scenario,
} from '../../../../packages/sim/src/index.ts';
import { wilson } from '../../../../packages/sim/src/trials/wilson.ts';
import { tinyScenario } from '../../step/tiny-house.ts';

/** 6,000 Wh: one strategy that lasts 24 hours at 250 W; the other version has twice that. */
const base = tinyScenario({ circuits: { a: { watts: 250 } }, hours: 60 });
const first = base.alternatives[0]!;
const inDark = (modules: number): Scenario['alternatives'][number]['household'] => ({
  ...first.household,
  units: first.household.units.map((u) => ({ ...u, solar: undefined, battery: { ...u.battery, modules } })),
});
const scenario: Scenario = {
  ...base,
  alternatives: [
    { ...first, household: inDark(1) },
    { id: 'two', title: 'Two modules', household: inDark(2) },
    { id: 'three', title: 'Three modules', household: inDark(3) },
  ],
};
const question = { seed: 'o', draws: 5 };
const kinds = [{ perYear: 2, hours: [12, 24, 30, 100] }];

describe('lengths that a caller hands in', () => {
  it.each([
    [{ hours: [2, 5] }, 'outageLengths.hours: found a key that is not known here'],
    [
      { kinds: [{ perYear: 1, hours: [-2] }] },
      'outageLengths.kinds.0.hours.0: found -2; expected a number above 0.',
    ],
    [{ kinds: [] }, 'outageLengths.kinds: found []; expected a list with a length of at least 1.'],
  ])('%o are refused by name', async (lengths, message) => {
    await expect(askNextOutage(scenario, question, askHere, lengths as never)).rejects.toThrow(message);
    await expect(askNextOutage(scenario, question, askHere, lengths as never)).rejects.toBeInstanceOf(
      RangeError,
    );
  });
});

describe('the next outage', () => {
  it('is ridden out when it is over before the house is empty; what the horizon hides is told as bounds', async () => {
    const answer = await askNextOutage(scenario, question, askHere, { kinds });
    const [one, two, three] = answer.figures;
    // 24 h: outages of 12 and of 24 hours; 48 h: 30 too; 72 h, cut at 60: perhaps 100 too
    expect(one!.riddenOut).toMatchObject({ least: 0.5, most: 0.5 });
    expect(two!.riddenOut).toMatchObject({ least: 0.75, most: 0.75 });
    expect(three!.riddenOut).toMatchObject({ least: 0.75, most: 1 });
    expect(one!.hoursWithoutPerYear.most).toBeCloseTo((2 * (6 + 76)) / 4, 9);
    expect(two!.hoursWithoutPerYear.most).toBeCloseTo((2 * 52) / 4, 9);
    expect([three!.hoursWithoutPerYear.least, three!.hoursWithoutPerYear.most]).toEqual([0, 20]);
    expect([one!.notRiddenOutPerYear.least, one!.notRiddenOutPerYear.most]).toEqual([1, 1]);
    expect(answer.lengths).toMatchObject({
      perYear: 2,
      meanHours: 41.5,
      hoursPerYear: 83,
      beyondHorizonFraction: 0.25,
    });
    expect(answer.lengths.overBy).toEqual([
      { days: 0.25, share: 0 },
      { days: 1, share: 0.5 },
    ]);
  });

  it('tells the outages that are over by the last day that was simulated', async () => {
    const aDay: Scenario = { ...scenario, outage: { ...scenario.outage, horizonDays: 1 } };
    const { lengths } = await askNextOutage(aDay, question, askHere, { kinds });
    expect(lengths.overBy.map(({ days }) => days)).toEqual([0.25, 1]);
    expect(lengths.beyondHorizonFraction).toBe(0.5);
  });

  it('is never surer than that many draws allow: at a chance of 1 or 0 the interval is that of a share', async () => {
    const certain = await askNextOutage(scenario, question, askHere, { kinds: [{ perYear: 3, hours: [1] }] });
    const [one] = certain.figures;
    const { low } = wilson(5, 5);
    expect(one!.riddenOut).toMatchObject({ least: 1, most: 1, low, high: 1 });
    expect(one!.notRiddenOutPerYear).toMatchObject({ most: 0, high: 3 * (1 - low!) });
    expect(one!.hoursWithoutPerYear.high).toBeCloseTo(3 * (1 - low!), 12); // an outage of an hour, wholly without
    const longer = await askNextOutage(scenario, question, askHere, { kinds: [{ perYear: 3, hours: [4] }] });
    expect(longer.figures[0]!.hoursWithoutPerYear.high).toBeCloseTo(3 * 4 * (1 - low!), 12); // or of four hours
    const hopeless = await askNextOutage(scenario, question, askHere, {
      kinds: [{ perYear: 1, hours: [50] }],
    });
    expect(hopeless.figures[0]!.riddenOut).toMatchObject({ least: 0, low: 0, high: wilson(0, 5).high });
    const even = (await askNextOutage(scenario, question, askHere, { kinds })).figures[0]!.riddenOut;
    expect(even.high - even.low).toBeCloseTo(wilson(0, 5).high!, 12);
  });

  it('has chances from 0 to 1 and no rate below 0, whatever its sums come to in the last digit', async () => {
    const thirds = [
      { perYear: 0.1, hours: [1] },
      { perYear: 0.7, hours: [2] },
      { perYear: 1.1, hours: [3] },
    ];
    let checked = 0;
    for (const draws of [3, 7, 11, 49]) {
      const { figures, lengths } = await askNextOutage(scenario, { seed: 'o', draws }, askHere, {
        kinds: thirds,
      });
      expect(lengths.beyondHorizonFraction).toBeGreaterThanOrEqual(0);
      for (const { riddenOut, notRiddenOutPerYear } of figures) {
        for (const chance of Object.values(riddenOut) as number[]) expect(chance).toBeLessThanOrEqual(1);
        for (const rate of Object.values(notRiddenOutPerYear) as number[])
          expect(rate).toBeGreaterThanOrEqual(0);
        checked += 1;
      }
    }
    expect(checked).toBe(12);
  });

  it('takes the scenario’s own lengths, or published ones where there are none', async () => {
    const own = await askNextOutage({ ...scenario, outageLengths: { kinds } }, question, askHere);
    expect(own.lengths.source).toBe('the household’s own figures');
    const published = await askNextOutage(scenario, question, askHere);
    expect(published.lengths.source).toContain('United States, 2017');
  });

  it('is a table of one row per version and strategy, with where lengths come from', async () => {
    const table = nextOutageTable(
      await askNextOutage(scenario, question, askHere, { kinds, source: 'mine' }),
    );
    expect(table.numRows()).toBe(3);
    expect(table.get('lengthsFrom', 0)).toBe('mine');
    expect(table.get('riddenOutMost', 2)).toBe(1);
  });
});
