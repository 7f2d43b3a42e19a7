/** A need in words. */
import type { NeedSpec } from '../../scenario/schema-needs.ts';
import type { NeedsAnswer } from './needs.ts';

type NeedAsked = NeedsAnswer['needs'][number];

export function needTitle({ id, title }: NeedSpec): string {
  return title ?? id.charAt(0).toUpperCase() + id.slice(1);
}

/** When it counts as failed. */
export function failsWhen(need: NeedSpec): string {
  switch (need.measure) {
    case 'cold':
      return `a refrigerator or freezer is above ${need.limitC}\u00a0°C for more than ${hours(need.hoursAbove)} in all`;
    case 'water':
      return `nothing is left for ${need.persons === 1 ? 'one person' : `${need.persons} persons`} at ${need.litresPerPersonPerDay}\u00a0L a day each for more than ${hours(need.hoursWithout)} (${need.storedLitres}\u00a0L in store at first)`;
    case 'warmth':
      return `it is below ${need.limitC}\u00a0°C for more than ${hours(need.hoursBeyond)} in a row`;
    case 'coolth':
      return `it is above ${need.limitC}\u00a0°C for more than ${hours(need.hoursBeyond)} in a row`;
    case 'power':
      return need.graceMinutes === undefined
        ? 'it is wanted and without power for longer than its circuits may bear'
        : `it is wanted and without power for more than ${need.graceMinutes}\u00a0minutes in a row`;
  }
}

/** What its `depth` and its `extreme` are counted in. */
export function needUnits({ measure }: NeedSpec): Pick<NeedAsked, 'depthUnit' | 'extremeUnit'> {
  switch (measure) {
    case 'power':
      return { depthUnit: null, extremeUnit: null };
    case 'water':
      return { depthUnit: 'L', extremeUnit: 'L' };
    default:
      return { depthUnit: '°C·h', extremeUnit: '°C' };
  }
}

const hours = (n: number): string => `${n}\u00a0${n === 1 ? 'hour' : 'hours'}`;
