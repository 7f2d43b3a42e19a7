/** Draws put together from several others: some purposes, or single numbers of a purpose, taken from elsewhere. */
import type { Stream, Streams } from './streams.ts';

/** What is taken from elsewhere. */
export interface StreamSwap {
  /** Whether this purpose is meant. */
  readonly covers: (purpose: string) => boolean;
  /** Only the number in this place of the stream, 0 first; left out: all of them. */
  readonly place?: number | undefined;
  /** The draw that the numbers come from, each from its own place there, or one number 0…1 that it is held at. */
  readonly from: Streams | number;
}

/**
 * The streams of `base` with some of their numbers swapped. A number keeps its place: the third of a stream is the
 * third of the stream that it comes from. Of several swaps that cover a number the last counts.
 */
export function mixedStreams(base: Streams, swaps: readonly StreamSwap[]): Streams {
  return (purpose) => {
    const meant = swaps.filter(({ covers }) => covers(purpose));
    const whole = meant.findLastIndex(({ place }) => place === undefined);
    const start = whole < 0 ? base(purpose) : streamFrom(meant[whole]!.from, purpose);
    const placed = meant.slice(whole + 1);
    return placed.length === 0 ? start : withPlaces(start, placed, purpose);
  };
}

function streamFrom(from: Streams | number, purpose: string): Stream {
  return typeof from === 'number' ? () => from : from(purpose);
}

function withPlaces(start: Stream, swaps: readonly StreamSwap[], purpose: string): Stream {
  const others = swaps.map(({ place, from }) => ({ place, stream: streamFrom(from, purpose) }));
  let place = 0;
  return () => {
    let value = start();
    for (const other of others) {
      const theirs = other.stream();
      if (other.place === place) value = theirs;
    }
    place += 1;
    return value;
  };
}
