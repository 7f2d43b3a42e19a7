/** What monthly normals ask for that the weather generator cannot make. MODEL.md §Weather, W1. */
import type { MonthlyNormals } from '../scenario/scenario.ts';
import { planNormals } from './normals-plan.ts';

/** Closer than normals of a few years are known. */
const CLOSE = 0.02;

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** In sentences; none where all that is given comes out. */
export function normalsNotes(monthly: MonthlyNormals): string[] {
  const { clearness, clearnessLag1 } = planNormals(monthly);
  return [
    ...note('clearnessLag1', monthly.clearnessLag1, clearnessLag1),
    ...note('clearnessSd', monthly.clearnessSd, clearness.spreads),
  ];
}

function note(key: string, given: readonly number[] | undefined, made: readonly number[]): string[] {
  const missed = (given ?? []).flatMap((value, m) => (Math.abs(value - made[m]!) > CLOSE ? m : []));
  if (missed.length === 0) return [];
  const most = missed.reduce((a, b) =>
    Math.abs(given![b]! - made[b]!) > Math.abs(given![a]! - made[a]!) ? b : a,
  );
  const others = missed.length === 1 ? '' : `, and ${missed.length - 1} months more like it`;
  return [
    `weather.monthly.${key}: ${given![most]!} in ${MONTHS[most]!} is beyond what the generator makes of such a month; about ${made[most]!.toFixed(2)} stands in${others}.`,
  ];
}
