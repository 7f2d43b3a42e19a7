/** A thermostat from switching to switching, held to the same minutes one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { startThermostat, switchUntil } from '../../../packages/sim/src/step/step-thermostat.ts';
import { isRunning, signedC } from '../../../packages/sim/src/step/thermostat-course.ts';
import { thermostatParameters } from '../../../packages/sim/src/step/thermostat-state.ts';
import {
  createPlace,
  fillPlace,
  NEVER_MINUTE,
} from '../../../packages/sim/src/step/thermostat-surroundings.ts';
import type { ThermostatWant } from '../../../packages/sim/src/usage/usage-draw.ts';

const HOURS = 60;

function placeOf(want: ThermostatWant, hourC: readonly number[]) {
  const place = createPlace(thermostatParameters(want, 0), hourC.length);
  fillPlace(
    place,
    Float32Array.from({ length: 60 * hourC.length }, (_, m) => hourC[Math.floor(m / 60)]!),
  );
  return place;
}

const wants = fc.record({
  sign: fc.constantFrom(1 as const, -1 as const),
  timeConstantMinutes: fc.integer({ min: 60, max: 4000 }),
  bandC: fc.double({ min: 0.3, max: 3, noNaN: true }),
  dutyFraction: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
  startCalling: fc.boolean(),
});
const weather = fc.array(fc.double({ min: 12, max: 34, noNaN: true }), {
  minLength: HOURS,
  maxLength: HOURS,
});

describe('the course of a thermostat', () => {
  it('is that of the minute recursion, through surroundings that move', () => {
    let compared = 0;
    fc.assert(
      fc.property(wants, weather, ({ dutyFraction, sign, ...rest }, hourC) => {
        const away = 18;
        const want: ThermostatWant = {
          ...rest,
          sign,
          circuitIndex: 0,
          applianceIndex: 0,
          setC: sign > 0 ? 4 : 40,
          startC: sign > 0 ? 4 : 40,
          surroundings: 'indoors',
          surroundingsOffsetC: 0,
          pullCPerMinute: away / (rest.timeConstantMinutes * dutyFraction),
          runningW: 100,
          startExtraW: 0,
          limitC: undefined,
        };
        const place = placeOf(want, hourC);
        const state = startThermostat(want, place);
        let y = sign * want.startC;
        let calling = want.startCalling;
        for (let m = 0; m < 60 * HOURS; m++) {
          switchUntil(place, state, m + 1);
          // a temperature within rounding of a threshold may be told either side of it
          const near = Math.min(
            Math.abs(y - sign * want.setC - want.bandC),
            Math.abs(y - sign * want.setC + want.bandC),
          );
          if (near < 1e-9) return;
          if (calling ? y < sign * want.setC - want.bandC : y > sign * want.setC + want.bandC)
            calling = !calling;
          expect(isRunning(state)).toBe(calling);
          expect(signedC(place, state, m)).toBeCloseTo(y, 9);
          y +=
            (place.around[Math.floor(m / 60)]! - y) / want.timeConstantMinutes -
            (calling ? want.pullCPerMinute : 0);
          compared++;
        }
      }),
      { seed: 7, numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(100_000);
  });
});

describe('surroundings', () => {
  it('are taken anew only when they have moved far enough, and it is known when next', () => {
    const want = {
      sign: 1,
      setC: 4,
      bandC: 1,
      timeConstantMinutes: 600,
      pullCPerMinute: 0.1,
      surroundingsOffsetC: 2,
    };
    const place = placeOf(want as ThermostatWant, [20, 20.03, 20.04, 20.5, 20.5]);
    const shown = Array.from(place.around, (c) => Number(c.toFixed(4)));
    expect(shown).toEqual([22, 22, 22, 22.5, 22.5]);
    expect(Array.from(place.movesAt)).toEqual([180, 180, 180, NEVER_MINUTE, NEVER_MINUTE]);
  });
});
