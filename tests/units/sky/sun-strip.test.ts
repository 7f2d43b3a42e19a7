/** Days of sun end to end: what is kept, and what an outage sees of it. */
import { describe, expect, it } from 'vitest';
import { MINUTES_PER_DAY } from '../../../packages/sim/src/sky/sun-day.ts';
import {
  cutDaylight,
  stripOver,
  type Daylight,
  type SunDays,
} from '../../../packages/sim/src/sky/sun-strip.ts';

/** Sun from 06:00 to 18:00 every day. */
const EVERY_DAY: SunDays = (() => {
  const up = new Float32Array(MINUTES_PER_DAY).fill(0.5, 360, 1080);
  const none = new Float32Array(MINUTES_PER_DAY);
  return {
    day: () => ({ east: none, north: none, up, extraterrestrialNormalWm2: none }),
    planeDay: () => none,
  };
})();

describe('the daylight of an outage', () => {
  const all: Daylight = { count: 2, from: Int32Array.of(360, 1800), to: Int32Array.of(1080, 2520) };
  const cut = (from: number, to: number) => {
    const out: Daylight = { count: 0, from: new Int32Array(4), to: new Int32Array(4) };
    cutDaylight(all, from, to, out);
    return Array.from({ length: out.count }, (_, s) => [out.from[s], out.to[s]]);
  };

  it('is counted from its start and cut at its ends', () => {
    expect(cut(720, 2000)).toEqual([
      [0, 360],
      [1080, 1280],
    ]);
  });

  it('has no stretch of a sun that set as it began, nor of one that rises as it ends', () => {
    expect(cut(1080, 1800)).toEqual([]);
    expect(cut(1079, 1801)).toEqual([
      [0, 1],
      [721, 722],
    ]);
  });
});

describe('a strip of days', () => {
  it('grows to take in days nearby, by whole stretches of 16 days, and is left as it is for days it has', () => {
    const first = stripOver(EVERY_DAY, [], 20, 20, undefined);
    expect([first.firstDay, first.days]).toEqual([16, 16]);
    expect(stripOver(EVERY_DAY, [], 16, 31, first)).toBe(first);
    const grown = stripOver(EVERY_DAY, [], 31, 32, first);
    expect([grown.firstDay, grown.days]).toEqual([16, 32]);
  });

  it('is begun anew for days years away: what is kept stays small', () => {
    const first = stripOver(EVERY_DAY, [], 0, 15, undefined);
    const far = stripOver(EVERY_DAY, [], 5000, 5001, first);
    expect([far.firstDay, far.days]).toEqual([4992, 16]);
  });
});
