/** Lights follow the sun and waking hours. MODEL.md §Usage, U7. */
import type { Stream } from '../chance/streams.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { addMinutes } from './circuit-buffers.ts';
import { logNormalFactor, logNormalSigma } from './log-normal-factor.ts';
import { roundW } from './round-w.ts';
import type { MinuteRuns } from './minute-runs.ts';
import type { CircuitWant } from './usage-draw.ts';

export interface LightsPlan {
  readonly kind: 'lights';
  /** All of them on, W. */
  readonly allW: number;
  readonly litFraction: number;
  /** Position in the plan's list of darknesses. */
  readonly darknessIndex: number;
  readonly daySigma: number;
}

/** @param darknesses elevations that count as dark below, degrees; this one's is added when it is not there. */
export function planLights(
  appliance: Extract<Appliance, { kind: 'lights' }>,
  darknesses: number[],
): LightsPlan {
  const { darkBelowElevationDeg } = appliance;
  if (!darknesses.includes(darkBelowElevationDeg)) darknesses.push(darkBelowElevationDeg);
  return {
    kind: 'lights',
    allW: appliance.runningW * appliance.count,
    litFraction: appliance.litFraction,
    darknessIndex: darknesses.indexOf(darkBelowElevationDeg),
    daySigma: logNormalSigma(appliance.dayScatterFraction),
  };
}

/**
 * Adds what is lit in every dark waking minute: litFraction × household × day factor, never more than all of them.
 *
 * @param lit the dark waking minutes, in order of time.
 * @param first whether nothing but the day's steady watts lies on the circuit yet.
 */
export function drawLights(
  plan: LightsPlan,
  lit: MinuteRuns,
  householdFactor: number,
  stream: Stream,
  circuit: CircuitWant,
  first: boolean,
): void {
  let day = -1;
  let watts = 0;
  for (let run = 0; run < lit.count; run++) {
    for (; day < lit.day[run]!; day++) {
      const share = plan.litFraction * householdFactor * logNormalFactor(stream, plan.daySigma);
      watts = roundW(plan.allW * Math.min(1, share));
    }
    addMinutes(circuit, lit.from[run]!, lit.to[run]!, watts, first);
  }
}
