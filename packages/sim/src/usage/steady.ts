/** Appliances that draw the same watts all day: a modem, a clock, the sum of small things. MODEL.md §Usage, U3. */
import type { Stream } from '../chance/streams.ts';
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
export function drawSteady(plan: SteadyPlan, dayCount: number, stream: Stream, dayW: Float64Array): void {
  for (let day = 0; day < dayCount; day++) {
    dayW[day]! += plan.runningW * logNormalFactor(stream, plan.daySigma);
  }
}
