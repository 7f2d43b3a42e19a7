/**
 * Named random streams. MODEL.md §2.
 *
 * One stream per (seed, draw, purpose): adding an appliance or a sampler that uses a varying number of uniforms
 * cannot shift another's numbers, and every strategy and alternative meets the same draw.
 * The generator is Alea (J. Baagøe) as packaged by `seedrandom`; changing it is a breaking change of results.
 */
import { Alea } from './alea.ts';

/** Uniform numbers in [0, 1), one a call. */
export interface Stream {
  (): number;
  /** The next `count` numbers at once, where the stream has a quick way; ask `fillNumbers`, which takes any stream. */
  fill?: (out: Float64Array, count: number) => void;
}
/** The streams of one draw, by purpose: `weather/days`, `usage/household`, … Asking twice starts the same stream anew. */
export type Streams = (purpose: string) => Stream;

/** Every stream of draw `index` under `seed`. */
export function streamsOf(seed: string, index: number): Streams {
  return (purpose) => {
    const alea = new Alea(`${seed}\u0000${index}\u0000${purpose}`);
    const stream: Stream = () => alea.next();
    stream.fill = (out, count) => alea.fill(out, count);
    return stream;
  };
}
