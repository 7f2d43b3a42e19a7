/** How long a bank lasts, worked out on paper: the formulas that the minute loop is held to. */

/** What turns AC watts into watts drawn from a bank. */
export interface Losses {
  readonly idleW: number;
  readonly lossPerW: number;
  readonly lossPerW2: number;
  readonly dischargeEfficiency: number;
}

export const NO_LOSSES: Losses = { idleW: 0, lossPerW: 0, lossPerW2: 0, dischargeEfficiency: 1 };

/** Watts drawn from the bank's store while the unit carries `loadW`. */
export function drainW(loadW: number, { idleW, lossPerW, lossPerW2, dischargeEfficiency }: Losses): number {
  return (loadW + idleW + lossPerW * loadW + lossPerW2 * loadW * loadW) / dischargeEfficiency;
}

/** Hours from a store of `usableWh` at constant load. */
export function constantHours(usableWh: number, loadW: number, losses: Losses): number {
  return usableWh / drainW(loadW, losses);
}

/** A stretch of a pattern: how long, and the watts drawn from the store; negative while the sun fills it. */
export type Stretch = readonly [hours: number, drawnW: number];

/** Hours from a store whose stretches come over and over; they draw more than they fill, and never to the brim. */
export function periodicHours(usableWh: number, stretches: readonly Stretch[]): number {
  let left = usableWh;
  let at = 0;
  for (;;) {
    for (const [hours, watts] of stretches) {
      if (left < hours * watts) return at + left / watts;
      left -= hours * watts;
      at += hours;
    }
  }
}

/** Two banks under one 240 V load and a 120 V load each; the 240 V load goes when the first bank does. */
export function pairHours(
  usableWh: readonly [number, number],
  legW: readonly [number, number],
  bothW: number,
  losses: Losses,
): { readonly hours: readonly [number, number]; readonly first: 0 | 1 } {
  const together = [0, 1].map((u) => constantHours(usableWh[u]!, legW[u]! + bothW / 2, losses));
  const first = together[0]! <= together[1]! ? 0 : 1;
  const second = 1 - first;
  const firstHours = together[first]!;
  const left = usableWh[second]! - firstHours * drainW(legW[second]! + bothW / 2, losses);
  const secondHours = firstHours + constantHours(left, legW[second]!, losses);
  return { hours: first === 0 ? [firstHours, secondHours] : [secondHours, firstHours], first };
}
