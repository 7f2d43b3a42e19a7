/** Many minutes of a unit at once, held to the model's step (MODEL.md §6.2, §7.2, §7.3) written out one minute at a time. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BLOCK_BASE_W,
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_PEAK_START_W,
  BLOCK_ROW,
  COLD_CHARGE_LIMIT_W,
  COLD_FIGURES,
  COLD_FLOOR_WMIN,
  MINUTES_PER_HOUR,
} from '../../../packages/sim/src/power/hour-figures.ts';
import {
  BATTERY_LIMIT,
  createUnitSettings,
  createUnitState,
  CROSSED,
  DONE,
  EMPTY,
  OVERLOAD,
  selfDischarge,
  stepUnit,
  type UnitState,
} from '../../../packages/sim/src/power/step-unit.ts';
import type { UnitParameters } from '../../../packages/sim/src/power/unit-parameters.ts';
import { createSolarMinutes, sumUpSolar } from '../../../packages/sim/src/step/solar-minutes.ts';

const HOURS = 3;
const MINUTES = HOURS * MINUTES_PER_HOUR;
const CAPACITY_WMIN = 200_000;

const PARAMETERS: UnitParameters = {
  surgeW: 6000,
  continuousW: 2500,
  overloadMinutes: 1,
  idleW: 28,
  lossPerW: 0.035,
  lossPerW2: 8e-6,
  standbyW: 4,
  dischargeLimitW: 2800,
  chargeEfficiency: 0.96,
  dischargeEfficiency: 0.95,
  capacityWmin: CAPACITY_WMIN,
  restartWmin: 0.25 * CAPACITY_WMIN,
  keptPerHour: 1 - 1e-4,
};

/** An hour of the unit: watts of every minute and what changes beside them, sun, the cold's limits. */
const hour = fc.record({
  baseW: fc.constantFrom(0, 150, 900),
  busy: fc.boolean(),
  wattsW: fc.array(fc.integer({ min: 0, max: 64 * 1900 }), { minLength: 60, maxLength: 60 }),
  sunW: fc.constantFrom(0, 300, 2400),
  clear: fc.boolean(),
  floorFraction: fc.constantFrom(0.1, 0.2),
  chargeLimitW: fc.constantFrom(0, 400, 5000),
});
type Hour = typeof hour extends fc.Arbitrary<infer H> ? H : never;

const case_ = fc.record({
  hours: fc.array(hour, { minLength: HOURS, maxLength: HOURS }),
  startFraction: fc.constantFrom(0.1, 0.15, 0.5, 0.97, 1),
  on: fc.boolean(),
  switches: fc.array(
    fc.record({ at: fc.integer({ min: 0, max: MINUTES - 1 }), watts: fc.constantFrom(0, 130, 430) }),
    { maxLength: 6 },
  ),
  downFraction: fc.constantFrom(-Infinity, 0.3, 0.45),
  upFraction: fc.constantFrom(Infinity, 0.6, 0.99),
  hoursAtOnce: fc.constantFrom(1, 2, HOURS),
});

const wattsOf = ({ busy, wattsW }: Hour, k: number) => (busy ? wattsW[k]! / 64 : 0);
const sunOf = ({ clear, sunW }: Hour, k: number) => (clear ? sunW : (sunW * ((k * 37) % 60)) / 60);

function meet(hours: readonly Hour[]) {
  const solar = createSolarMinutes(MINUTES);
  const figures = new Float64Array((HOURS + 1) * BLOCK_FIGURES);
  const watts = new Float32Array((HOURS + 1) * MINUTES_PER_HOUR);
  const cold = new Float64Array(HOURS * COLD_FIGURES);
  hours.forEach((each, h) => {
    const inHour = Array.from({ length: 60 }, (_, k) => wattsOf(each, k));
    inHour.forEach((w, k) => {
      watts[(h + 1) * MINUTES_PER_HOUR + k] = w;
      solar.usableW[h * MINUTES_PER_HOUR + k] = sunOf(each, k);
    });
    const at = (h + 1) * BLOCK_FIGURES;
    figures[at + BLOCK_BASE_W] = each.baseW;
    figures[at + BLOCK_ROW] = h + 1;
    figures[at + BLOCK_LEAST_W] = Math.min(...inHour);
    figures[at + BLOCK_MOST_W] = figures[at + BLOCK_PEAK_START_W] = Math.max(...inHour);
    cold[h * COLD_FIGURES + COLD_FLOOR_WMIN] = each.floorFraction * CAPACITY_WMIN;
    cold[h * COLD_FIGURES + COLD_CHARGE_LIMIT_W] = each.chargeLimitW;
  });
  sumUpSolar(solar, { count: 1, from: Int32Array.of(0), to: Int32Array.of(MINUTES) });
  const loads = { figures, watts, startExtraW: new Float32Array(watts.length) };
  return { solar, loads, cold, blocks: Int32Array.from({ length: HOURS }, (_, h) => h + 1) };
}

/** The model's own words, one minute at a time. */
function plainly(
  state: UnitState,
  { hours, on, switches, downFraction, upFraction }: Case,
  usableW: Float32Array,
) {
  let minutesAbove = 0;
  for (let m = 0; m < MINUTES; m++) {
    const each = hours[Math.floor(m / 60)]!;
    if (m > 0 && m % 60 === 0) {
      const kept = state.storedWmin * PARAMETERS.keptPerHour;
      state.selfDischargedWmin += state.storedWmin - kept;
      state.storedWmin = kept;
    }
    const running = switches.filter(({ at }) => at <= m).at(-1)?.watts ?? 0;
    const p = each.baseW + running + wattsOf(each, m % 60);
    const loss =
      (on ? PARAMETERS.idleW : PARAMETERS.standbyW) + p * (PARAMETERS.lossPerW + PARAMETERS.lossPerW2 * p);
    const net = usableW[m]! - p - loss;
    const above = p > PARAMETERS.continuousW;
    if (above && minutesAbove >= PARAMETERS.overloadMinutes) return { steps: m, ended: OVERLOAD };
    if (on && -net > PARAMETERS.dischargeLimitW) return { steps: m, ended: BATTERY_LIMIT };
    const floor = each.floorFraction * CAPACITY_WMIN;
    if (net >= 0) {
      const room = (CAPACITY_WMIN - state.storedWmin) / PARAMETERS.chargeEfficiency;
      const c = Math.min(net, each.chargeLimitW, room);
      state.storedWmin += c * PARAMETERS.chargeEfficiency;
      state.chargedWmin += c;
      state.curtailedWmin += net - c;
      state.lossWmin += loss;
    } else {
      const left = Math.max(0, (state.storedWmin - floor) * PARAMETERS.dischargeEfficiency);
      if (on && left < -net) return { steps: m, ended: EMPTY };
      const drawn = Math.min(-net, left); // standby takes what there is
      state.storedWmin -= drawn / PARAMETERS.dischargeEfficiency;
      state.dischargedWmin += drawn;
      state.lossWmin += loss + net + drawn;
    }
    minutesAbove = above ? minutesAbove + 1 : 0;
    const charge = state.storedWmin / CAPACITY_WMIN;
    if (charge < downFraction || charge >= upFraction) return { steps: m + 1, ended: CROSSED };
  }
  return { steps: MINUTES, ended: DONE };
}
type Case = typeof case_ extends fc.Arbitrary<infer C> ? C : never;

/** A unit that is off carries nothing. */
function consistent(found: Case): Case {
  const switches = [...found.switches].sort((a, b) => a.at - b.at);
  if (found.on) return { ...found, switches };
  return { ...found, switches: [], hours: found.hours.map((each) => ({ ...each, baseW: 0, busy: false })) };
}

describe('a unit through hours, some or all of them in one call', () => {
  it('comes to what the model’s minutes come to one by one, and ends where they do', () => {
    const seen = new Map<number, number>();
    fc.assert(
      fc.property(case_, (found) => {
        const given = consistent(found);
        const { on, switches, startFraction, downFraction, upFraction, hoursAtOnce } = given;
        const { solar, loads, cold, blocks } = meet(given.hours);
        const state = createUnitState(startFraction * CAPACITY_WMIN);
        const expected = createUnitState(startFraction * CAPACITY_WMIN);
        const settings = {
          ...createUnitSettings(),
          on,
          idleW: on ? PARAMETERS.idleW : PARAMETERS.standbyW,
          downWmin: downFraction * CAPACITY_WMIN,
          upWmin: upFraction * CAPACITY_WMIN,
        };
        const event = Int32Array.of(DONE);
        const changes = {
          count: switches.length,
          next: 0,
          at: Int32Array.from(switches, ({ at }) => at),
          runningW: Float64Array.from(switches, ({ watts }) => watts),
          startW: new Float64Array(switches.length),
        };
        let steps = 0;
        const step = (count: number): boolean => {
          const done = stepUnit(
            PARAMETERS,
            state,
            settings,
            cold,
            solar,
            loads,
            blocks,
            steps,
            count,
            changes,
            event,
          );
          steps += done;
          return done === count;
        };
        while (steps < MINUTES && event[0] === DONE) {
          settings.leaksFirst = steps > 0;
          if (step(Math.min(hoursAtOnce * MINUTES_PER_HOUR, MINUTES - steps)) || event[0] !== DONE) continue;
          // an hour that is not begun: what stops it is told once somebody begins it
          selfDischarge(PARAMETERS, state);
          settings.leaksFirst = false;
          step(1);
        }
        const plain = plainly(expected, given, solar.usableW);
        expect({ steps, ended: event[0] }).toEqual(plain);
        for (const sum of SUMS) expect(Math.abs(state[sum] - expected[sum])).toBeLessThan(1e-6);
        seen.set(plain.ended, (seen.get(plain.ended) ?? 0) + 1);
      }),
      { seed: 11, numRuns: 3000 },
    );
    for (const ended of [DONE, CROSSED, EMPTY, OVERLOAD, BATTERY_LIMIT])
      expect(seen.get(ended) ?? 0).toBeGreaterThan(10);
  });
});

describe('self-discharge at a full hour', () => {
  const idle: Hour = {
    baseW: 0,
    busy: false,
    wattsW: new Array<number>(60).fill(0),
    sunW: 0,
    clear: true,
    floorFraction: 0.1,
    chargeLimitW: 0,
  };
  const { solar, loads, cold, blocks } = meet(new Array<Hour>(HOURS).fill(idle));
  const none = {
    count: 0,
    next: 0,
    at: new Int32Array(0),
    runningW: new Float64Array(0),
    startW: new Float64Array(0),
  };
  const stepped = (downWmin: number) => {
    const state = createUnitState(0.5 * CAPACITY_WMIN);
    const settings = { ...createUnitSettings(), downWmin };
    const event = Int32Array.of(DONE);
    const steps = stepUnit(PARAMETERS, state, settings, cold, solar, loads, blocks, 0, MINUTES, none, event);
    return { steps, ended: event[0], leakedWmin: state.selfDischargedWmin };
  };

  it('that would carry the bank below a level somebody waits for leaves the hour to its caller', () => {
    const kept = 1 - PARAMETERS.keptPerHour;
    const justBelow = 0.5 * CAPACITY_WMIN * (1 - kept / 2);
    expect(stepped(justBelow)).toEqual({ steps: 60, ended: DONE, leakedWmin: 0 });
    const { steps, ended, leakedWmin } = stepped(-Infinity);
    expect([steps, ended]).toEqual([MINUTES, DONE]);
    expect(leakedWmin).toBeCloseTo(0.5 * CAPACITY_WMIN * (1 - PARAMETERS.keptPerHour ** (HOURS - 1)), 9);
  });
});

const SUMS = [
  'storedWmin',
  'lossWmin',
  'chargedWmin',
  'dischargedWmin',
  'curtailedWmin',
  'selfDischargedWmin',
] as const;
