/** Numbers that a caller hands in, refused by name before anything is worked out with them. */

/** @throws RangeError unless it is a whole number of at least `least` */
export function assertWholeNumber(value: number, name: string, least: number): void {
  if (!Number.isSafeInteger(value) || value < least)
    throw new RangeError(`${name}: found ${String(value)}; expected a whole number of at least ${least}`);
}

/** @throws RangeError unless it is a finite number above 0 */
export function assertAboveZero(value: number, name: string): void {
  if (!Number.isFinite(value) || value <= 0)
    throw new RangeError(`${name}: found ${String(value)}; expected a number above 0`);
}
