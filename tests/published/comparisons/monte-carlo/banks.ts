/** Banks whose nights are the states of a process. */
import type { DayBank } from './day-bank.ts';

/** Stores are this much short of whole loads, so that the day a store would come to exactly nothing is the day it ends. */
const SHORT = 0.01;

/** A store of `size` days that spills at its brim: what a bright day brings comes before the evening takes its load. */
export const ceilingBank = (size: number, start: number, days: number): DayBank => ({
  capacity: size + 1 - SHORT,
  start: start - SHORT,
  loadHours: '18:00-22:00',
  days,
});

/** A bank that any bright day fills; it holds out `run - 1` dull evenings after one, and not another. */
export const autonomyBank = (run: number, days: number): DayBank => ({
  capacity: run + 1 - SHORT,
  start: run - SHORT,
  loadHours: '18:00-22:00',
  days,
});
