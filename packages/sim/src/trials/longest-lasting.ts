import type { StrategySummary } from './study-summary.ts';

/**
 * The strategy to name first: the one whose nine-in-ten days are longest; among equals the longer median, then the
 * larger share still running at the horizon, then the earlier in the list. Hidden by the horizon counts as longest.
 *
 * @throws RangeError when the list is empty.
 */
export function longestLasting(strategies: readonly StrategySummary[]): StrategySummary {
  const [first, ...others] = strategies;
  if (!first) throw new RangeError('no strategies to choose from');
  return others.reduce((best, other) => (lastsLonger(other, best) ? other : best), first);
}

function lastsLonger(a: StrategySummary, b: StrategySummary): boolean {
  const marks = (s: StrategySummary) => [
    s.nineInTenDays.value ?? Infinity,
    s.medianDays.value ?? Infinity,
    s.censoredDraws / s.draws,
  ];
  const [ofA, ofB] = [marks(a), marks(b)];
  const decides = ofA.findIndex((mark, i) => mark !== ofB[i]);
  return decides >= 0 && ofA[decides]! > ofB[decides]!;
}
