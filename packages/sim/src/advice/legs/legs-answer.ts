/** Which circuit on which leg, as told. */
import type { Estimate, Provenance } from '../../trials/study-summary.ts';
import type { Told } from '../told.ts';

/** Which circuit on which leg: the panel as it is, the best that was found, and how sure that is. */
export interface LegsAnswer {
  /** Seed and draws as asked for. Gains are from draws of `freshSeed`; choice and bound from `choosingDraws` of the seed. */
  readonly provenance: Provenance;
  readonly freshSeed: string;
  readonly horizonDays: number;
  readonly alternativeTitle: string;
  readonly strategyId: string;
  readonly strategyTitle: string;
  readonly present: LegsStand;
  readonly best: LegsStand;
  /** Best less present, on the same fresh outages. */
  readonly gainDays: Estimate;
  readonly gainMeanDays: Estimate;
  readonly gainTrips: Estimate;
  readonly told: Told;
  /** From the panel as it is to the best found. */
  readonly moves: readonly CircuitMove[];
  readonly search: LegsSearch;
  readonly bound: LegsBound | null;
  /** The panel with the moves made, or as it is when they gain nothing that is told from zero. */
  readonly legs: readonly LegSchedule[];
  /** 240 V circuits. */
  readonly across: readonly ScheduledCircuit[];
}

/** How long the household lasts under one assignment. */
export interface LegsStand {
  /** Days that nine outages in ten reach; null = at least the horizon. */
  readonly days: Estimate;
  readonly meanDays: number;
  readonly tripsPerOutage: number;
}

/** A circuit that changes its leg. */
export interface CircuitMove {
  readonly id: string;
  readonly title: string;
  readonly from: 'L1' | 'L2';
  readonly to: 'L1' | 'L2';
}

/** How the best assignment was looked for. */
export interface LegsSearch {
  readonly movableCircuits: number;
  /** Two to that power, as a number: exact up to 53 circuits. */
  readonly assignments: number;
  readonly simulated: number;
  /** How the ones to simulate were found. */
  readonly how: 'every one simulated' | 'best guesses of all' | 'best guesses of a search';
  /** On the choosing draws, the present's and the best's days. */
  readonly presentDays: number | null;
  readonly bestDays: number | null;
}

/** How far any other assignment could be ahead. */
export interface LegsBound {
  /** On the choosing draws no assignment reaches more days in nine of ten; null = the horizon hides it. */
  readonly days: number | null;
  readonly kind: 'placings' | 'pooled';
  /** Share of all assignments that are shown to last no longer than the best found. */
  readonly ruledOutFraction: number;
  /** Simulated draws that outlasted the bound: it rests on assumptions, and this is the check on them. */
  readonly drawsBeyond: number;
  readonly drawsChecked: number;
}

/** One leg of the panel: its circuits, and the watts on it. */
export interface LegSchedule {
  readonly leg: 'L1' | 'L2';
  readonly unitId: string;
  readonly circuits: readonly ScheduledCircuit[];
  /** All nameplates, and what runs by itself, half of the 240 V circuits included. */
  readonly nameplateW: number;
  readonly unattendedW: number;
  /** What unit and breaker carry for hours. */
  readonly continuousW: number;
}

/** A circuit in its place on the panel. */
export interface ScheduledCircuit {
  readonly id: string;
  readonly title: string;
  readonly tier: number;
  readonly breakerA: number | null;
  readonly nameplateW: number;
  readonly moved: boolean;
  /** Why it may not move, if so. */
  readonly kept: 'fixed' | 'shared neutral' | '240 V' | null;
}
