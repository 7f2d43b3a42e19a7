import type { Streams } from '../chance/streams.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import { sin } from '../portable/elementary.ts';
import { clearStarts, fillDays, sumUpHours } from './circuit-buffers.ts';
import { drawDutyCycled } from './duty-cycled.ts';
import { drawEvents } from './events.ts';
import { drawLights } from './lights.ts';
import { findLitRuns } from './lit-runs.ts';
import { findLocalDays } from './local-days.ts';
import { logNormalFactor } from './log-normal-factor.ts';
import { drawMeasured } from './measured.ts';
import { drawScheduled } from './scheduled.ts';
import { drawSteady } from './steady.ts';
import { drawThermostat } from './thermostat.ts';
import type { UsageBuffers } from './usage-buffers.ts';
import type { CircuitWant } from './usage-draw.ts';
import type { CircuitPlan, UsagePlan, VaryingAppliance } from './usage-plan.ts';

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
 * Depends on nothing but its arguments; what the draws before left in `out` does not matter. A longer horizon extends a draw and leaves
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
  const householdFactor = logNormalFactor(streams('usage/household'), plan.householdSigma);
  const drawing: Drawing = { clock, ambient, householdFactor, streams, out };
  for (let c = 0; c < plan.circuits.length; c++) {
    const stays = layDownSteady(plan.circuits[c]!, streams, out, c);
    for (const appliance of plan.circuits[c]!.varying) drawWatts(appliance, drawing, out.circuits[c]!);
    if (!stays) sumUpHours(out.circuits[c]!);
  }
  drawThermostats(plan, drawing);
}

/** What every appliance of a draw meets. */
interface Drawing {
  readonly clock: OutageClock;
  readonly ambient: UsageAmbient;
  readonly householdFactor: number;
  readonly streams: Streams;
  readonly out: UsageBuffers;
}

/**
 * Starts a circuit anew from its steady watts, which takes no longer than clearing it.
 *
 * @returns whether all that it wants is what it wanted in the draw before.
 */
function layDownSteady(
  { steady, varies }: CircuitPlan,
  streams: Streams,
  out: UsageBuffers,
  c: number,
): boolean {
  const { days, steadyDayW, laidW } = out;
  const circuit = out.circuits[c]!;
  steadyDayW.fill(0);
  for (const { purpose, plan } of steady) drawSteady(plan, purpose, days.count, streams, steadyDayW);
  clearStarts(circuit);
  const sameW = fillDays(circuit, days, steadyDayW, laidW[c]!);
  const stays = !varies && sameW === laidW[c];
  laidW[c] = varies ? NaN : sameW;
  return stays;
}

function drawWatts(
  { plan, purpose, first }: VaryingAppliance,
  { clock, ambient, householdFactor, streams, out: { days, lit, ahead } }: Drawing,
  circuit: CircuitWant,
): void {
  switch (plan.kind) {
    case 'duty-cycled':
      return drawDutyCycled(plan, clock, ambient.indoors, streams(purpose), circuit);
    case 'events':
      return drawEvents(plan, days, householdFactor, streams(purpose), ahead, circuit);
    case 'scheduled':
      return drawScheduled(plan, clock, days, circuit, first);
    case 'lights':
      return drawLights(plan, lit[plan.darknessIndex]!, householdFactor, streams(purpose), circuit, first);
    case 'measured':
      return drawMeasured(plan, days, streams(purpose), circuit);
    case 'thermostat':
      return; // its watts come when the draw is stepped
  }
}

function drawThermostats({ circuits }: UsagePlan, { ambient, streams, out }: Drawing): void {
  let thermostat = 0;
  for (const { varying } of circuits) {
    for (const { purpose, plan } of varying) {
      if (plan.kind !== 'thermostat') continue;
      const surroundingsC = ambient[plan.want.surroundings][0]!;
      drawThermostat(out.thermostats[thermostat++]!, surroundingsC, streams(purpose));
    }
  }
}
