/** How a need fared in one run, added up minute by minute. */

export interface NeedOutcome {
  /** When it first failed, minutes from the start; NaN: never. */
  firstMinute: number;
  /** Minutes unmet: without, or past the limit. */
  minutes: number;
  /** The longest of them in a row. */
  longestMinutes: number;
  /** How far: degree-hours past the limit, or litres short; NaN where there is no such thing. */
  depth: number;
  /** Warmest or coldest, °C, or least litres in store; NaN where there is no such thing. */
  extreme: number;
  /** Litres raised by the pumps; NaN for other needs. */
  litresRaised: number;
}

export const NEED_COLUMNS = [
  'firstMinute',
  'minutes',
  'longestMinutes',
  'depth',
  'extreme',
  'litresRaised',
] as const satisfies readonly (keyof NeedOutcome)[];

export function freshOutcome(): NeedOutcome {
  return { firstMinute: NaN, minutes: 0, longestMinutes: 0, depth: NaN, extreme: NaN, litresRaised: NaN };
}

/** Adds a minute of which `unmet` (0…1) was unmet. @returns minutes unmet in a row by now, given those before */
export function tallyMinute(outcome: NeedOutcome, inARow: number, unmet: number): number {
  if (unmet <= 0) return 0;
  outcome.minutes += unmet;
  const row = inARow + unmet;
  if (row > outcome.longestMinutes) outcome.longestMinutes = row;
  return row;
}

/** The need fails in this minute if more than `borne` minutes have now passed and it had not failed before. */
export function noteFailure(outcome: NeedOutcome, minute: number, passed: number, borne: number): void {
  if (passed > borne && Number.isNaN(outcome.firstMinute))
    outcome.firstMinute = minute + 1 - Math.min(1, passed - borne);
}
