import { describe, expect, it } from 'vitest';
import {
  circuitOf,
  CLOCK_CHANGES,
  drawOf,
  startMinutes,
  wattHours,
  type Setting,
  type Written,
} from './household-under-test.ts';

const kettle: Written = {
  kind: 'events',
  runningW: 1500,
  startingW: 1600,
  usesPerDay: 6,
  minutesPerUse: 10,
  dayScatterFraction: 0,
};
const even = new Array(24).fill(1);

/** Mean and standard error of a figure over draws. */
function overDraws(n: number, figure: (index: number) => number): { mean: number; standardError: number } {
  const values = Array.from({ length: n }, (_, index) => figure(index));
  const mean = values.reduce((a, b) => a + b) / n;
  const variance = values.reduce((a, b) => a + (b - mean) * (b - mean), 0) / (n - 1);
  return { mean, standardError: Math.sqrt(variance / n) };
}

function expectMean(found: { mean: number; standardError: number }, expected: number): void {
  expect(Math.abs(found.mean - expected)).toBeLessThan(5 * found.standardError);
}

describe('an appliance used now and then', () => {
  it.each([
    ['plainly', {}, {}],
    ['with scatter by day and household', { dayScatterFraction: 0.4 }, { householdScatterFraction: 0.3 }],
    ['so often that uses wait for each other', { usesPerDay: 60, hourWeights: even, minutesPerUse: 12 }, {}],
    ['several of them', { count: 4 }, {}],
  ])('%s: uses usesPerDay × minutesPerUse × watts a day', (_, more, setting) => {
    const circuits = [circuitOf('kitchen', { ...kettle, ...more })];
    const { usesPerDay, minutesPerUse, count } = { ...kettle, count: 1, ...more } as unknown as Record<
      string,
      number
    >;
    const days = 10;
    const found = overDraws(300, (index) => wattHours(drawOf(circuits, { days, index, ...setting })) / days);
    const expected = (1500 * usesPerDay! * minutesPerUse! * count!) / 60;
    expectMean(found, expected);
    expect(found.standardError / expected).toBeLessThan(0.03);
  });

  it('has a Poisson number of uses a day: mean and variance usesPerDay', () => {
    const circuits = [circuitOf('kitchen', { ...kettle, minutesPerUse: 0.1 })];
    const counts: number[] = [];
    for (let index = 0; index < 40; index++) {
      const perDay = new Array<number>(50).fill(0);
      for (const minute of startMinutes(drawOf(circuits, { days: 50, index })))
        perDay[Math.floor(minute / 1440)]!++;
      counts.push(...perDay);
    }
    const mean = counts.reduce((a, b) => a + b) / counts.length;
    const variance = counts.reduce((a, b) => a + (b - mean) * (b - mean), 0) / counts.length;
    expect(counts.length).toBe(2000);
    expect(Math.abs(mean - 6)).toBeLessThan(5 * Math.sqrt(6 / 2000));
    expect(Math.abs(variance - 6)).toBeLessThan(5 * Math.sqrt((6 + 2 * 36) / 2000));
  });

  it('falls into the hours in the share of their weights, and never into an hour without', () => {
    const hourWeights = even.map((_, hour) => (hour === 7 ? 3 : hour === 18 ? 1 : 0));
    const starts = startMinutes(
      drawOf([circuitOf('kitchen', { ...kettle, minutesPerUse: 1, hourWeights })], {
        days: 400,
        timeZone: 'America/Phoenix',
      }),
    );
    const hours = starts.map((minute) => Math.floor((minute % 1440) / 60));
    const morning = hours.filter((hour) => hour === 7).length;
    expect(hours.every((hour) => hour === 7 || hour === 18)).toBe(true);
    expect(Math.abs(morning / hours.length - 0.75)).toBeLessThan(5 * Math.sqrt((0.75 * 0.25) / hours.length));
  });

  it.each(CLOCK_CHANGES)('%s: falls into waking hours when no weights are given', (_, setting: Setting) => {
    let counted = 0;
    for (let index = 0; index < 40; index++) {
      const draw = drawOf([circuitOf('kitchen', { ...kettle, minutesPerUse: 1 })], {
        ...setting,
        index,
        awake: '09:15-03:45',
      });
      for (const minute of startMinutes(draw)) {
        const before = draw.days.stretchAt
          .slice(0, draw.days.stretchCount)
          .findLastIndex((at) => at <= minute);
        const reading = draw.days.stretchReading[before]! + minute - draw.days.stretchAt[before]!;
        if (reading < 555) expect(reading).toBeLessThanOrEqual(225 + 8); // waits for a use before it
        counted++;
      }
    }
    expect(counted).toBeGreaterThan(400);
  });

  it('is used for longer and shorter: lengths scatter by lengthScatterFraction from the first one on', () => {
    const circuits = [circuitOf('kitchen', { ...kettle, usesPerDay: 1, lengthScatterFraction: 0.3 })];
    const lengths: number[] = [];
    for (let index = 0; index < 1500; index++) {
      const draw = drawOf(circuits, { days: 1, index });
      const [start, next] = startMinutes(draw);
      if (start !== undefined && next === undefined) lengths.push((wattHours(draw) / 1500) * 60);
    }
    const mean = lengths.reduce((a, b) => a + b) / lengths.length;
    const variance = lengths.reduce((a, b) => a + (b - mean) * (b - mean), 0) / (lengths.length - 1);
    expect(lengths.length).toBeGreaterThan(500); // a draw in e has one use
    // four standard errors: 0.3 · 10 / √500 min of the mean, 4.2 % of the spread (a log-normal law of such a scatter)
    expect(Math.abs(mean - 10)).toBeLessThan(4 * 0.134);
    expect(Math.abs(Math.sqrt(variance) / 3 - 1)).toBeLessThan(4 * 0.042);
  });

  it('is one use at a time: never above its watts', () => {
    const draw = drawOf([circuitOf('kitchen', { ...kettle, usesPerDay: 100, minutesPerUse: 13 })], {
      days: 5,
    });
    expect(Math.max(...draw.circuits[0]!.demandW)).toBeLessThanOrEqual(1500.01);
  });

  it('starts once where one use follows another without a break', () => {
    const draw = drawOf(
      [circuitOf('pump', { ...kettle, usesPerDay: 80, minutesPerUse: 12, hourWeights: even })],
      { days: 20 },
    );
    const starts = startMinutes(draw);
    const { demandW } = draw.circuits[0]!;
    expect(starts.length).toBeGreaterThan(100);
    expect(starts.length).toBeLessThan(80 * 20);
    for (const start of starts)
      if (start > 0) expect(demandW[start - 1]! + demandW[start]!).toBeLessThan(3000);
  });

  it('goes on at minute 0 if it was in use: the first minutes use as much as any other', () => {
    const circuits = [circuitOf('pump', { ...kettle, usesPerDay: 24, minutesPerUse: 20, hourWeights: even })];
    const found = overDraws(
      2000,
      (index) =>
        drawOf(circuits, { minutes: 3, index, start: [2026, 6, 1, 5] }).circuits[0]!.demandW[0]! / 1500,
    );
    expectMean(found, 1 / 3);
    const starts = overDraws(2000, (index) => startMinutes(drawOf(circuits, { minutes: 3, index })).length);
    expect(starts.mean).toBeLessThan(0.1);
  });

  it('counts parts of minutes by the share they cover', () => {
    const draw = drawOf([circuitOf('door', { ...kettle, minutesPerUse: 0.25, lengthScatterFraction: 0 })], {
      days: 30,
    });
    const starts = startMinutes(draw);
    expect(wattHours(draw) / starts.length).toBeCloseTo((1500 * 0.25) / 60, 0);
  });

  it('rises and falls with the household, for all its events together', () => {
    const circuits = [
      circuitOf('a', { ...kettle, usesPerDay: 200, minutesPerUse: 1 }),
      circuitOf('b', { ...kettle, usesPerDay: 200, minutesPerUse: 1 }),
    ];
    const pairs = Array.from({ length: 60 }, (_, index) => {
      const draw = drawOf(circuits, { days: 4, index, householdScatterFraction: 0.4 });
      return draw.circuits.map((circuit) => circuit.demandW.reduce((a, b) => a + b));
    });
    const ratio = pairs.map(([a, b]) => a! / b!);
    const spread = pairs.map(([a]) => a!);
    expect(Math.max(...spread) / Math.min(...spread)).toBeGreaterThan(2.5);
    expect(Math.max(...ratio)).toBeLessThan(1.35);
    expect(Math.min(...ratio)).toBeGreaterThan(0.7);
  });

  it('asks for nothing at no uses a day', () => {
    expect(wattHours(drawOf([circuitOf('kitchen', { ...kettle, usesPerDay: 0 })], { days: 9 }))).toBe(0);
  });
});
