/** A unit at a source, worked out on paper; and its books over random minutes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CHARGER_LOSS_WMIN,
  FEED_CHARGER_W,
  FEED_EFFICIENCY,
  FEED_KIND,
  FEED_SETTINGS,
  FROM_GENERATOR_WMIN,
  SOURCE_OVERLOAD,
  SOURCE_STORED_WMIN,
  SOURCE_SUMS,
} from '../../../packages/sim/src/power/source-feed.ts';
import {
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_ROW,
  COLD_CHARGE_LIMIT_W,
  COLD_FIGURES,
  COLD_FLOOR_WMIN,
  MINUTES_PER_HOUR,
} from '../../../packages/sim/src/power/hour-figures.ts';
import { stepCharging } from '../../../packages/sim/src/power/step-charging-unit.ts';
import { stepPassing } from '../../../packages/sim/src/power/step-passing-unit.ts';
import type { UnitParameters } from '../../../packages/sim/src/power/unit-parameters.ts';
import { createSolarMinutes, sumUpSolar } from '../../../packages/sim/src/step/solar-minutes.ts';
import {
  BATTERY_LIMIT,
  CROSSED,
  DONE,
  EMPTY,
  createUnitSettings,
  createUnitState,
  stepUnit,
} from '../../../packages/sim/src/power/step-unit.ts';

const NO_CHANGES = {
  count: 0,
  next: 0,
  at: new Int32Array(0),
  runningW: new Float64Array(0),
  startW: new Float64Array(0),
};

interface Bench {
  readonly capacityWmin: number;
  readonly storedWmin: number;
  readonly chargeEfficiency: number;
  readonly dischargeEfficiency: number;
  readonly idleW: number;
  readonly chargeLimitW: number;
  readonly floorWmin: number;
  readonly on: boolean;
  readonly dischargeLimitW: number;
  readonly dt: number;
  readonly chargerW: number;
  readonly efficiency: number;
  readonly sourceW: number;
  readonly surgeW: number;
  /** Extra watts of a thermostat that starts in the first step. */
  readonly startW: number;
  readonly solarW: readonly number[];
  readonly loadW: readonly number[];
  readonly upWmin: number;
}

const BENCH: Bench = {
  capacityWmin: 60_000,
  storedWmin: 30_000,
  chargeEfficiency: 1,
  dischargeEfficiency: 1,
  idleW: 0,
  chargeLimitW: 1e6,
  floorWmin: 0,
  on: true,
  dischargeLimitW: 1e6,
  dt: 1,
  chargerW: 800,
  efficiency: 1,
  sourceW: 2000,
  surgeW: 3000,
  startW: 0,
  solarW: [],
  loadW: [],
  upWmin: Infinity,
};

/** What the unit meets in its one hour: sun, loads in block 1, and its bank's limits. */
function hourOf({ solarW, loadW, floorWmin, chargeLimitW }: Bench) {
  const solar = createSolarMinutes(MINUTES_PER_HOUR);
  solar.usableW.set(solarW);
  sumUpSolar(solar, { count: 1, from: Int32Array.of(0), to: Int32Array.of(MINUTES_PER_HOUR) });
  const loads = {
    figures: new Float64Array(2 * BLOCK_FIGURES),
    watts: new Float32Array(2 * MINUTES_PER_HOUR),
    startExtraW: new Float32Array(2 * MINUTES_PER_HOUR),
  };
  loads.watts.set(loadW, MINUTES_PER_HOUR);
  loads.figures[BLOCK_FIGURES + BLOCK_ROW] = 1;
  loads.figures[BLOCK_FIGURES + BLOCK_LEAST_W] = Math.min(...loadW, 0);
  loads.figures[BLOCK_FIGURES + BLOCK_MOST_W] = Math.max(...loadW);
  const cold = new Float64Array(COLD_FIGURES);
  cold[COLD_FLOOR_WMIN] = floorWmin;
  cold[COLD_CHARGE_LIMIT_W] = chargeLimitW;
  return { solar, loads, blocks: Int32Array.of(1), cold };
}

/** Sets a unit up, takes it through the steps, and tells everything it has come to. */
function stepped(step: typeof stepPassing, changes: Partial<Bench>) {
  const bench = { ...BENCH, ...changes };
  const count = bench.loadW.length;
  const parameters: UnitParameters = {
    surgeW: 6000,
    continuousW: 3000,
    overloadMinutes: 0,
    idleW: bench.idleW,
    lossPerW: 0.05,
    lossPerW2: 1e-5,
    standbyW: bench.idleW,
    dischargeLimitW: bench.dischargeLimitW,
    chargeEfficiency: bench.chargeEfficiency,
    dischargeEfficiency: bench.dischargeEfficiency,
    capacityWmin: bench.capacityWmin,
    restartWmin: 0,
    keptPerHour: 1,
  };
  const state = createUnitState(bench.storedWmin);
  const settings = {
    ...createUnitSettings(),
    on: bench.on,
    idleW: bench.idleW,
    startW: bench.startW,
    upWmin: bench.upWmin,
    dt: bench.dt,
  };
  const feed = new Float64Array(FEED_SETTINGS);
  feed[FEED_KIND] = FROM_GENERATOR_WMIN;
  feed[FEED_CHARGER_W] = bench.chargerW;
  feed[FEED_EFFICIENCY] = bench.efficiency;
  const sums = new Float64Array(SOURCE_SUMS);
  const event = new Int32Array(1);
  const watts = {
    steadyW: new Float64Array(count).fill(bench.sourceW),
    surgeW: new Float64Array(count).fill(bench.surgeW),
  };
  const { solar, loads, blocks, cold } = hourOf(bench);
  const steps = step(
    parameters,
    state,
    sums,
    settings,
    feed,
    watts,
    cold,
    solar,
    loads,
    blocks,
    0,
    count,
    event,
  );
  const solarW = solar.usableW;
  const loadW = loads.watts.slice(MINUTES_PER_HOUR);
  return { bench, parameters, state, sums, settings, solarW, loadW, steps, event: event[0]! };
}

/** What must be nothing: the bus, the source, the bank, in watt-minutes. */
function imbalances({ bench, state, sums, solarW, loadW, steps }: ReturnType<typeof stepped>): number[] {
  const total = (watts: Float32Array) => watts.slice(0, steps).reduce((a, b) => a + b, 0) * bench.dt;
  const solarStored = state.chargedWmin - sums[SOURCE_STORED_WMIN]!;
  const solarUsed = total(solarW) - solarStored - state.curtailedWmin;
  const sourceUsed = sums[FROM_GENERATOR_WMIN]! - sums[CHARGER_LOSS_WMIN]! - sums[SOURCE_STORED_WMIN]!;
  const load = bench.on ? total(loadW) : 0;
  return [
    solarUsed + state.dischargedWmin + sourceUsed - load - state.lossWmin,
    bench.storedWmin +
      state.chargedWmin * bench.chargeEfficiency -
      state.dischargedWmin / bench.dischargeEfficiency -
      state.storedWmin,
    solarUsed < 0 ? solarUsed : 0,
    sourceUsed < 0 ? sourceUsed : 0,
  ];
}

describe('a unit whose circuits run off the source', () => {
  it('passes them through and gives the charger what is left, up to its limit', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [1500, 500], efficiency: 0.9 });
    // 500 and 800 W into the charger, nine tenths of it into the bank
    expect(state.storedWmin).toBeCloseTo(30_000 + 0.9 * (500 + 800), 9);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(1500 + 500 + 500 + 800, 9);
    expect(sums[CHARGER_LOSS_WMIN]).toBeCloseTo(130, 9);
    expect(state.dischargedWmin).toBe(0);
  });

  it('lets the panels charge first, and curtails what the bank has no room for', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [0, 0], solarW: [900, 1200], chargeLimitW: 1000 });
    expect(sums[SOURCE_STORED_WMIN]).toBeCloseTo(100, 9);
    expect(state.curtailedWmin).toBeCloseTo(200, 9);
    expect(state.chargedWmin).toBeCloseTo(2000, 9);
  });

  it('charges nothing below the modules’ least temperature, and idles on the source', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [100], idleW: 30, chargeLimitW: 0 });
    expect(state.storedWmin).toBe(30_000);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(130, 9);
  });

  it('stops before a step that the source cannot carry, its charger set aside', () => {
    const { steps, event } = stepped(stepPassing, { loadW: [1900, 2000, 2001], idleW: 0 });
    expect([steps, event]).toEqual([2, SOURCE_OVERLOAD]);
    expect(stepped(stepPassing, { loadW: [1990], idleW: 30 }).event).toBe(SOURCE_OVERLOAD);
  });

  it('stops before a start above the source’s surge rating, idle watts included, in the first step alone', () => {
    const started = (startW: number) => {
      const { steps, event } = stepped(stepPassing, { loadW: [1000, 1900], idleW: 30, startW });
      return [steps, event];
    };
    expect(started(1970)).toEqual([2, DONE]); // 1000 + 30 + 1970 is the 3000 that it bears
    expect(started(1971)).toEqual([0, SOURCE_OVERLOAD]);
  });

  it('fills the bank to the last bit and reports the level that somebody waits for', () => {
    const full = stepped(stepPassing, { storedWmin: 59_900, loadW: [0], upWmin: 60_000 });
    expect(full.state.storedWmin).toBe(60_000);
    expect([full.steps, full.event]).toEqual([1, CROSSED]);
    expect(full.sums[FROM_GENERATOR_WMIN]).toBeCloseTo(100, 9);
  });
});

describe('a unit that a source charges while its inverter runs on', () => {
  it('makes up what the panels lack, then charges', () => {
    const { state, sums } = stepped(stepCharging, { loadW: [400], efficiency: 0.8, chargerW: 1000 });
    const loss = 400 * (0.05 + 1e-5 * 400);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(1000, 9);
    expect(state.storedWmin).toBeCloseTo(30_000 + 800 - 400 - loss, 9);
  });

  it('draws from the bank what the source does not give, down to the floor', () => {
    const { state, steps, event } = stepped(stepCharging, {
      loadW: [1500, 1500],
      chargerW: 500,
      storedWmin: 1200,
      floorWmin: 0,
    });
    const need = 1500 + 1500 * (0.05 + 1e-5 * 1500) - 500;
    expect(state.storedWmin).toBeCloseTo(1200 - need, 9);
    expect([steps, event]).toEqual([1, EMPTY]);
  });

  it('trips on the modules’ limit less what the source gives', () => {
    const at = (chargerW: number) =>
      stepped(stepCharging, { loadW: [2500], chargerW, dischargeLimitW: 2000 }).event;
    expect(at(300)).toBe(BATTERY_LIMIT);
    expect(at(800)).toBe(DONE);
  });

  it('charges a unit that is down', () => {
    const { state } = stepped(stepCharging, { on: false, idleW: 4, loadW: [0, 0], storedWmin: 0 });
    expect(state.storedWmin).toBeCloseTo(2 * (800 - 4), 9);
  });

  it('without watts is the plain unit, bit for bit where that too goes minute by minute', () => {
    const loadW = [300, 900, 0, 2100, 50];
    const solarW = [0, 1500, 700, 0, 60];
    const upWmin = 31_000; // not reached, but near enough
    const charged = stepped(stepCharging, { loadW, solarW, sourceW: 0, idleW: 28, upWmin });
    const plain = stepped(
      (parameters, state, _sums, settings, _feed, _watts, cold, solar, loads, blocks, from, count, event) =>
        stepUnit(parameters, state, settings, cold, solar, loads, blocks, from, count, NO_CHANGES, event),
      { loadW, solarW, idleW: 28, upWmin },
    );
    expect(charged.state).toEqual(plain.state);
    expect(Array.from(charged.sums)).toEqual(new Array(SOURCE_SUMS).fill(0));
  });
});

describe('the books of a unit at a source', () => {
  const watts = (most: number) =>
    fc.array(fc.integer({ min: 0, max: most }), { minLength: 20, maxLength: 20 });
  const share = (least: number) => fc.double({ min: least, max: 1, noNaN: true });
  const bench = fc.record({
    storedWmin: fc.integer({ min: 0, max: 60_000 }),
    chargeEfficiency: share(0.5),
    dischargeEfficiency: share(0.5),
    idleW: fc.constantFrom(0, 30, 400),
    chargeLimitW: fc.constantFrom(0, 200, 5000),
    floorWmin: fc.constantFrom(0, 6000),
    on: fc.boolean(),
    dischargeLimitW: fc.constantFrom(2000, 1e6),
    dt: fc.constantFrom(1, 0.3),
    chargerW: fc.constantFrom(0, 300, 3000),
    efficiency: share(0.5),
    sourceW: fc.constantFrom(0, 900, 5000),
    surgeW: fc.constantFrom(900, 9000),
    solarW: watts(3000),
    loadW: watts(4000),
  });

  it.each([
    ['passing', stepPassing],
    ['charging', stepCharging],
  ])('close over random minutes: %s', (_, step) => {
    let steps = 0;
    fc.assert(
      fc.property(bench, (changes) => {
        const loadW = changes.on ? changes.loadW : changes.loadW.map(() => 0);
        const result = stepped(step, { ...changes, loadW });
        for (const wmin of imbalances(result)) expect(Math.abs(wmin)).toBeLessThan(1e-7);
        expect(result.state.storedWmin).toBeGreaterThanOrEqual(0);
        expect(result.state.storedWmin).toBeLessThanOrEqual(60_000);
        expect(Array.from(result.sums).every((sum) => sum >= 0)).toBe(true);
        steps += result.steps;
      }),
      { seed: 7, numRuns: 400 },
    );
    expect(steps).toBeGreaterThan(1000);
  });
});
