/** When a generator may and should run, compiled: from the strategy, or as the household says. MODEL.md E5. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import type { GeneratorRunSpec, GeneratorSpec } from '../scenario/schema-sources.ts';
import type { PersonSpec } from '../scenario/schema.ts';
import { markChanges, markLooks, minutesToNextMark, personDay } from './decision-minutes.ts';

/** Everything about running it that does not change during a run. */
export interface GeneratorPlan {
  readonly byHand: boolean;
  /** Charge of the emptier bank below which it is wanted, and of every bank at which it no longer is. */
  readonly startBelow: number;
  readonly stopAbove: number;
  /** Most minutes of a local day; Infinity without a limit. */
  readonly mostMinutesPerDay: number;
  /** 1 for each minute of the local day in which it may run. */
  readonly allowed: Uint8Array;
  /** 1 for each minute of the local day in which somebody is awake. */
  readonly awake: Uint8Array;
  /** Minutes from each minute of the local day to the next at which it must be thought of, 1…1440. */
  readonly nextThought: Uint16Array;
}

/** A charge below which any bank is, and one that every bank has reached: wanted always. */
const ALWAYS = 2;

/** Undefined when it never runs. */
export function planGenerator(
  run: GeneratorRunSpec,
  { starts, quietHours }: Pick<GeneratorSpec, 'starts' | 'quietHours'>,
  person: PersonSpec,
): GeneratorPlan | undefined {
  if (run.by === 'never') return undefined;
  const byHand = starts === 'hand';
  const { awake, bedtime } = personDay(person);
  const allowed = allowedMinutes(
    run.during,
    quietHours,
    byHand ? awakeButBedtime(awake, bedtime) : undefined,
  );
  const marks = new Uint8Array(1440);
  if (byHand && run.by === 'charge') markLooks(marks, { awake, bedtime }, person.looksEveryMinutes);
  markChanges(marks, allowed);
  marks[0] = 1; // a new day's hours
  const byCharge = run.by === 'charge';
  return {
    byHand,
    startBelow: byCharge ? run.startBelowFraction : ALWAYS,
    stopAbove: byCharge ? run.stopAboveFraction : ALWAYS,
    mostMinutesPerDay: 60 * (byCharge ? (run.mostHoursPerDay ?? Infinity) : run.hoursPerDay),
    allowed,
    awake,
    nextThought: minutesToNextMark(marks),
  };
}

/** 1 for each minute of a day inside the windows (all, when left out), outside the quiet hours, and in `also`, if given. */
function allowedMinutes(
  during: readonly string[] | undefined,
  quietHours: readonly string[] | undefined,
  also: Uint8Array | undefined,
): Uint8Array {
  const within = during === undefined ? new Uint8Array(1440).fill(1) : minutesInWindows(during);
  const quiet = quietHours === undefined ? new Uint8Array(1440) : minutesInWindows(quietHours);
  return within.map((inside, m) => (inside === 1 && quiet[m] === 0 && also?.[m] !== 0 ? 1 : 0));
}

/** Somebody switches it off at bedtime: in the last waking minute it no longer runs. */
function awakeButBedtime(awake: Uint8Array, bedtime: Uint8Array): Uint8Array {
  return awake.map((up, m) => (up === 1 && bedtime[m] === 0 ? 1 : 0));
}

/** Whether it is wanted at the given charges, having been wanted before or not (hysteresis). */
export function wantsGenerator(plan: GeneratorPlan, before: boolean, lowestCharge: number): boolean {
  return before ? lowestCharge < plan.stopAbove : lowestCharge < plan.startBelow;
}
