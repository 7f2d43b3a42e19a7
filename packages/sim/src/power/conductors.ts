/** What copper wires and cords may carry, and which breaker may stand before them. MODEL.md §23. */
import type { Awg } from '../scenario/schema-wiring.ts';

/** What the terminals at a wire's ends are listed for, °C. */
export type TerminalC = 60 | 75;

interface Conductor {
  /** Cross-section, circular mils. */
  readonly circularMils: number;
  /** Ampacity at 60 °C and 75 °C, A; undefined where the table has no row. */
  readonly at60A?: number;
  readonly at75A?: number;
  /** Ampacity of a flexible cord with two wires carrying current, A. */
  readonly cordA?: number;
  /** Largest breaker whatever the ampacity, A. */
  readonly smallWireA?: number;
}

/**
 * Circular mils: NEC Chapter 9, Table 8. Ampacity: NEC 2023 Table 310.16, copper, at most three wires carrying current,
 * 30 °C around them. Cords: NEC Table 400.5(A)(1), two wires carrying current; 18 to 10 AWG read, larger ones from
 * memory. Small wires: NEC 240.4(D).
 */
const CONDUCTORS: ReadonlyMap<Awg, Conductor> = new Map<Awg, Conductor>([
  [18, { circularMils: 1620, cordA: 10, smallWireA: 7 }],
  [16, { circularMils: 2580, cordA: 13, smallWireA: 10 }],
  [14, { circularMils: 4110, at60A: 15, at75A: 20, cordA: 18, smallWireA: 15 }],
  [12, { circularMils: 6530, at60A: 20, at75A: 25, cordA: 25, smallWireA: 20 }],
  [10, { circularMils: 10380, at60A: 30, at75A: 35, cordA: 30, smallWireA: 30 }],
  [8, { circularMils: 16510, at60A: 40, at75A: 50, cordA: 40 }],
  [6, { circularMils: 26240, at60A: 55, at75A: 65, cordA: 55 }],
  [4, { circularMils: 41740, at60A: 70, at75A: 85, cordA: 70 }],
  [3, { circularMils: 52620, at60A: 85, at75A: 100, cordA: 82 }],
  [2, { circularMils: 66360, at60A: 95, at75A: 115, cordA: 95 }],
  [1, { circularMils: 83690, at60A: 110, at75A: 130 }],
  ['1/0', { circularMils: 105600, at60A: 125, at75A: 150 }],
  ['2/0', { circularMils: 133100, at60A: 145, at75A: 175 }],
  ['3/0', { circularMils: 167800, at60A: 165, at75A: 200 }],
  ['4/0', { circularMils: 211600, at60A: 195, at75A: 230 }],
]);

/** NEC 2023 240.6(A), up to what a household meets, A. */
const STANDARD_BREAKERS_A = [
  10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
] as const;

export function circularMils(awg: Awg): number {
  return CONDUCTORS.get(awg)!.circularMils;
}

/** A; undefined for sizes that the table of building wire does not hold (18 and 16 AWG). */
export function ampacityA(awg: Awg, terminalC: TerminalC): number | undefined {
  const { at60A, at75A } = CONDUCTORS.get(awg)!;
  return terminalC === 60 ? at60A : at75A;
}

/** A; undefined for sizes that the table of cords does not hold. */
export function cordAmpacityA(awg: Awg): number | undefined {
  return CONDUCTORS.get(awg)!.cordA;
}

/** The smallest standard breaker of at least `amps`; undefined above 250 A. */
export function nextStandardA(amps: number): number | undefined {
  return STANDARD_BREAKERS_A.find((size) => size >= amps);
}

/**
 * The largest breaker that may stand before a fixed copper wire, A: its ampacity, or the next standard size above where
 * there is no such breaker (NEC 240.4(B); not for a circuit of several socket outlets), never more than 240.4(D).
 *
 * @returns undefined where the table of building wire has no row
 */
export function mostBreakerA(awg: Awg, terminalC: TerminalC): number | undefined {
  const amps = ampacityA(awg, terminalC);
  if (amps === undefined) return undefined;
  return Math.min(nextStandardA(amps) ?? amps, CONDUCTORS.get(awg)!.smallWireA ?? Infinity);
}
