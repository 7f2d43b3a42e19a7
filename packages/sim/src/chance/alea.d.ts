declare module 'seedrandom/lib/alea.js' {
  /** Alea: uniform numbers in [0, 1) from a string key. */
  export default function alea(seed: string): () => number;
}
