import type { Study } from '../../packages/sim/src/index.ts';
import type { Spread, Timing } from './timing.ts';

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

/** units × minutes × strategies × alternatives of one draw. */
export function inverterMinutesPerDraw(study: Study): number {
  return study.unitIds.length * study.minutes * study.strategies.length * study.alternatives.length;
}

/** Speed in million inverter-minutes per second. */
export function speed(label: Label, inverterMinutes: number, timing: Timing): Figure {
  const perSecond = speedOf(inverterMinutes, timing.ms);
  const { samples } = timing;
  return {
    ...label,
    unit: 'M inverter-min/s',
    ...perSecond,
    ofYardstick: over(perSecond, timing.yardstick),
    samples,
  };
}

/** Milliseconds per draw; against the yardstick a draw counts its units × minutes once. */
export function cost(label: Label, draws: number, inverterMinutes: number, timing: Timing): Figure {
  const { ms, samples } = timing;
  const ofYardstick = over(speedOf(inverterMinutes, ms), timing.yardstick);
  return {
    ...label,
    unit: 'ms/draw',
    best: ms.best / draws,
    median: ms.median / draws,
    ofYardstick,
    samples,
  };
}

/** Nanoseconds per inverter-minute. */
export function costPerMinute(label: Label, inverterMinutes: number, timing: Timing): Figure {
  const { ms, samples } = timing;
  const ns = (of: number) => (of * 1e6) / inverterMinutes;
  const ofYardstick = over(speedOf(inverterMinutes, ms), timing.yardstick);
  return {
    ...label,
    unit: 'ns/inverter-min',
    best: ns(ms.best),
    median: ns(ms.median),
    ofYardstick,
    samples,
  };
}

/** A figure that is no speed. */
export function plain(label: Label, unit: string, values: Spread, samples: number): Figure {
  return { ...label, unit, ...values, ofYardstick: null, samples };
}

export function over(first: Spread, second: Spread | null): Spread | null {
  return second && { best: first.best / second.best, median: first.median / second.median };
}

/** Million inverter-minutes per second. */
function speedOf(inverterMinutes: number, ms: Spread): Spread {
  return { best: inverterMinutes / ms.best / 1000, median: inverterMinutes / ms.median / 1000 };
}
