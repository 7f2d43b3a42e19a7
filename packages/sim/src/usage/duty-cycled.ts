/** Appliances that run by themselves for a share of the time: an old refrigerator, a dehumidifier. MODEL.md §Usage, U4. */
import type { Stream } from '../chance/streams.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import type { Appliance } from '../scenario/scenario.ts';
import { addRun, addStart } from './circuit-buffers.ts';
import { logNormalFactor, logNormalSigma } from './log-normal-factor.ts';
import { startExtraOf } from './start-extra.ts';
import type { CircuitWant } from './usage-draw.ts';
import { roundW } from './round-w.ts';

/** Off times are even within this share of their mean on either side (common practice, no source). */
const OFF_JITTER_FRACTION = 0.25;
/** A duty is never taken below this, so that an off time ends within 49 runs' length when it has turned warm again. */
const LEAST_DUTY = 0.02;
/** Nor below this share of its ordinary one, where that is less: far enough down to cut off no day of ordinary scatter. */
const LEAST_OF_ORDINARY = 0.25;

export interface DutyCycledPlan {
  readonly kind: 'duty-cycled';
  readonly runningW: number;
  readonly startExtraW: number;
  readonly onMinutes: number;
  readonly dutyFraction: number;
  readonly warmerPerC: number;
  /** Room temperature at which the duty is `dutyFraction`, °C. */
  readonly indoorC: number;
  readonly daySigma: number;
}

export function planDutyCycled(
  appliance: Extract<Appliance, { kind: 'duty-cycled' }>,
  indoorC: number,
): DutyCycledPlan {
  const { runningW, onMinutes, dutyFraction, warmerPerC } = appliance;
  return {
    kind: 'duty-cycled',
    runningW: roundW(runningW),
    startExtraW: startExtraOf(appliance),
    onMinutes,
    dutyFraction,
    warmerPerC,
    indoorC,
    daySigma: logNormalSigma(appliance.dayScatterFraction),
  };
}

/** Share of the time it runs in a room at `roomC` on a day with factor `dayFactor`: 1 at most. */
export function dutyAt(plan: DutyCycledPlan, roomC: number, dayFactor: number): number {
  const duty = plan.dutyFraction * dayFactor * (1 + plan.warmerPerC * (roomC - plan.indoorC));
  return Math.min(1, Math.max(Math.min(LEAST_DUTY, LEAST_OF_ORDINARY * plan.dutyFraction), duty));
}

/**
 * Adds the runs of one appliance. Phase at minute 0 is even over a cycle, and a run under way then has no start.
 * Each off time follows the duty at the end of the run before it.
 *
 * @param roomC one value per minute, °C.
 */
export function drawDutyCycled(
  plan: DutyCycledPlan,
  clock: OutageClock,
  roomC: Float32Array,
  stream: Stream,
  circuit: CircuitWant,
): void {
  const { onMinutes, startExtraW } = plan;
  let day = 0;
  let dayFactor = logNormalFactor(stream, plan.daySigma);
  const cycleMinutes = onMinutes / dutyAt(plan, roomC[0]!, dayFactor);
  const phase = stream() * cycleMinutes;
  let start = -phase;
  if (phase >= onMinutes) {
    start = (cycleMinutes - phase) * offJitter(stream);
    addStart(circuit, start, startExtraW);
  }
  for (;;) {
    const end = start + onMinutes;
    addRun(circuit, start, end, plan.runningW);
    if (end >= clock.minutes) return;
    const at = Math.max(0, Math.floor(end));
    for (; day < clock.localDay[at]!; day++) dayFactor = logNormalFactor(stream, plan.daySigma);
    const offMinutes = onMinutes * (1 / dutyAt(plan, roomC[at]!, dayFactor) - 1) * offJitter(stream);
    start = end + offMinutes;
    if (offMinutes > 0) addStart(circuit, start, startExtraW);
  }
}

function offJitter(stream: Stream): number {
  return 1 + OFF_JITTER_FRACTION * (2 * stream() - 1);
}
