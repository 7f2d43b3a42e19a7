/** Temperatures around appliances and banks, against the exponential law. MODEL.md U11. */
import { expect, it } from 'vitest';
import { createAmbient, fillAmbient } from '../../../packages/sim/src/step/ambient.ts';

/** Four days at one outdoor temperature, rooms at 20 °C when the grid goes. */
function around(outdoorsC: number, followsFraction: number) {
  const ambient = createAmbient(new Float32Array(4 * 1440).fill(outdoorsC));
  fillAmbient(ambient, 20, followsFraction);
  return ambient;
}

it('rooms drift to their share of the way outdoors with a lag of 24 hours', () => {
  const { indoors } = around(-10, 0.3);
  for (const hours of [1, 6, 24, 72])
    expect(Math.abs(indoors[60 * hours - 1]! - (20 - 9 * (1 - Math.exp(-hours / 24))))).toBeLessThan(0.005);
});

it('a garage begins and stays halfway between rooms and outdoors', () => {
  const { garage } = around(-10, 0);
  expect(garage[0]).toBeCloseTo(5, 6);
  expect(garage.at(-1)).toBeCloseTo(5, 6);
});

it('a garage follows a change outdoors halfway, with a lag of 6 hours', () => {
  const ambient = createAmbient(new Float32Array(2 * 1440).fill(-10).fill(10, 1440));
  fillAmbient(ambient, 20, 0);
  for (const hours of [1, 6, 18])
    expect(Math.abs(ambient.garage[1440 + 60 * hours - 1]! - (15 - 10 * Math.exp(-hours / 6)))).toBeLessThan(
      0.01,
    );
});
