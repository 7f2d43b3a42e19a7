import { describe, expect, it } from 'vitest';
import { streamsOf, type Stream } from '../../../packages/sim/src/chance/streams.ts';

const take = (stream: Stream, count: number) => Array.from({ length: count }, stream);

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((x, y) => x + y, 0) / values.length;
  const [ma, mb] = [mean(a), mean(b)];
  const covariance = mean(a.map((x, i) => (x - ma) * (b[i]! - mb)));
  return covariance / Math.sqrt(mean(a.map((x) => (x - ma) ** 2)) * mean(b.map((y) => (y - mb) ** 2)));
}

describe('streamsOf', () => {
  it('gives the same numbers for the same seed, draw and purpose, however often it is asked', () => {
    const streams = streamsOf('seed', 3);
    expect(take(streams('weather'), 50)).toEqual(take(streams('weather'), 50));
    expect(take(streamsOf('seed', 3)('weather'), 50)).toEqual(take(streams('weather'), 50));
  });

  it('gives each stream its own numbers, whatever others were asked for in between', () => {
    const streams = streamsOf('seed', 3);
    const alone = take(streams('weather'), 20);
    const weather = streams('weather');
    const disturbed = alone.map(() => {
      streams('usage')();
      return weather();
    });
    expect(disturbed).toEqual(alone);
  });

  it('gives other numbers for another seed, draw or purpose, even where the texts run together', () => {
    const first = [
      streamsOf('seed', 3)('weather'),
      streamsOf('seed', 4)('weather'),
      streamsOf('seed1', 3)('weather'),
      streamsOf('seed', 13)('weather'),
      streamsOf('seed', 3)('weather/2'),
      streamsOf('', 3)('weather'),
    ].map((stream) => stream());
    expect(new Set(first).size).toBe(first.length);
  });

  it('gives streams that are not correlated: within 4.5 / √n of nothing, n = 20,000, for 66 pairs of neighbours', () => {
    const count = 20_000;
    const streams = Array.from({ length: 12 }, (_, k) =>
      take(streamsOf('seed', Math.floor(k / 2))(k % 2 === 0 ? 'start' : 'usage/a/b'), count),
    );
    let pairs = 0;
    for (let a = 0; a < streams.length; a++) {
      for (let b = a + 1; b < streams.length; b++) {
        expect(Math.abs(correlation(streams[a]!, streams[b]!))).toBeLessThan(4.5 / Math.sqrt(count));
        pairs++;
      }
    }
    expect(pairs).toBe(66);
  });

  it('gives first numbers that are uniform over the draws: χ² of 100 classes, 50,000 draws, within 4.5 standard deviations', () => {
    const classes = new Array<number>(100).fill(0);
    for (let draw = 0; draw < 50_000; draw++)
      classes[Math.floor(streamsOf('seed', draw)('start')() * 100)]!++;
    const chiSquare = classes.reduce((sum, n) => sum + (n - 500) ** 2 / 500, 0);
    expect(Math.abs(chiSquare - 99)).toBeLessThan(4.5 * Math.sqrt(2 * 99));
  });

  it('gives numbers from 0 to below 1', () => {
    const numbers = take(streamsOf('seed', 0)('range'), 100_000);
    expect(Math.min(...numbers.slice(0, 50_000))).toBeGreaterThanOrEqual(0);
    expect(numbers.every((u) => u < 1)).toBe(true);
  });

  it('is unchanged since 0.1.0: every published figure rests on it', () => {
    expect(take(streamsOf('rideout', 0)('start'), 3)).toEqual([
      0.20333138527348638, 0.7227760273963213, 0.22444977960549295,
    ]);
  });
});
