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
import { stepCharging } from '../../../packages/sim/src/power/step-charging-unit.ts';
import { stepPassing } from '../../../packages/sim/src/power/step-passing-unit.ts';
import {
  BATTERY_LIMIT,
  CHARGED_WMIN,
  CROSSED,
  CURTAILED_WMIN,
  DISCHARGED_WMIN,
  DONE,
  EMPTY,
  LOSS_WMIN,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_DT,
  SET_FLOOR_WMIN,
  SET_IDLE_W,
  SET_ON,
  SET_UP_WMIN,
  SET_WATCH,
  SETTINGS,
  stepUnit,
  STORED_WMIN,
  UNIT_STATE,
} from '../../../packages/sim/src/power/step-unit.ts';
import {
  CAPACITY_WMIN,
  CHARGE_EFFICIENCY,
  CONTINUOUS_W,
  DISCHARGE_EFFICIENCY,
  DISCHARGE_LIMIT_W,
  LOSS_PER_W,
  LOSS_PER_W2,
  SURGE_W,
  UNIT_PARAMETERS,
} from '../../../packages/sim/src/power/unit-parameters.ts';

interface Bench {
  readonly capacityWmin: number;
  readonly storedWmin: number;
  readonly chargeEfficiency: number;
  readonly dischargeEfficiency: number;
  readonly idleW: number;
  readonly chargeLimitW: number;
  readonly floorWmin: number;
  readonly on: boolean;
  readonly watch: boolean;
  readonly dt: number;
  readonly chargerW: number;
  readonly efficiency: number;
  readonly sourceW: number;
  readonly surgeW: number;
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
  watch: false,
  dt: 1,
  chargerW: 800,
  efficiency: 1,
  sourceW: 2000,
  surgeW: 3000,
  solarW: [],
  loadW: [],
  upWmin: Infinity,
};

/** Sets a unit up, takes it through the steps, and tells everything it has come to. */
function stepped(step: typeof stepPassing, changes: Partial<Bench>) {
  const bench = { ...BENCH, ...changes };
  const count = bench.loadW.length;
  const parameters = new Float64Array(UNIT_PARAMETERS);
  parameters[CAPACITY_WMIN] = bench.capacityWmin;
  parameters[CHARGE_EFFICIENCY] = bench.chargeEfficiency;
  parameters[DISCHARGE_EFFICIENCY] = bench.dischargeEfficiency;
  parameters[LOSS_PER_W] = 0.05;
  parameters[LOSS_PER_W2] = 1e-5;
  parameters[CONTINUOUS_W] = 3000;
  parameters[SURGE_W] = 6000;
  parameters[DISCHARGE_LIMIT_W] = 2000;
  const state = new Float64Array(UNIT_STATE);
  state[STORED_WMIN] = bench.storedWmin;
  const settings = new Float64Array(SETTINGS);
  settings[SET_ON] = bench.on ? 1 : 0;
  settings[SET_IDLE_W] = bench.idleW;
  settings[SET_FLOOR_WMIN] = bench.floorWmin;
  settings[SET_CHARGE_LIMIT_W] = bench.chargeLimitW;
  settings[SET_DOWN_WMIN] = -Infinity;
  settings[SET_UP_WMIN] = bench.upWmin;
  settings[SET_DT] = bench.dt;
  settings[SET_WATCH] = bench.watch ? 1 : 0;
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
  const solarW = Float32Array.from({ length: count }, (_, k) => bench.solarW[k] ?? 0);
  const loadW = Float32Array.from(bench.loadW);
  const steps = step(
    parameters,
    state,
    sums,
    settings,
    feed,
    watts,
    0,
    solarW,
    0,
    loadW,
    new Float32Array(count),
    count,
    event,
  );
  return { bench, parameters, state, sums, settings, solarW, loadW, steps, event: event[0]! };
}

/** What must be nothing: the bus, the source, the bank, in watt-minutes. */
function imbalances({ bench, state, sums, solarW, loadW, steps }: ReturnType<typeof stepped>): number[] {
  const total = (watts: Float32Array) => watts.slice(0, steps).reduce((a, b) => a + b, 0) * bench.dt;
  const solarStored = state[CHARGED_WMIN]! - sums[SOURCE_STORED_WMIN]!;
  const solarUsed = total(solarW) - solarStored - state[CURTAILED_WMIN]!;
  const sourceUsed = sums[FROM_GENERATOR_WMIN]! - sums[CHARGER_LOSS_WMIN]! - sums[SOURCE_STORED_WMIN]!;
  const load = bench.on ? total(loadW) : 0;
  return [
    solarUsed + state[DISCHARGED_WMIN]! + sourceUsed - load - state[LOSS_WMIN]!,
    bench.storedWmin +
      state[CHARGED_WMIN]! * bench.chargeEfficiency -
      state[DISCHARGED_WMIN]! / bench.dischargeEfficiency -
      state[STORED_WMIN]!,
    solarUsed < 0 ? solarUsed : 0,
    sourceUsed < 0 ? sourceUsed : 0,
  ];
}

describe('a unit whose circuits run off the source', () => {
  it('passes them through and gives the charger what is left, up to its limit', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [1500, 500], efficiency: 0.9 });
    // 500 and 800 W into the charger, nine tenths of it into the bank
    expect(state[STORED_WMIN]).toBeCloseTo(30_000 + 0.9 * (500 + 800), 9);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(1500 + 500 + 500 + 800, 9);
    expect(sums[CHARGER_LOSS_WMIN]).toBeCloseTo(130, 9);
    expect(state[DISCHARGED_WMIN]).toBe(0);
  });

  it('lets the panels charge first, and curtails what the bank has no room for', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [0, 0], solarW: [900, 1200], chargeLimitW: 1000 });
    expect(sums[SOURCE_STORED_WMIN]).toBeCloseTo(100, 9);
    expect(state[CURTAILED_WMIN]).toBeCloseTo(200, 9);
    expect(state[CHARGED_WMIN]).toBeCloseTo(2000, 9);
  });

  it('charges nothing below the modules’ least temperature, and idles on the source', () => {
    const { state, sums } = stepped(stepPassing, { loadW: [100], idleW: 30, chargeLimitW: 0 });
    expect(state[STORED_WMIN]).toBe(30_000);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(130, 9);
  });

  it('stops before a step that the source cannot carry, its charger set aside', () => {
    const { steps, event } = stepped(stepPassing, { loadW: [1900, 2000, 2001], idleW: 0 });
    expect([steps, event]).toEqual([2, SOURCE_OVERLOAD]);
    expect(stepped(stepPassing, { loadW: [1990], idleW: 30 }).event).toBe(SOURCE_OVERLOAD);
  });

  it('fills the bank to the last bit and reports the level that somebody waits for', () => {
    const full = stepped(stepPassing, { storedWmin: 59_900, loadW: [0], upWmin: 60_000 });
    expect(full.state[STORED_WMIN]).toBe(60_000);
    expect([full.steps, full.event]).toEqual([1, CROSSED]);
    expect(full.sums[FROM_GENERATOR_WMIN]).toBeCloseTo(100, 9);
  });
});

describe('a unit that a source charges while its inverter runs on', () => {
  it('makes up what the panels lack, then charges', () => {
    const { state, sums } = stepped(stepCharging, { loadW: [400], efficiency: 0.8, chargerW: 1000 });
    const loss = 400 * (0.05 + 1e-5 * 400);
    expect(sums[FROM_GENERATOR_WMIN]).toBeCloseTo(1000, 9);
    expect(state[STORED_WMIN]).toBeCloseTo(30_000 + 800 - 400 - loss, 9);
  });

  it('draws from the bank what the source does not give, down to the floor', () => {
    const { state, steps, event } = stepped(stepCharging, {
      loadW: [1500, 1500],
      chargerW: 500,
      storedWmin: 1200,
      floorWmin: 0,
    });
    const need = 1500 + 1500 * (0.05 + 1e-5 * 1500) - 500;
    expect(state[STORED_WMIN]).toBeCloseTo(1200 - need, 9);
    expect([steps, event]).toEqual([1, EMPTY]);
  });

  it('trips on the modules’ limit less what the source gives', () => {
    const at = (chargerW: number) => stepped(stepCharging, { loadW: [2500], chargerW, watch: true }).event;
    expect(at(300)).toBe(BATTERY_LIMIT);
    expect(at(800)).toBe(DONE);
  });

  it('charges a unit that is down', () => {
    const { state } = stepped(stepCharging, { on: false, idleW: 4, loadW: [0, 0], storedWmin: 0 });
    expect(state[STORED_WMIN]).toBeCloseTo(2 * (800 - 4), 9);
  });

  it('without watts is the plain unit, bit for bit', () => {
    const loadW = [300, 900, 0, 2100, 50];
    const solarW = [0, 1500, 700, 0, 60];
    const charged = stepped(stepCharging, { loadW, solarW, sourceW: 0, idleW: 28, watch: true });
    const plain = stepped(
      (parameters, state, _sums, settings, _feed, _watts, _from, ...rest) =>
        stepUnit(parameters, state, settings, ...rest),
      { loadW, solarW, idleW: 28, watch: true },
    );
    expect(Array.from(charged.state)).toEqual(Array.from(plain.state));
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
    watch: fc.boolean(),
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
        expect(result.state[STORED_WMIN]).toBeGreaterThanOrEqual(0);
        expect(result.state[STORED_WMIN]).toBeLessThanOrEqual(60_000);
        expect(Array.from(result.sums).every((sum) => sum >= 0)).toBe(true);
        steps += result.steps;
      }),
      { seed: 7, numRuns: 400 },
    );
    expect(steps).toBeGreaterThan(1000);
  });
});
