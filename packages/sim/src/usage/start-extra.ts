import type { Appliance } from '../scenario/scenario.ts';

/** How many of an entry start at once: one, or all that a clock starts in the same seconds. */
export function startsTogether({ kind, count }: Pick<Appliance, 'kind' | 'count'>): number {
  return kind === 'scheduled' ? count : 1;
}

/**
 * Watts a start asks for beyond running, never below 0. `startingW` below `runningW`, or left out, asks for none.
 */
export function startExtraOf(appliance: {
  readonly runningW: number;
  readonly startingW?: number | undefined;
}): number {
  return Math.max(0, (appliance.startingW ?? 0) - appliance.runningW);
}
