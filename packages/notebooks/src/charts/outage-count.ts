/** How many outages figures rest on, in words, and how many are too few. */
import { counted } from './counted.ts';

/**
 * Fewer cannot tell what nine in ten reach: of 28 or less, the chance that none is of the worst tenth is above 5 %
 * (0.9²⁸ = 0.052).
 */
const FEWEST_THAT_TELL = 30;

/** "1 simulated outage", "400 simulated outages". */
export function simulatedOutages(count: number): string {
  return counted(count, 'simulated outage');
}

export function tooFewToTell(count: number): boolean {
  return count < FEWEST_THAT_TELL;
}

/** The end of a chart's finding, which goes with saved pictures; empty where there are enough. */
export function tooFewEnding(count: number): string {
  if (!tooFewToTell(count)) return '';
  return `; ${simulatedOutages(count)} ${count === 1 ? 'is' : 'are'} too few to tell`;
}

/** A sentence to follow others, with the space before it; empty where there are enough. */
export function tooFewNote(count: number): string {
  return tooFewToTell(count)
    ? ` So few outages cannot tell what nine in ten reach: simulate ${FEWEST_THAT_TELL} or more.`
    : '';
}
