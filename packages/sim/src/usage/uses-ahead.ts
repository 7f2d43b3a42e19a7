/** The chance behind an appliance's uses, worked out in blocks: logarithms and exponentials go faster many at a time. */
import { fillNumbers } from '../chance/fill-numbers.ts';
import type { Stream } from '../chance/streams.ts';
import { exp, log } from '../portable/elementary.ts';
import { normalDeviate } from '../chance/normal-deviate.ts';

/** Pairs of numbers worked out at a time. */
const BLOCK = 32;

/** A stream taken in pairs: the first of a pair says how long (or how busy the day is), the second how long until the next. */
export interface UsesAhead {
  /** The pair last taken, a position in the arrays below. */
  pair: number;
  /** Two a pair, as they came. */
  readonly numbers: Float64Array;
  /** Log-normal factor from the first of each pair. */
  readonly lengthFactor: Float64Array;
  /** Exponential with mean 1 from the second of each pair, its sign turned. */
  readonly gap: Float64Array;
}

export function createUsesAhead(): UsesAhead {
  return {
    pair: 0,
    numbers: new Float64Array(2 * BLOCK),
    lengthFactor: new Float64Array(BLOCK),
    gap: new Float64Array(BLOCK),
  };
}

/** Before the first pair of a stream. */
export function beginUses(ahead: UsesAhead): void {
  ahead.pair = BLOCK - 1;
}

/** Goes on to the next pair and gives its position. */
export function nextUse(ahead: UsesAhead, stream: Stream, lengthSigma: number): number {
  if (++ahead.pair === BLOCK) {
    workOut(ahead, stream, lengthSigma);
    ahead.pair = 0;
  }
  return ahead.pair;
}

function workOut({ numbers, lengthFactor, gap }: UsesAhead, stream: Stream, lengthSigma: number): void {
  fillNumbers(stream, numbers, 2 * BLOCK);
  fillLogNormals(numbers, lengthSigma, lengthFactor);
  for (let k = 0; k < BLOCK; k++) gap[k] = log(1 - numbers[2 * k + 1]!);
}

/** From every other number. In steps, each small enough for the engine to do several at once. */
function fillLogNormals(numbers: Float64Array, sigma: number, out: Float64Array): void {
  for (let k = 0; k < BLOCK; k++) out[k] = normalDeviate(numbers[2 * k]!);
  for (let k = 0; k < BLOCK; k++) out[k] = sigma * (out[k]! - sigma / 2);
  for (let k = 0; k < BLOCK; k++) out[k] = exp(out[k]!);
}
