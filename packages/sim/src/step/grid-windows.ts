/** Rolling outages: when the grid comes back and goes again in one draw. MODEL.md E1. */
import type { Stream } from '../chance/streams.ts';
import type { GridSpec } from '../scenario/schema-sources.ts';
import { logNormalFactor, logNormalSigma } from '../usage/log-normal-factor.ts';

/**
 * Fills `switches` with the minutes at which the grid comes back (1st, 3rd, …) and goes again (2nd, 4th, …), rising,
 * all before the horizon. Each stretch has its mean length times a log-normal factor of its own, in whole minutes,
 * one at least; the stream is taken forward in time, so a longer horizon changes nothing in it.
 */
export function drawGridWindows(spec: GridSpec, minutes: number, stream: Stream, switches: number[]): void {
  const onSigma = logNormalSigma(spec.onScatterFraction);
  const offSigma = logNormalSigma(spec.offScatterFraction);
  const stretch = (hours: number, sigma: number) =>
    Math.max(1, Math.round(60 * hours * logNormalFactor(stream, sigma)));
  switches.length = 0;
  let at = stretch(spec.firstOffHours ?? spec.offHours, offSigma);
  for (let back = true; at < minutes; back = !back) {
    switches.push(at);
    at += back ? stretch(spec.onHours, onSigma) : stretch(spec.offHours, offSigma);
  }
}
