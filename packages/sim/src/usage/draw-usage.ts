import type { Stream, Streams } from '../chance/streams.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import { sin } from '../portable/elementary.ts';
import { clearStarts, noteChange } from './circuit-buffers.ts';
import { drawDutyCycled } from './duty-cycled.ts';
import { drawEvents } from './events.ts';
import { drawLights } from './lights.ts';
import { findLitRuns } from './lit-runs.ts';
import { findLocalDays, type LocalDays } from './local-days.ts';
import { logNormalFactor } from './log-normal-factor.ts';
import { drawMeasured } from './measured.ts';
import { roundW } from './round-w.ts';
import { drawScheduled } from './scheduled.ts';
import { drawSteady } from './steady.ts';
import { drawThermostat } from './thermostat.ts';
import type { UsageBuffers } from './usage-buffers.ts';
import type { CircuitWant } from './usage-draw.ts';
import type { AppliancePlan, UsagePlan } from './usage-plan.ts';

const RADIANS = Math.PI / 180;

/** Temperatures around appliances, °C, one value per minute of the outage. */
export interface UsageAmbient {
  readonly indoors: Float32Array;
  readonly outdoors: Float32Array;
  readonly garage: Float32Array;
}

/**
 * Fills `out` with the household's wants in one draw. MODEL.md §Usage.
 *
 * Depends on nothing but its arguments; what was in `out` does not matter. A longer horizon extends a draw and leaves
 * the minutes before as they are, as long as clock, ambient and sun do.
 *
 * @param clock as long as `out`; otherwise RangeError.
 * @param sinElevation sine of the sun's elevation, one value per minute; for lights.
 * @param streams of this draw.
 * @param out from `createUsageDraw` with the same plan.
 */
export function drawUsage(
  plan: UsagePlan,
  clock: OutageClock,
  ambient: UsageAmbient,
  sinElevation: Float32Array,
  streams: Streams,
  out: UsageBuffers,
): void {
  if (clock.minutes !== out.minutes) {
    throw new RangeError(`clock has ${clock.minutes} minutes, buffers have ${out.minutes}`);
  }
  findLocalDays(clock, out.days);
  plan.darknesses.forEach((belowDeg, k) =>
    findLitRuns(out.days, plan.awake, sinElevation, sin(belowDeg * RADIANS), out.lit[k]!),
  );
  layDownSteady(plan, streams, out);
  const householdFactor = logNormalFactor(streams('usage/household'), plan.householdSigma);
  let thermostat = 0;
  for (const { circuitIndex, purpose, plan: each } of plan.appliances) {
    if (each.kind === 'steady') continue;
    const stream = streams(purpose);
    if (each.kind === 'thermostat') {
      drawThermostat(out.thermostats[thermostat++]!, ambient[each.want.surroundings][0]!, stream);
    } else drawAppliance(each, clock, ambient, householdFactor, stream, out, circuitIndex);
  }
}

/** Starts every circuit anew from its steady watts, which takes no longer than clearing it. */
function layDownSteady(plan: UsagePlan, streams: Streams, out: UsageBuffers): void {
  const { days, steadyDayW } = out;
  for (const dayW of steadyDayW) dayW.fill(0);
  for (const { circuitIndex, purpose, plan: each } of plan.appliances) {
    if (each.kind === 'steady') drawSteady(each, days.count, streams(purpose), steadyDayW[circuitIndex]!);
  }
  for (let c = 0; c < out.circuits.length; c++) {
    clearStarts(out.circuits[c]!);
    fillDays(out.circuits[c]!, days, steadyDayW[c]!);
  }
}

function fillDays(circuit: CircuitWant, days: LocalDays, dayW: Float64Array): void {
  let before = -1;
  for (let s = 0; s < days.stretchCount; s++) {
    const from = days.stretchAt[s]!;
    const watts = roundW(dayW[days.stretchDay[s]!]!);
    circuit.demandW.fill(watts, from, days.stretchAt[s + 1]);
    if (watts !== before && from > 0) noteChange(circuit, from);
    before = watts;
  }
}

function drawAppliance(
  plan: Exclude<AppliancePlan, { kind: 'steady' | 'thermostat' }>,
  clock: OutageClock,
  ambient: UsageAmbient,
  householdFactor: number,
  stream: Stream,
  { circuits, days, lit }: UsageBuffers,
  circuitIndex: number,
): void {
  const circuit = circuits[circuitIndex]!;
  switch (plan.kind) {
    case 'duty-cycled':
      return drawDutyCycled(plan, clock, ambient.indoors, stream, circuit);
    case 'events':
      return drawEvents(plan, days, householdFactor, stream, circuit);
    case 'scheduled':
      return drawScheduled(plan, clock, days, circuit);
    case 'lights':
      return drawLights(plan, lit[plan.darknessIndex]!, householdFactor, stream, circuit);
    case 'measured':
      return drawMeasured(plan, days, stream, circuit);
  }
}
