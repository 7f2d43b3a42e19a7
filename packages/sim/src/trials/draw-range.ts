/** Which draws there are: 0, 1, 2, … Anything between or below would be streams that nobody else meets. */
import { assertWholeNumber } from './assert-number.ts';

/** @throws RangeError unless it is a whole number of at least 0 */
export function assertDraw(draw: number, name = 'draw'): void {
  assertWholeNumber(draw, name, 0);
}

/** @throws RangeError unless `from` and `to` are whole numbers, 0 ≤ from ≤ to */
export function assertDraws(from: number, to: number): void {
  assertDraw(from, 'from');
  assertDraw(to, 'to');
  if (to < from) throw new RangeError(`to: found ${to}; expected a whole number of at least from, ${from}`);
}
