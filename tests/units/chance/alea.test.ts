import seedrandomAlea from 'seedrandom/lib/alea.js';
import { describe, expect, it } from 'vitest';
import { Alea } from '../../../packages/sim/src/chance/alea.ts';
import { fillNumbers } from '../../../packages/sim/src/chance/fill-numbers.ts';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';

const KEYS = [
  '',
  'x',
  'rideout\u00000\u0000start',
  'a much longer key than any that a study ever asks for',
  'naïve 雨',
];

/** `count` numbers of a generator, one by one. */
const take = (next: () => number, count: number) => Array.from({ length: count }, next);

describe('Alea', () => {
  it('gives its author’s published numbers', () => {
    // J. Baagøe, Better random numbers for javascript (2010): the example whose seed is the time 1277182878230
    const alea = new Alea('1277182878230');
    expect(take(() => alea.next(), 3)).toEqual([0.6198398587293923, 0.8385338634252548, 0.3644848605617881]);
  });

  it.each(KEYS)('is the package’s, number for number, one by one and many at once: key "%s"', (key) => {
    const alea = new Alea(key);
    const reference = seedrandomAlea(key);
    const block = new Float64Array(5000);
    let compared = 0;
    // so many that the carry passes a whole number, which it does in one number of some thousands
    for (let round = 0; round < 8; round++) {
      expect(take(() => alea.next(), 10)).toEqual(take(reference, 10));
      alea.fill(block, block.length);
      expect([...block]).toEqual(take(reference, block.length));
      compared += 10 + block.length;
    }
    expect(compared).toBe(8 * 5010);
  });

  it('leaves what lies past the count alone', () => {
    const out = new Float64Array(4).fill(9);
    new Alea('x').fill(out, 2);
    expect([...out.subarray(2)]).toEqual([9, 9]);
  });
});

describe('fillNumbers', () => {
  it('takes the numbers that as many calls would, from a stream of any kind', () => {
    const expected = take(streamsOf('seed', 3)('usage'), 30);
    const quick = streamsOf('seed', 3)('usage');
    const one = streamsOf('seed', 3)('usage');
    for (const stream of [quick, () => one()]) {
      const out = new Float64Array(20);
      fillNumbers(stream, out, 20);
      expect([...out, ...take(stream, 10)]).toEqual(expected);
    }
  });
});
