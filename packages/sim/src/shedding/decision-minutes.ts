/** At which minutes of the local day somebody, or the switch, thinks about what should be on. MODEL.md §3.2. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import type { PersonSpec } from '../scenario/schema.ts';
import type { CompiledRule, CompiledStrategy } from './compile-rules.ts';

/** How often a switch looks at the panels' output; it sees the bank's charge every minute. */
const SUN_TICK_MINUTES = 15;

/** The person's day. */
export interface PersonDay {
  /** 1 for each minute of the local day awake. */
  readonly awake: Uint8Array;
  /** 1 for the last minute before sleep, when things are set for the night. */
  readonly bedtime: Uint8Array;
}

export function personDay(person: PersonSpec): PersonDay {
  const awake = minutesInWindows([person.awake]);
  return { awake, bedtime: awake.map((now, m) => (now === 1 && awake[(m + 1) % 1440] === 0 ? 1 : 0)) };
}

/** 1 where a rule's own schedule changes or, for a switch, where it must be looked at again. */
function markRule(rule: CompiledRule, marks: Uint8Array, bySwitch: boolean): void {
  const windows = rule.by === 'clock' ? rule.onMinutes : rule.by === 'sleep' ? rule.duringMinutes : undefined;
  if (windows !== undefined) markChanges(marks, windows);
  for (let m = 0; m < 1440; m++) {
    if (rule.by === 'ration' && (m % 60 === 0 || m % 60 === rule.onMinutesPerHour)) marks[m] = 1;
    if (rule.by === 'sun' && bySwitch && m % SUN_TICK_MINUTES === 0) marks[m] = 1;
  }
}

/** Marks the minutes of the day that are not like the one before. */
export function markChanges(marks: Uint8Array, minutes: Uint8Array): void {
  for (let m = 0; m < 1440; m++) if (minutes[m] !== minutes[(m + 1439) % 1440]) marks[m] = 1;
}

/** The person's looks at the reading: on waking, every so many minutes after, at bedtime. */
export function markLooks(marks: Uint8Array, day: PersonDay, looksEveryMinutes: number): void {
  const wakes = day.awake.findIndex((now, m) => now === 1 && day.awake[(m + 1439) % 1440] === 0);
  const first = wakes === -1 ? 0 : wakes;
  for (let k = 0; k < 1440; k += looksEveryMinutes) marks[(first + k) % 1440] = 1;
  for (let m = 0; m < 1440; m++) {
    if (day.awake[m] === 0) marks[m] = 0;
    if (day.bedtime[m] === 1) marks[m] = 1;
  }
}

/**
 * Minutes from each minute of the local day to the next decision, 1…1440; 0 = never.
 * A person decides only while awake; what falls due asleep waits for the first look.
 */
export function minutesToNextDecision(strategy: CompiledStrategy, person: PersonSpec): Uint16Array {
  const marks = new Uint8Array(1440);
  for (const rule of strategy.rules) markRule(rule, marks, strategy.bySwitch);
  if (!strategy.bySwitch && strategy.rules.length > 0)
    markLooks(marks, personDay(person), person.looksEveryMinutes);
  return minutesToNextMark(marks);
}

/** Minutes from each minute of the day to the next marked one, 1…1440, the next day's if need be; 0 = none is marked. */
export function minutesToNextMark(marks: Uint8Array): Uint16Array {
  const next = new Uint16Array(1440);
  let gap = 0;
  for (let m = 2 * 1440 - 1; m >= 0; m--) {
    // backwards through the day after and the day itself
    next[m % 1440] = gap;
    if (marks[m % 1440] === 1) gap = 1;
    else if (gap > 0) gap++;
  }
  return next;
}
