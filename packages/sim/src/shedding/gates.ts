/** Rules as the control goes through them: every one with every field, so that reading them costs the same. MODEL.md §3.1. */
import { LOWEST_BANK, type CompiledRule } from './compile-rules.ts';

/** What the control sees when it thinks. */
export interface Readings {
  /** State of charge of each bank, fraction of capacity. */
  readonly charge: Float64Array;
  /** Mean solar watts of all panels over the last quarter of an hour; read only by sun rules. */
  solarW: number;
  localMinuteOfDay: number;
  /** 1 for each unit that is down (not asleep). */
  readonly down: Uint8Array;
}

export interface Gate {
  readonly by: CompiledRule['by'];
  /** Circuits that it can switch off. */
  readonly held: Int32Array;
  /** The unit whose charge is read, or that is put to sleep; LOWEST_BANK for the emptier one. */
  readonly unit: number;
  /** Closes below, opens at or above: fractions of the charge, or watts of sun. */
  readonly below: number;
  readonly above: number;
  /** By a clock: 1 for each minute of the day in which it is open (clock) or the unit sleeps (sleep). */
  readonly hasMarks: boolean;
  readonly marks: Uint8Array;
  readonly onMinutesPerHour: number;
  readonly onWhileAsleep: boolean;
  /** The sleeping unit's circuits hang on the other one. */
  readonly moved: boolean;
}

export function gateOf(rule: CompiledRule): Gate {
  const held = Int32Array.from([...rule.holds].flatMap((holds, c) => (holds === 1 ? [c] : [])));
  const marks = rule.by === 'clock' ? rule.onMinutes : rule.by === 'sleep' ? rule.duringMinutes : undefined;
  const [below, above] = levelsOf(rule);
  return {
    by: rule.by,
    held,
    unit: rule.by === 'charge' ? rule.reads : rule.by === 'sleep' ? rule.unit : LOWEST_BANK,
    below,
    above,
    hasMarks: marks !== undefined,
    marks: marks ?? new Uint8Array(0),
    onMinutesPerHour: rule.by === 'ration' ? rule.onMinutesPerHour : 0,
    onWhileAsleep: rule.by === 'ration' && rule.onWhileAsleep,
    moved: rule.by === 'sleep' && rule.moved,
  };
}

function levelsOf(rule: CompiledRule): readonly [number, number] {
  switch (rule.by) {
    case 'charge':
      return [rule.dropBelow, rule.restoreAbove];
    case 'sleep':
      return [rule.sleepBelow, rule.wakeAbove];
    case 'sun':
      return [rule.solarAboveW, rule.solarAboveW];
    default:
      return [0, 0];
  }
}

/** True when the charge of one bank opens and closes it. */
export function readsCharge(gate: Gate): boolean {
  return gate.by === 'charge' || (gate.by === 'sleep' && !gate.hasMarks);
}

/** Whether it lets its circuits be on, given whether it did so before (hysteresis). */
export function isOpen(gate: Gate, before: boolean, readings: Readings, forTheNight: boolean): boolean {
  const minute = readings.localMinuteOfDay;
  switch (gate.by) {
    case 'charge':
      return chargeOf(readings, gate.unit) >= (before ? gate.below : gate.above);
    case 'clock':
      return gate.marks[minute] === 1;
    case 'sun':
      return readings.solarW >= gate.above;
    case 'ration':
      return forTheNight ? gate.onWhileAsleep : minute % 60 < gate.onMinutesPerHour;
    case 'outage':
      return false;
    case 'sleep':
      return !sleeps(gate, before, readings);
  }
}

/** A unit is not put to sleep, and is woken, while the other one is down. */
function sleeps(gate: Gate, awakeBefore: boolean, readings: Readings): boolean {
  if (readings.down[1 - gate.unit] === 1) return false;
  if (gate.hasMarks) return gate.marks[readings.localMinuteOfDay] === 1;
  return readings.charge[gate.unit]! < (awakeBefore ? gate.below : gate.above);
}

function chargeOf({ charge }: Readings, unit: number): number {
  if (unit !== LOWEST_BANK) return charge[unit]!;
  let least = charge[0]!;
  for (let u = 1; u < charge.length; u++) if (charge[u]! < least) least = charge[u]!;
  return least;
}
