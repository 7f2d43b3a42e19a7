/** Appliances that draw the same watts all day: a modem, a clock, the sum of small things. MODEL.md §Usage, U3. */
import type { Streams } from '../chance/streams.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { logNormalFactor, logNormalSigma } from './log-normal-factor.ts';

export interface SteadyPlan {
  readonly kind: 'steady';
  readonly runningW: number;
  readonly daySigma: number;
}

export function planSteady(appliance: Extract<Appliance, { kind: 'steady' }>): SteadyPlan {
  return {
    kind: 'steady',
    runningW: appliance.runningW * appliance.count,
    daySigma: logNormalSigma(appliance.dayScatterFraction),
  };
}

/**
 * Adds its watts, one factor (mean 1) to a local day, to what its circuit draws steadily.
 *
 * @param dayW the circuit's steady watts, one value per local day.
 */
export function drawSteady(
  { runningW, daySigma }: SteadyPlan,
  purpose: string,
  dayCount: number,
  streams: Streams,
  dayW: Float64Array,
): void {
  // starting a stream takes longer than all of this: where the factor is 1 anyway, none is
  const stream = daySigma === 0 ? undefined : streams(purpose);
  for (let day = 0; day < dayCount; day++) {
    dayW[day]! += stream === undefined ? runningW : runningW * logNormalFactor(stream, daySigma);
  }
}
