/** The course of a thermostat, held to the same minutes one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  followTo,
  isRunning,
  meetPower,
  runMinutes,
  settleThermostat,
  signedC,
  startThermostat,
  wantedMinutes,
} from '../../../packages/sim/src/step/step-thermostat.ts';
import { thermostatParameters } from '../../../packages/sim/src/step/thermostat-parameters.ts';
import {
  createPlace,
  fillPlace,
  NEVER_MINUTE,
  type ThermostatPlace,
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
          followTo(place, state, m);
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

/** The model's step (MODEL.md U9) written out: a minute, or the part of one before power comes or goes. */
function plainly(place: ThermostatPlace, want: ThermostatWant, powerMoves: readonly number[], to: number) {
  const { sign, setC, bandC, limitC } = want;
  const told = { y: sign * want.startC, calling: want.startCalling, ran: 0, held: 0, waited: 0, beyond: 0 };
  let powered = true;
  const live = (minute: number, dt: number) => {
    const around = place.around[Math.floor(minute / 60)]!;
    told.y += (around - told.y) * place.parameters.drift * dt;
    if (told.calling && powered) told.y -= want.pullCPerMinute * dt;
    if (limitC !== undefined && told.y > sign * limitC) told.beyond += dt;
    if (!told.calling) return;
    const share = (around - sign * setC) / place.parameters.depth;
    told.held += powered ? dt : Math.min(1, Math.max(0, share)) * dt;
    if (powered) told.ran += dt;
    else told.waited += dt;
  };
  for (let m = 0; m < to; m++) {
    if (told.calling ? told.y < sign * setC - bandC : told.y > sign * setC + bandC)
      told.calling = !told.calling;
    let since = m;
    for (const move of powerMoves.filter((at) => at >= m && at < m + 1)) {
      live(m, move - since);
      since = move;
      powered = !powered;
    }
    live(m, m + 1 - since);
  }
  return told;
}

describe('a thermostat whose power comes and goes', () => {
  it('runs, wants, waits and warms as its minutes do one by one, also where power moves inside a minute', () => {
    let beyond = 0;
    fc.assert(
      fc.property(
        wants,
        weather,
        fc.array(fc.double({ min: 0, max: 60 * HOURS - 1, noNaN: true }), { maxLength: 9 }),
        ({ dutyFraction, ...rest }, hourC, moves) => {
          const setC = rest.sign > 0 ? 4 : 40;
          const want: ThermostatWant = {
            ...rest,
            circuitIndex: 0,
            applianceIndex: 0,
            setC,
            startC: setC,
            surroundings: 'indoors',
            surroundingsOffsetC: 0,
            pullCPerMinute: 18 / (rest.timeConstantMinutes * dutyFraction),
            runningW: 100,
            startExtraW: 0,
            limitC: setC + rest.sign * (rest.bandC + 1),
          };
          const powerMoves = [...new Set(moves)].sort((a, b) => a - b);
          const place = placeOf(want, hourC);
          const state = startThermostat(want, place);
          powerMoves.forEach((at, k) => meetPower(place, state, at, k % 2 === 1));
          const to = 60 * HOURS - 1;
          const told = plainly(place, want, powerMoves, to);
          expect(Math.abs(runMinutes(place, state, to) - told.ran)).toBeLessThan(1e-6);
          expect(Math.abs(wantedMinutes(place, state, to) - told.held)).toBeLessThan(1e-6);
          expect(Math.abs(signedC(place, state, to) - told.y)).toBeLessThan(1e-6);
          settleThermostat(place, state, to);
          expect(Math.abs(state.beyondMinutes - told.beyond)).toBeLessThan(1e-6);
          expect(Math.abs(state.waitedTooLongMinutes - told.waited)).toBeLessThan(1e-6);
          beyond += state.beyondMinutes;
        },
      ),
      { seed: 8, numRuns: 300 },
    );
    expect(beyond).toBeGreaterThan(1000);
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
