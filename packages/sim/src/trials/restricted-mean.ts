import type { LifeTable } from './survival.ts';

/**
 * Mean of min(T, until): the area under the curve up to `until`. MODEL.md, Statistics, S5.
 * Klein & Moeschberger 2003, §4.5.
 *
 * @param until in the unit of the table, > 0; no later than the last time watched, past which nothing is known.
 */
export function restrictedMean(table: LifeTable, until: number): { mean: number; standardError: number } {
  const { time, survival, atRisk, events } = table;
  let areaAfter = 0;
  let variance = 0;
  let end = until;
  for (let i = time.length - 1; i >= 0; i -= 1) {
    const start = time[i]!;
    if (start >= until) continue;
    areaAfter += survival[i]! * (end - start);
    end = start;
    const left = atRisk[i]! - events[i]!;
    if (left > 0) variance += (areaAfter * areaAfter * events[i]!) / (atRisk[i]! * left);
  }
  return { mean: areaAfter + end, standardError: Math.sqrt(variance) };
}
