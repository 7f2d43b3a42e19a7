/** Reading a survival curve, which holds each value until its next step. */
import type { SurvivalCurve } from '@rideout/sim';

/** Share still running on `day`. */
export function survivalAt(curve: SurvivalCurve, day: number): number {
  let share = 1;
  for (let i = 0; i < curve.day.length && curve.day[i]! <= day; i++) share = curve.survival[i]!;
  return share;
}

/** The last day worth drawing: when fewer than one in fifty is left on every curve, and no later than the horizon. */
export function drawnUntilDay(curves: readonly SurvivalCurve[], horizonDays: number): number {
  const ends = curves.map((curve) => {
    const gone = curve.survival.findIndex((share) => share < 0.02);
    return gone < 0 ? horizonDays : curve.day[gone]!;
  });
  const last = Math.max(0, ...ends) * 1.08;
  const rounded = last > 3 ? Math.ceil(last) : Math.ceil(last * 4) / 4;
  return Math.min(horizonDays, Math.max(rounded, 0.25));
}
