import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import type { OutageSpec } from '../../../packages/sim/src/scenario/schema.ts';
import { drawStart } from '../../../packages/sim/src/trials/draw-start.ts';

const outage = (given: Partial<OutageSpec>): OutageSpec => ({
  year: 2026,
  horizonDays: 1,
  stormLed: false,
  stormDullestFraction: 0.2,
  ...given,
});
const starts = (given: Partial<OutageSpec>, zone: string, count: number) =>
  Array.from({ length: count }, (_, draw) =>
    drawStart(outage(given), zone, streamsOf('seed', draw)('start')),
  );

/** Civil date and minute of the day in a zone without summer time. */
const inPhoenix = (epochMinute: number) => new Date((epochMinute - 420) * 60_000);

describe('drawStart', () => {
  it('is the given local moment in every draw', () => {
    const at = starts({ startLocal: '2026-01-15T18:07' }, 'America/New_York', 5);
    expect(new Set(at)).toEqual(new Set([Date.parse('2026-01-15T23:07Z') / 60_000]));
  });

  it('falls on every day of the given months alike, and on no other: χ² of 90 days within 4.5 standard deviations', () => {
    const days = new Map<string, number>();
    for (const start of starts({ months: [1, 2, 12] }, 'America/Phoenix', 45_000)) {
      const day = inPhoenix(start).toISOString().slice(0, 10);
      days.set(day, (days.get(day) ?? 0) + 1);
    }
    expect(days.size).toBe(31 + 28 + 31);
    expect([...days.keys()].every((day) => /^2026-(01|02|12)-/.test(day))).toBe(true);
    const chiSquare = [...days.values()].reduce((sum, n) => sum + (n - 500) ** 2 / 500, 0);
    expect(Math.abs(chiSquare - 89)).toBeLessThan(4.5 * Math.sqrt(2 * 89));
  });

  it('falls on every hour of the day alike: χ² of 24 hours within 4.5 standard deviations', () => {
    const hours = new Array<number>(24).fill(0);
    for (const start of starts({ months: [6] }, 'America/Phoenix', 24_000))
      hours[inPhoenix(start).getUTCHours()]!++;
    const chiSquare = hours.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(Math.abs(chiSquare - 23)).toBeLessThan(4.5 * Math.sqrt(2 * 23));
  });

  it('knows leap years', () => {
    const leap = starts({ months: [2], year: 2028 }, 'UTC', 2000).filter(
      (start) => new Date(start * 60_000).getUTCDate() === 29,
    );
    expect(leap.length).toBeGreaterThan(30);
  });

  it('takes two numbers from the stream, whatever the months', () => {
    for (const months of [[1], [1, 2, 3, 4, 5]]) {
      let taken = 0;
      drawStart(outage({ months }), 'UTC', () => {
        taken++;
        return 0.5;
      });
      expect(taken).toBe(2);
    }
  });
});
