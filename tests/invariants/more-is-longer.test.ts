/**
 * When more is never worse, and when it is.
 *
 * Up to the first moment at which any unit stops, what circuits want does not depend on batteries or panels. So with
 * every circuit on under no rule, no trip possible, banks full at the start and no self-discharge, the energy above
 * the floor is at every moment at least as large with more modules, more sun or less load, and the first stop comes no
 * earlier. The runtime is that first stop only when each unit carries something essential that is always wanted and
 * has no grace. Each of these conditions is needed: the second part shows what happens without.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../packages/sim/src/index.ts';
import { live } from '../units/step/tiny-house.ts';
import { REPEATABLE, SEED } from './every-minute.ts';
import { randomSpec, resolve } from './random-scenario.ts';

const RUNS = 40;

/** Random households that meet the conditions. */
const monotone = randomSpec({ neverTrips: true, rules: [], horizonHours: [12, 72] }).map(
  (spec): ScenarioSpec => {
    const essential = spec.units.map(({ leg }) => ({
      id: `essential-${leg.toLowerCase()}`,
      leg,
      tier: 1,
      appliances: [{ kind: 'steady' as const, runningW: 40 }],
    }));
    const units = spec.units.map((unit) => ({
      ...unit,
      battery: {
        ...unit.battery,
        startFraction: 1,
        module: { ...unit.battery.module, selfDischargePerMonthFraction: 0 },
      },
    }));
    return { ...spec, units, circuits: [...essential, ...spec.circuits] };
  },
);

function runtimes(spec: ScenarioSpec): number[] {
  const { columns } = runShard(prepareStudy(resolve(spec), { seed: SEED }), 0, 2);
  return Array.from(columns['runtimeMinutes']!);
}

function neverShorter(change: (spec: ScenarioSpec) => ScenarioSpec): {
  readonly compared: number;
  readonly longer: number;
} {
  let compared = 0;
  let longer = 0;
  fc.assert(
    fc.property(monotone, (spec) => {
      const before = runtimes(spec);
      runtimes(change(spec)).forEach((minutes, row) => {
        if (!(minutes >= before[row]! - 1e-6))
          throw new Error(`${minutes} minutes instead of ${before[row]}`);
        compared++;
        if (minutes > before[row]! + 1e-6) longer++;
      });
    }),
    { ...REPEATABLE, numRuns: RUNS },
  );
  return { compared, longer };
}

describe('with everything on, no trips, full banks, no self-discharge and an essential load on every unit', () => {
  it('more modules never shorten the runtime', () => {
    const { compared, longer } = neverShorter((spec) => ({
      ...spec,
      units: spec.units.map((unit) => ({
        ...unit,
        battery: { ...unit.battery, modules: unit.battery.modules! + 1 },
      })),
    }));
    expect(compared).toBeGreaterThan(RUNS);
    expect(longer).toBeGreaterThan(compared / 4);
  });

  it('more sun never shortens it', () => {
    const { compared, longer } = neverShorter((spec) => ({
      ...spec,
      units: spec.units.map((unit) => {
        const more = { peakW: 900, tiltDeg: 20, azimuthDeg: 180 };
        return {
          ...unit,
          solar: {
            inputLimitW: 2 * (unit.solar?.inputLimitW ?? 500),
            arrays: [...(unit.solar?.arrays ?? []), more],
          },
        };
      }),
    }));
    expect(compared).toBeGreaterThan(RUNS);
    expect(longer).toBeGreaterThan(compared / 10);
  });

  it('less load never shortens it', () => {
    const { compared, longer } = neverShorter((spec) => ({ ...spec, circuits: spec.circuits.slice(0, -1) }));
    expect(compared).toBeGreaterThan(RUNS);
    expect(longer).toBeGreaterThan(compared / 10);
  });
});

describe('under the same conditions, with a 240 V generator that feeds every unit', () => {
  const withGenerator = (spec: ScenarioSpec, cansL: number): ScenarioSpec => ({
    ...spec,
    units: spec.units.map((unit) => ({ ...unit, charger: { maxW: 1200 } })),
    sources: {
      generator: {
        ratedW: 12_000,
        surgeW: 100_000,
        volts: 240,
        tankL: 1,
        cansL,
        starts: 'automatic',
        run: { by: 'charge', startBelowFraction: 0.6, stopAboveFraction: 0.95 },
      },
    },
  });

  it('more fuel in the cans never shortens the runtime: until the cans are empty nothing differs', () => {
    let compared = 0;
    let longer = 0;
    fc.assert(
      fc.property(monotone, (spec) => {
        const before = runtimes(withGenerator(spec, 1));
        runtimes(withGenerator(spec, 12)).forEach((minutes, row) => {
          if (!(minutes >= before[row]! - 1e-6))
            throw new Error(`${minutes} minutes instead of ${before[row]}`);
          compared++;
          if (minutes > before[row]! + 1e-6) longer++;
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(RUNS);
    expect(longer).toBeGreaterThan(compared / 10);
  });
});

describe('without those conditions more can be worse', () => {
  const runtime = (house: Parameters<typeof live>[0]) => live(house).row['runtimeMinutes']!;

  it('because of hysteresis and an hourly look: three modules are still above the level when two are below it', () => {
    const withModules = (modules: number) =>
      runtime({
        units: [{ capacityWh: 610, battery: { modules } }],
        circuits: { talk: { watts: 10 }, comfort: { watts: 900, tier: 3 } },
        carriedOutBy: 'person',
        person: { looksEveryMinutes: 60 },
        rules: [
          { by: 'charge', circuits: { tiers: [3] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.9 },
        ],
      });
    // two: 310 of 1,220 Wh at the first look, comfort goes, 31 h of talk; three: 920 of 1,830 Wh, and 10 Wh an hour later
    expect(withModules(2)).toBeCloseTo(60 + (310 / 10) * 60, 6);
    expect(withModules(3)).toBeCloseTo(120 + (10 / 10) * 60, 6);
  });

  it('because of trips: one module trips on its discharge limit, and the person leaves comfort off', () => {
    const withModules = (modules: number) =>
      runtime({
        units: [{ capacityWh: 1000, battery: { modules }, module: { maxDischargeW: 500 } }],
        circuits: { talk: { watts: 100, graceMinutes: 30 }, comfort: { watts: 500, tier: 5 } },
        person: { tripReactionMinutes: 10, afterTripHoldMinutes: 1440 },
      });
    expect(withModules(1)).toBeCloseTo(10 + 600 + 30, 6);
    expect(withModules(2)).toBeCloseTo(200 + 30, 6);
  });

  it('because of the restart level: a larger bank must take in more before it comes back', () => {
    // an hour of sun every seven: one module is dark for less than its grace each time, two run on and then wait
    const withModules = (modules: number) =>
      live({
        units: [{ capacityWh: 1000, battery: { modules, restartFraction: 0.5 } }],
        circuits: { talk: { watts: 100, graceMinutes: 120 } },
        solarW: (_, m) => (m % 420 < 60 ? 600 : 0),
        hours: 240,
      }).row;
    expect(withModules(1)['censored']).toBe(1);
    expect(withModules(2)['censored']).toBe(0);
  });

  it('because a unit that is dark for a while saves what comfort would have used', () => {
    const withComfort = (watts: number) =>
      live({
        units: [{ capacityWh: 1000, battery: { restartFraction: 0.1 } }],
        circuits: {
          essential: { watts: (m) => (m >= 420 && m < 480 ? 240 : 0) },
          comfort: { watts: (m) => (m < 400 ? watts : 0), tier: 5 },
        },
        solarW: (_, m) => (m >= 360 && m < 400 ? 500 : 0),
        hours: 8,
      }).row;
    // 170 W: empty at 05:53, back at 06:13, 256 Wh at 06:40; 165 W: never quite empty, and 233 Wh at 06:40
    expect(withComfort(170)['censored']).toBe(1);
    expect(withComfort(165)['censored']).toBe(0);
  });

  it('because a unit that stops takes 240 V with it, which spares the other', () => {
    const withModules = (modules: number) =>
      runtime({
        units: [{ capacityWh: 1000 }, { capacityWh: 300, battery: { modules } }],
        circuits: {
          talk: { watts: 50, leg: 'L1' },
          fan: { watts: 100, leg: 'L2', tier: 5 },
          heater: { watts: (m) => (m < 200 ? 0 : 2000), leg: 'both', tier: 4 },
        },
      });
    // one module on the west: empty at 180, the heater never runs; three: the heater runs at 200
    expect(withModules(1)).toBeCloseTo(1200, 6);
    expect(withModules(3)).toBeLessThan(1000);
  });
});
