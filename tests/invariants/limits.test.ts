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

/** Traces the first strategy of random households and returns how many minutes were looked at. */
function everyTrace(look: (trace: DrawTrace, scenario: Scenario) => void): number {
  let minutes = 0;
  fc.assert(
    fc.property(randomScenario({ horizonHours: [3, 30] }), (scenario) => {
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

describe('in any household', () => {
  it('no unit is above its continuous rating for more minutes in a row than it bears', () => {
    let overloaded = 0;
    const minutes = everyTrace((trace, scenario) => {
      scenario.alternatives[0]!.household.units.forEach(({ inverter }, u) => {
        let inARow = 0;
        trace.units[u]!.loadW.forEach((w, m) => {
          inARow = w > inverter.continuousW + ROUNDING_W ? inARow + 1 : 0;
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
    const minutes = everyTrace((trace, scenario) => {
      scenario.alternatives[0]!.household.units.forEach(({ battery }, u) => {
        const most = {
          charge: battery.modules * battery.module.maxChargeW,
          draw: battery.modules * battery.module.maxDischargeW,
        };
        const { batteryW, solarStoredW } = trace.units[u]!;
        batteryW.forEach((w, m) => {
          if (w > 0) charging++;
          if (solarStoredW[m]! > most.charge + ROUNDING_W)
            throw new Error(`minute ${m}: charged at ${solarStoredW[m]} W`);
          if (-w > most.draw + ROUNDING_W) throw new Error(`minute ${m}: drawn at ${-w} W`);
          const hourStartC = trace.dryBulbC[m - (m % 60)]!;
          if (battery.place === 'outdoors' && hourStartC < battery.minChargeC && solarStoredW[m]! > 0) {
            throw new Error(`minute ${m}: charged at ${hourStartC} °C`);
          }
        });
      });
    });
    expect(minutes).toBeGreaterThan(30_000);
    expect(charging).toBeGreaterThan(1000);
  });

  it('no circuit is served more than it wants, and a thermostat’s temperature stays a temperature', () => {
    let temperatures = 0;
    everyTrace((trace) => {
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
