/**
 * An outside figure beside ours. Tests assert it and `npm run validate` prints it, so the two cannot disagree.
 *
 * Grades in `source`: R1, R2 = read in one, in two independent texts; C = recomputed from the cited formula. What is
 * "common practice, no source" or "from memory" says so.
 */
export interface Comparison {
  /** What is compared, as a claim. */
  readonly claim: string;
  readonly source: string;
  readonly unit: string;
  readonly band: Band;
  /** Works ours out when asked: some take a study. */
  readonly ours: () => number;
}

/** The figures that agree with the outside one. */
export interface Band {
  readonly low: number;
  readonly high: number;
  /** As told to people: "17.86 ± 0.005", "at least 0.95". */
  readonly text: string;
  /** The figure that differences are taken from; undefined for a bound. */
  readonly expected: number | undefined;
}

/** Groups of comparisons by subject. */
export type Comparisons = Readonly<Record<string, readonly Comparison[]>>;

export function near(expected: number, tolerance: number): Band {
  const low = expected - tolerance;
  return {
    low,
    high: expected + tolerance,
    text: `${expected} ± ${Number(tolerance.toPrecision(2))}`,
    expected,
  };
}

/** Within one part in 10⁹, the books' own tolerance: for exact results. */
export function exactly(expected: number): Band {
  const slack = 1e-9 * Math.max(1, Math.abs(expected));
  return {
    low: expected - slack,
    high: expected + slack,
    text: `${Number(expected.toPrecision(10))}`,
    expected,
  };
}

export const atLeast = (low: number): Band => ({
  low,
  high: Infinity,
  text: `at least ${low}`,
  expected: undefined,
});
export const atMost = (high: number): Band => ({
  low: -Infinity,
  high,
  text: `at most ${high}`,
  expected: undefined,
});
export const between = (low: number, high: number): Band => ({
  low,
  high,
  text: `${low} to ${high}`,
  expected: undefined,
});

/** False for NaN too: a figure that is not there agrees with nothing. */
export const agrees = (value: number, { low, high }: Band): boolean => value >= low && value <= high;

/** For `it.each`, which shortens what it reads out of an object. */
export const named = (comparisons: readonly Comparison[]) =>
  comparisons.map((comparison) => [comparison.claim, comparison.source, comparison] as const);

/** Does the work when first asked and keeps the result: several figures come out of one study. */
export function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => (kept ??= { value: work() }).value;
}
