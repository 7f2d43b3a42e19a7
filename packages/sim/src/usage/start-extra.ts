/**
 * Watts a start asks for beyond running, never below 0. `startingW` below `runningW`, or left out, asks for none.
 */
export function startExtraOf(appliance: {
  readonly runningW: number;
  readonly startingW?: number | undefined;
}): number {
  return Math.max(0, (appliance.startingW ?? 0) - appliance.runningW);
}
