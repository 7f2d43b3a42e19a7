import type { MeasuredProfile } from '../scenario/scenario.ts';

/** Below this many watts at its highest, a circuit's record is more likely in kilowatts (common practice, no source). */
const SUSPICIOUSLY_LOW_W = 20;

/** What a person should look at twice in a profile that can be read; plain sentences, none when nothing stands out. */
export function profileHints(profile: MeasuredProfile): readonly string[] {
  const hints: string[] = [];
  const highestW = profile.watts.reduce((high, w) => Math.max(high, w), 0);
  if (highestW === 0) hints.push('every reading is 0 W');
  else if (highestW < SUSPICIOUSLY_LOW_W) {
    hints.push(`the highest reading is ${highestW} W; if the file is in kilowatts, set scale: 1000`);
  }
  const hours = (profile.watts.length * profile.intervalMinutes) / 60;
  if (hours < 24 - 1e-6) {
    hints.push(
      `it lasts ${Math.round(hours * 10) / 10} h, less than a day; it is repeated end to end from midnight`,
    );
  }
  return hints;
}

const ZONED = /\d\d:\d\d(?::\d\d(?:\.\d+)?)?(Z|[+-]\d\d:?\d\d)\b/;

/** What its text says that reading it passes over: a zone behind the times. */
export function profileZoneHints(text: string): readonly string[] {
  const zone = ZONED.exec(text)?.[1];
  if (zone === undefined) return [];
  return [
    `the ${zone} behind its times is not used: they count as they stand, so they must be the house’s own clock`,
  ];
}
