/** Builds small households and draws them, so that each test says only what it is about. */
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { createClock, fillClock } from '../../../packages/sim/src/clock/fill-clock.ts';
import type { OutageClock } from '../../../packages/sim/src/clock/outage-clock.ts';
import { epochMinuteOfLocal } from '../../../packages/sim/src/clock/zone-offset.ts';
import type { Circuit, MeasuredProfile } from '../../../packages/sim/src/scenario/scenario.ts';
import { appliance } from '../../../packages/sim/src/scenario/schema.ts';
import { drawUsage, type UsageAmbient } from '../../../packages/sim/src/usage/draw-usage.ts';
import { planUsage } from '../../../packages/sim/src/usage/plan-usage.ts';
import { createUsageDraw, type UsageBuffers } from '../../../packages/sim/src/usage/usage-buffers.ts';
import type { UsagePlan } from '../../../packages/sim/src/usage/usage-plan.ts';

export type Written = Readonly<Record<string, unknown>> & { readonly profile?: MeasuredProfile };

/** A circuit of appliances as they would be written in a scenario; a measured one brings its profile. */
export function circuitOf(id: string, ...written: readonly Written[]): Circuit {
  const appliances = written.map(({ profile, ...each }) => {
    const checked = appliance.parse(profile === undefined ? each : { file: 'profile.csv', ...each });
    return profile === undefined ? checked : { ...checked, profile };
  });
  return {
    id,
    leg: 'L1',
    tier: 1,
    graceMinutes: 0,
    legFixed: false,
    appliances: appliances as Circuit['appliances'],
  };
}

export interface Setting {
  readonly days?: number;
  readonly minutes?: number;
  /** [year, month, day, minute of the day] on the local clock. */
  readonly start?: readonly [number, number, number, number];
  readonly timeZone?: string;
  readonly awake?: string;
  readonly householdScatterFraction?: number;
  readonly seed?: string;
  readonly index?: number;
  readonly indoorsC?: (minute: number) => number;
  readonly outdoorsC?: number;
  /** Sun elevation from the local minute of the day. */
  readonly sunDeg?: (localMinute: number) => number;
}

export function clockOf(setting: Setting): OutageClock {
  const { start = [2026, 6, 1, 0], timeZone = 'America/New_York' } = setting;
  const clock = createClock(timeZone, setting.minutes ?? (setting.days ?? 1) * 1440);
  fillClock(clock, epochMinuteOfLocal(timeZone, ...start));
  return clock;
}

export function planOf(circuits: readonly Circuit[], setting: Setting = {}): UsagePlan {
  const scatter = { householdScatterFraction: setting.householdScatterFraction ?? 0 };
  return planUsage(circuits, scatter, setting.awake ?? '06:30-22:30', 21);
}

/** One draw; the sun stands at 0° at 06:00 and 18:00 unless the setting says otherwise. */
export function drawOf(
  circuits: readonly Circuit[],
  setting: Setting = {},
  into?: UsageBuffers,
): UsageBuffers {
  const clock = clockOf(setting);
  const plan = planOf(circuits, setting);
  const out = into ?? createUsageDraw(plan, clock.minutes);
  const { indoorsC = () => 21, outdoorsC = 10, sunDeg = sixToSix } = setting;
  const ambient: UsageAmbient = {
    indoors: perMinute(clock.minutes, indoorsC),
    outdoors: new Float32Array(clock.minutes).fill(outdoorsC),
    garage: new Float32Array(clock.minutes).fill(15),
  };
  const sun = perMinute(clock.minutes, (m) => Math.sin((sunDeg(clock.localMinuteOfDay[m]!) * Math.PI) / 180));
  drawUsage(plan, clock, ambient, sun, streamsOf(setting.seed ?? 'test', setting.index ?? 0), out);
  return out;
}

function perMinute(minutes: number, value: (minute: number) => number): Float32Array {
  const values = new Float32Array(minutes);
  for (let m = 0; m < minutes; m++) values[m] = value(m);
  return values;
}

function sixToSix(localMinute: number): number {
  return 60 * (1 - Math.abs(localMinute - 720) / 360);
}

export function sum(values: Float32Array | readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** Energy of the first circuit, Wh. */
export function wattHours(draw: UsageBuffers): number {
  return sum(draw.circuits[0]!.demandW) / 60;
}

/** Minutes with a start on the first circuit. */
export function startMinutes(draw: UsageBuffers): number[] {
  const minutes: number[] = [];
  draw.circuits[0]!.startExtraW?.forEach((extra, minute) => {
    if (extra > 0) minutes.push(minute);
  });
  return minutes;
}

/** Places where clocks change in every way there is: by an hour, by half an hour, at midnight. */
export const CLOCK_CHANGES: readonly (readonly [string, Setting])[] = [
  ['New York, spring', { timeZone: 'America/New_York', start: [2026, 3, 6, 1111], days: 5 }],
  ['New York, autumn', { timeZone: 'America/New_York', start: [2026, 10, 30, 17], days: 5 }],
  [
    'New York, starting in the hour that comes twice',
    { timeZone: 'America/New_York', start: [2026, 11, 1, 70], days: 2 },
  ],
  [
    'Lord Howe, half an hour, spring',
    { timeZone: 'Australia/Lord_Howe', start: [2026, 10, 2, 600], days: 4 },
  ],
  ['Lord Howe, half an hour, autumn', { timeZone: 'Australia/Lord_Howe', start: [2026, 4, 3, 600], days: 4 }],
  ['Havana, midnight does not come', { timeZone: 'America/Havana', start: [2026, 3, 6, 300], days: 4 }],
  ['Havana, midnight comes twice', { timeZone: 'America/Havana', start: [2026, 10, 30, 300], days: 4 }],
  ['Phoenix, never', { timeZone: 'America/Phoenix', start: [2026, 3, 6, 1], days: 4 }],
];

/** Mean of the days' watt-minutes, and their standard deviation as a share of it. */
export function scatterOf(demandW: Float32Array, days: number): { mean: number; spread: number } {
  const each = Array.from({ length: days }, (_, d) => sum(demandW.subarray(1440 * d, 1440 * (d + 1))));
  const mean = sum(each) / days;
  const squares = each.reduce((total, value) => total + (value - mean) * (value - mean), 0);
  return { mean, spread: Math.sqrt(squares / (days - 1)) / mean };
}
