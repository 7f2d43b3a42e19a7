declare module 'seedrandom/lib/alea.js' {
  interface AleaState {
    c: number;
    s0: number;
    s1: number;
    s2: number;
  }
  /** Alea: uniform numbers in [0, 1) from a string key. */
  export default function alea(
    seed: string,
    options?: { state: true },
  ): (() => number) & { state: () => AleaState };
}
