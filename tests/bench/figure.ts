import type { Study } from '../../packages/sim/src/index.ts';
import type { Spread } from './timing.ts';

/** One measured figure, as it stands in the table and in the file. */
export interface Figure {
  readonly measurement: string;
  readonly name: string;
  readonly unit: string;
  readonly best: number;
  readonly median: number;
  /**
   * Inverter-minutes per second over the yardstick's, best over best and median over median, read around the same
   * samples. A draw counts its units × minutes once. Null for figures that are not a speed, or without a compiler.
   */
  readonly ofYardstick: Spread | null;
  /** How many samples of each part stand behind it. */
  readonly samples: number;
  readonly note?: string;
}

export interface Label {
  readonly measurement: string;
  readonly name: string;
  readonly note?: string;
}

/** Time taken for a number of inverter-minutes, beside the yardstick's million inverter-minutes per second. */
export interface Timed {
  readonly inverterMinutes: number;
  readonly ms: Spread;
  readonly yardstick: Spread | null;
  readonly samples: number;
}

/** units × minutes of one draw: what making it covers, and what one run steps. */
export function inverterMinutesPerRun(study: Study): number {
  return study.unitIds.length * study.minutes;
}

/** units × minutes × strategies × alternatives of one draw. */
export function inverterMinutesPerDraw(study: Study): number {
  return inverterMinutesPerRun(study) * study.strategies.length * study.alternatives.length;
}

/** Speed in million inverter-minutes per second. */
export function speed(label: Label, timed: Timed): Figure {
  return { ...label, unit: 'M inverter-min/s', ...speedOf(timed), ...beside(timed) };
}

/** Milliseconds per draw. */
export function costPerDraw(label: Label, draws: number, timed: Timed): Figure {
  const { best, median } = timed.ms;
  return { ...label, unit: 'ms/draw', best: best / draws, median: median / draws, ...beside(timed) };
}

/** Nanoseconds per inverter-minute. */
export function costPerMinute(label: Label, timed: Timed): Figure {
  const ns = (ms: number) => (ms * 1e6) / timed.inverterMinutes;
  const { best, median } = timed.ms;
  return { ...label, unit: 'ns/inverter-min', best: ns(best), median: ns(median), ...beside(timed) };
}

/** A figure that is no speed. */
export function plain(label: Label, unit: string, values: Spread, samples: number): Figure {
  return { ...label, unit, ...values, ofYardstick: null, samples };
}

export function over(first: Spread, second: Spread | null): Spread | null {
  return second && { best: first.best / second.best, median: first.median / second.median };
}

function speedOf({ inverterMinutes, ms }: Timed): Spread {
  return { best: inverterMinutes / ms.best / 1000, median: inverterMinutes / ms.median / 1000 };
}

function beside(timed: Timed): Pick<Figure, 'ofYardstick' | 'samples'> {
  return { ofYardstick: over(speedOf(timed), timed.yardstick), samples: timed.samples };
}
