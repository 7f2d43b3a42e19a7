/** One outage as its charts are given it: every minute, who lives there, and which part is looked at. */
import type { DrawTrace, Scenario } from '@rideout/sim';
import { stretchText } from './local-clock.ts';
import type { Look } from './look.ts';

export type Household = Scenario['alternatives'][number]['household'];

/** The part of the outage looked at: minutes from its start, `to` excluded; and the minute pointed at. */
export interface OutageRange {
  readonly from: number;
  readonly to: number;
  readonly at: number | undefined;
}

export interface OutageView extends Look, OutageRange {
  readonly trace: DrawTrace;
  readonly household: Household;
  /** Who or what throws the switches. */
  readonly carriedOutBy: 'person' | 'switch';
  /** Picture width, px. */
  readonly width: number;
  readonly provenance: string;
}

/** A circuit's own name. */
export function circuitTitle(household: Household, id: string): string {
  return household.circuits.find((circuit) => circuit.id === id)?.title ?? id;
}

/** "Unit east (L1)". */
export function unitTitle(household: Household, id: string): string {
  const unit = household.units.find((u) => u.id === id);
  return household.units.length === 1 ? 'The unit' : `Unit ${id}${unit ? ` (${unit.leg})` : ''}`;
}

/** Which part of the outage a chart shows: its axis alone may have room for hours only. */
export function shownText({ trace, from, to, clock }: OutageView): string {
  return `Shown: ${stretchText(trace, from, to, clock)}.`;
}
