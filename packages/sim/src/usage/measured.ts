/** A measured profile in place of a model. MODEL.md §Usage, U8. */
import type { Stream } from '../chance/streams.ts';
import type { Appliance, MeasuredProfile } from '../scenario/scenario.ts';
import type { LocalDays } from './local-days.ts';
import { roundW } from './round-w.ts';
import { logNormalFactor, logNormalSigma } from './log-normal-factor.ts';
import type { CircuitWant } from './usage-draw.ts';

export interface MeasuredPlan {
  readonly kind: 'measured';
  /** Watts of all of them, one value per minute, the first at local midnight. */
  readonly watts: Float32Array;
  /** Whole days in the profile; 0 when its length is not a whole number of days. */
  readonly wholeDays: number;
  readonly daySigma: number;
}

export function planMeasured(appliance: Extract<Appliance, { kind: 'measured' }>): MeasuredPlan {
  const watts = minuteMeans(appliance.profile, appliance.scale * appliance.count);
  return {
    kind: 'measured',
    watts,
    wholeDays: watts.length % 1440 === 0 ? watts.length / 1440 : 0,
    daySigma: logNormalSigma(appliance.dayScatterFraction),
  };
}

/**
 * The profile at one value per minute: finer readings are averaged, coarser ones repeated, odd ones shared out by
 * the time they cover. A rest of less than a minute at its end is left out; at least one minute is needed.
 */
export function minuteMeans(profile: MeasuredProfile, scale: number): Float32Array {
  const { intervalMinutes, watts } = profile;
  const minutes = Math.floor(watts.length * intervalMinutes + 1e-6);
  if (!(minutes >= 1))
    throw new RangeError(
      `a measured profile must last a minute; this lasts ${watts.length * intervalMinutes}`,
    );
  const means = new Float32Array(minutes);
  for (let m = 0; m < minutes; m++) {
    let wattMinutes = 0;
    const last = Math.min(Math.ceil((m + 1) / intervalMinutes), watts.length);
    for (let k = Math.floor(m / intervalMinutes); k < last; k++) {
      const covered = Math.min(m + 1, (k + 1) * intervalMinutes) - Math.max(m, k * intervalMinutes);
      wattMinutes += Math.max(0, covered) * watts[k]!;
    }
    means[m] = wattMinutes * scale;
  }
  return means;
}

/**
 * Adds the profile, laid end to end by the local clock from midnight of day 0, one factor (mean 1) to a day.
 * A profile of several whole days starts at a random one of them, so that draws do not all meet the same day first.
 */
export function drawMeasured(
  plan: MeasuredPlan,
  days: LocalDays,
  stream: Stream,
  { demandW, busyHours }: CircuitWant,
): void {
  busyHours.fill(1);
  const firstDay = Math.floor(stream() * plan.wholeDays);
  let day = -1;
  let factor = 1;
  for (let s = 0; s < days.stretchCount; s++) {
    for (; day < days.stretchDay[s]!; day++) factor = logNormalFactor(stream, plan.daySigma);
    const reading = (firstDay + day) * 1440 + days.stretchReading[s]!;
    addRepeated(
      plan.watts,
      reading % plan.watts.length,
      factor,
      demandW,
      days.stretchAt[s]!,
      days.stretchAt[s + 1]!,
    );
  }
}

function addRepeated(
  watts: Float32Array,
  position: number,
  factor: number,
  demandW: Float32Array,
  from: number,
  to: number,
): void {
  let at = position;
  for (let m = from; m < to; m++) {
    demandW[m]! += roundW(watts[at]! * factor);
    if (++at === watts.length) at = 0;
  }
}
