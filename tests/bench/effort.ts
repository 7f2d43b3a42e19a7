/** How long to measure: more repeats make the best and the median steadier, not the figures larger. */
export interface Effort {
  readonly name: 'quick' | 'default' | 'full';
  /** Rounds of yardstick, samples, yardstick, samples, … */
  readonly rounds: number;
  /** Processor seconds of the same work before the first round, for the engine to finish compiling it. */
  readonly warmUpSeconds: number;
  /** Samples of each draw in a round. */
  readonly samplesPerRound: number;
  /** Different draws that make up one figure. */
  readonly draws: number;
  /** Yardstick runs before each round and after the last. */
  readonly yardstickRuns: number;
  /** Draws of a whole study on worker threads, and how often it is repeated. */
  readonly studyDraws: number;
  readonly studyRepeats: number;
  readonly peakMemory: { readonly draws: readonly number[]; readonly horizonDays: number };
}

export const EFFORTS: Readonly<Record<Effort['name'], Effort>> = {
  quick: {
    name: 'quick',
    rounds: 3,
    warmUpSeconds: 1,
    samplesPerRound: 6,
    draws: 4,
    yardstickRuns: 4,
    studyDraws: 240,
    studyRepeats: 2,
    peakMemory: { draws: [100, 1000], horizonDays: 1 },
  },
  default: {
    name: 'default',
    rounds: 6,
    warmUpSeconds: 3,
    samplesPerRound: 10,
    draws: 8,
    yardstickRuns: 6,
    studyDraws: 800,
    studyRepeats: 3,
    peakMemory: { draws: [100, 1000], horizonDays: 14 },
  },
  full: {
    name: 'full',
    rounds: 12,
    warmUpSeconds: 4,
    samplesPerRound: 12,
    draws: 12,
    yardstickRuns: 8,
    studyDraws: 2000,
    studyRepeats: 5,
    peakMemory: { draws: [100, 1000, 10_000], horizonDays: 14 },
  },
};
