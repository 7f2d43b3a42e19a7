/** No unit gives more than it bears, and no bank more than its modules may. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy } from '../../packages/sim/src/index.ts';
import type { Scenario } from '../../packages/sim/src/index.ts';
import { traceDraw, type DrawTrace } from '../../packages/sim/src/trials/trace-draw.ts';
import { REPEATABLE, SEED } from './every-minute.ts';
import { randomScenario } from './random-scenario.ts';

const RUNS = 80;
const ROUNDING_W = 1e-4;

type Look = (trace: DrawTrace, scenario: Scenario) => void;

/** Traces the first strategy of random households and returns how many minutes were looked at. */
function everyTrace(sources: boolean, look: Look): number {
  let minutes = 0;
  fc.assert(
    fc.property(randomScenario({ horizonHours: [3, 30], sources }), (scenario) => {
      const trace = traceDraw(prepareStudy(scenario, { seed: SEED }), {
        draw: 2,
        alternative: 0,
        strategy: 0,
      });
      look(trace, scenario);
      minutes += trace.minutes;
    }),
    { ...REPEATABLE, numRuns: RUNS },
  );
  return minutes;
}

/** Minutes, even in part, in which a source passes through the unit: its circuits then go past its inverter. */
function passingMinutes({ minutes, sources }: DrawTrace, scenario: Scenario, unitId: string): Uint8Array {
  const generator = scenario.alternatives[0]!.household.sources?.generator;
  const passes = {
    grid: true,
    generator: generator?.passesThrough === true && (generator.feeds ?? [unitId]).includes(unitId),
    vehicle: false,
  };
  const passing = new Uint8Array(minutes);
  for (const { id, onMinutes } of sources)
    if (passes[id]) onMinutes.forEach((share, m) => (passing[m] = passing[m] === 1 || share > 0 ? 1 : 0));
  return passing;
}

describe.each([
  ['in any household without sources', false],
  ['in any household with sources', true],
])('%s', (_, hasSources) => {
  it('no unit is above its continuous rating for more minutes in a row than it bears', () => {
    let overloaded = 0;
    const minutes = everyTrace(hasSources, (trace, scenario) => {
      scenario.alternatives[0]!.household.units.forEach(({ id, inverter }, u) => {
        const passing = passingMinutes(trace, scenario, id);
        let inARow = 0;
        trace.units[u]!.loadW.forEach((w, m) => {
          inARow = passing[m] === 0 && w > inverter.continuousW + ROUNDING_W ? inARow + 1 : 0;
          if (inARow > 0) overloaded++;
          if (inARow > inverter.overloadMinutes)
            throw new Error(`minute ${m}: unit ${u} at ${w} W for ${inARow} minutes`);
        });
      });
    });
    expect(minutes).toBeGreaterThan(30_000);
    expect(overloaded).toBeGreaterThan(0);
  });

  it('no bank is charged or drawn faster than its modules may, nor charged in the cold', () => {
    let charging = 0;
    const minutes = everyTrace(hasSources, (trace, scenario) => {
      scenario.alternatives[0]!.household.units.forEach(({ battery }, u) => {
        const most = {
          charge: battery.modules * battery.module.maxChargeW,
          draw: battery.modules * battery.module.maxDischargeW,
        };
        const { batteryW, solarStoredW } = trace.units[u]!;
        batteryW.forEach((w, m) => {
          if (w > 0) charging++;
          const sunW = solarStoredW[m]!;
          if (Math.max(w, sunW) > most.charge + ROUNDING_W)
            throw new Error(`minute ${m}: charged at ${w} W, ${sunW} W of it sun`);
          if (-w > most.draw + ROUNDING_W) throw new Error(`minute ${m}: drawn at ${-w} W`);
          const hourStartC = trace.dryBulbC[m - (m % 60)]!;
          const isTooCold = battery.place === 'outdoors' && hourStartC < battery.minChargeC;
          if (isTooCold && (sunW > 0 || w > ROUNDING_W))
            throw new Error(`minute ${m}: charged at ${hourStartC} °C`);
        });
      });
    });
    expect(minutes).toBeGreaterThan(30_000);
    expect(charging).toBeGreaterThan(1000);
  });

  it('no circuit is served more than it wants, and a thermostat’s temperature stays a temperature', () => {
    let temperatures = 0;
    everyTrace(hasSources, (trace) => {
      for (const { servedW, wantedW, temperatureC } of trace.circuits) {
        for (let m = 0; m < trace.minutes; m++) {
          if (servedW[m]! > wantedW[m]! + ROUNDING_W)
            throw new Error(`minute ${m}: served ${servedW[m]} of ${wantedW[m]}`);
          if (temperatureC === undefined) continue;
          if (!(temperatureC[m]! > -70 && temperatureC[m]! < 70))
            throw new Error(`minute ${m}: ${temperatureC[m]} °C`);
          temperatures++;
        }
      }
    });
    expect(temperatures).toBeGreaterThan(10_000);
  });
});

describe('of its sources', () => {
  it('none gives a household more than it has, nor a unit more than its circuits and its charger take', () => {
    const fed = { grid: 0, generator: 0, vehicle: 0 };
    everyTrace(true, ({ units: traced, sources }, scenario) => {
      const { units, sources: own } = scenario.alternatives[0]!.household;
      const mostW = {
        grid: Infinity,
        generator: own!.generator!.ratedW,
        vehicle: own!.vehicle?.outletW ?? 0,
      };
      for (const { id, inW, onMinutes } of sources) {
        inW.forEach((w, m) => {
          if (w > 0) fed[id]++;
          if (w > 0 && !(w <= mostW[id] * onMinutes[m]! + ROUNDING_W))
            throw new Error(`minute ${m}: ${w} W from the ${id}`);
        });
      }
      units.forEach(({ id, charger }, u) => {
        const { sourceInW, loadW, inverterLossW } = traced[u]!;
        const chargersW = Math.max(charger!.maxW, own!.vehicle?.unit === id ? mostW.vehicle : 0);
        sourceInW!.forEach((w, m) => {
          if (w > loadW[m]! + inverterLossW[m]! + chargersW + ROUNDING_W)
            throw new Error(`minute ${m}: ${w} W into unit ${u}`);
        });
      });
    });
    for (const minutes of Object.values(fed)) expect(minutes).toBeGreaterThan(500);
  });
});
