/** Figures in words beside and under charts: what is rounded which way, and where a unit or a word changes. */
import { describe, expect, it } from 'vitest';
import {
  gainInterval,
  gainLength,
  intervalText,
  limitTexts,
  reachText,
  type LadderRung,
  type Told,
} from '@rideout/sim';
import { ladderRows } from '../../packages/notebooks/src/charts/ladder-rungs.ts';
import { moneyText, rungGain, shareWords } from '../../packages/notebooks/src/charts/ladder-words.ts';
import { timeOfDay } from '../../packages/notebooks/src/charts/look.ts';
import { tooFewNote, tooFewToTell } from '../../packages/notebooks/src/charts/outage-count.ts';
import type { OutageView } from '../../packages/notebooks/src/charts/outage-view.ts';
import { drawnUntilDay, survivalAt } from '../../packages/notebooks/src/charts/step-curve.ts';
import { cellText, type YearCell } from '../../packages/notebooks/src/charts/year-cells.ts';
import { moved, rangeWithin, zoomed } from '../../packages/notebooks/src/page/outage-range.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const hours = (n: number) => n / 24;

describe('days in a sentence', () => {
  it('are hours below a day, and the horizon or more where it hides them', () => {
    expect([0.999, 1, 2.49, null].map((days) => plain(reachText(days, 14)))).toEqual([
      '23 hours',
      '1 day',
      '2.4 days',
      '14 days or more',
    ]);
  });

  it('have limits that are rounded outwards, hours below a day and days from there', () => {
    const told = (low: number | null, high: number | null) => {
      const texts = limitTexts({ value: null, low, high }, 14);
      return `${plain(texts.low)} | ${plain(texts.high)}`;
    };
    expect(told(hours(13.6), hours(17.2))).toBe('13 | 18 hours');
    expect(told(hours(13.6), 1.11)).toBe('13 hours | 1.2 days');
    expect(told(hours(13.6), 1)).toBe('13 hours | 1.0 days');
    expect(told(1, 2.71)).toBe('1.0 | 2.8 days');
    expect(told(2.19, null)).toBe('2.1 | ≥ 14 days');
    expect(plain(intervalText({ value: null, low: null, high: null }, 14))).toBe(
      '95 % interval beyond the 14 days simulated',
    );
  });

  it('in a cell of the year are rounded down, and 7 hours in minutes are 7 hours', () => {
    const cell = (value: number | null) =>
      plain(cellText({ days: { value, low: null, high: null } } as YearCell, 14));
    expect([(7 * 60 - 1e-9) / 1440, hours(23.9), 1, 2.49, null].map(cell)).toEqual([
      '7 h',
      '23 h',
      '1.0 d',
      '2.4 d',
      '≥ 14 d',
    ]);
  });
});

describe('a gain', () => {
  it('goes from minutes to hours to days where the rounded figure does', () => {
    const told = [59.4 / 1440, 59.6 / 1440, hours(1.4), hours(23.4), hours(23.6), 1.26];
    expect(told.map((days) => plain(gainLength(days)))).toEqual([
      '59 minutes',
      '1 hour',
      '1 hour',
      '23 hours',
      '1 day',
      '1.3 days',
    ]);
  });

  it('has an interval whose ends are rounded outwards, each in its own unit', () => {
    const told = (low: number | null, high: number | null) => plain(gainInterval({ value: 0, low, high }));
    expect(told(hours(-1.2), hours(6.1))).toBe('95 % interval −2 to 7 hours');
    expect(told(hours(-1.3), 1)).toBe('95 % interval −2 hours to 1.0 days');
    expect(told(-1, hours(6))).toBe('95 % interval −1.0 days to 6 hours');
  });

  it('keeps its unit where the horizon hides one end', () => {
    expect(plain(gainInterval({ value: null, low: 2.14, high: null }))).toBe(
      '95 % interval 2.1 days to beyond what was simulated',
    );
    expect(plain(gainInterval({ value: null, low: null, high: -2.14 }))).toBe(
      '95 % interval beyond what was simulated to −2.1 days',
    );
  });
});

describe('how many outages are too few', () => {
  it('is 29: of fewer than 30, the chance that none is of the worst tenth is near 5 % or above', () => {
    expect(0.9 ** 28).toBeGreaterThan(0.05);
    expect(0.9 ** 29).toBeLessThan(0.05);
    expect([28, 29, 30].map(tooFewToTell)).toEqual([true, true, false]);
    expect(tooFewNote(29)).toContain('simulate 30 or more');
    expect(tooFewNote(30)).toBe('');
  });
});

describe('a rung of the ladder', () => {
  const at = (value: number | null) => ({ value, low: value, high: value });
  const rung = (told: Told, gainDays: number | null = hours(16), gainMeanDays: number | null = -1.8) =>
    ({
      ...{ title: 'A second unit', strategyId: 's', strategyTitle: 'S', days: at(1.6), meanDays: 4 },
      ...{ stepIds: ['second-unit'], price: 3500, paid: 5800, pricePerDay: 5067 },
      ...{ gainDays: at(gainDays), gainMeanDays: at(gainMeanDays), told },
    }) satisfies LadderRung;

  it('says what it gains, and what it loses beside that', () => {
    expect(plain(rungGain(rung('clear')))).toBe('16 hours more');
    expect(plain(rungGain(rung('clear, less on average')))).toBe(
      '16 hours more, but 1.8 days less on average',
    );
    expect(rungGain(rung('clear, less on average', null, null))).toBe(
      'longer than was simulated, but less on average',
    );
    expect(rungGain(rung('on average'))).toBe('longer on average, not clearly in these days');
    expect(rungGain(rung('a loss'))).toBe('less than before: leave it out');
  });

  it('looks like the start while its gain is clear in the days counted, whatever it loses on average', () => {
    const told: Told[] = ['clear', 'clear, less on average', 'on average', 'not told from zero', 'a loss'];
    const [start, ...rows] = ladderRows({
      start: rung('clear'),
      rungs: told.map((each) => rung(each)),
      currency: '',
    });
    expect(rows.map(({ style }) => style === start!.style)).toEqual([true, true, false, false, false]);
  });
});

describe('money and shares', () => {
  const money = (amount: number, currency = '¤') => plain(moneyText(amount, { currency }));

  it('stand with thousands apart, to the whole unit, and nothing costs nothing', () => {
    expect([0, 999.5, 1234, 1_234_567].map((amount) => money(amount))).toEqual([
      'free',
      '¤ 1 000',
      '¤ 1 234',
      '¤ 1 234 567',
    ]);
    expect(money(12, '')).toBe('12');
  });

  it('are told to a tenth of a per cent', () => {
    expect([0.9, 0.5, 0.95, 0.955, 0.8].map((share) => plain(shareWords(share)))).toEqual([
      'nine outages in ten',
      'half of the outages',
      '95 % of outages',
      '95.5 % of outages',
      '80 % of outages',
    ]);
  });
});

describe('a time of day by twelve hours', () => {
  it('is 12 am at midnight, 12 pm at noon, and 12 am when the day is over', () => {
    const told = [0, 5, 11 * 60 + 59, 12 * 60, 13 * 60 + 5, 24 * 60].map((m) => plain(timeOfDay(m, 12)));
    expect(told).toEqual(['12:00 am', '12:05 am', '11:59 am', '12:00 pm', '1:05 pm', '12:00 am']);
  });
});

describe('a survival curve', () => {
  const curve = { day: [0, 1, 2.5], survival: [1, 0.6, 0.01], low: [1, 0, 0], high: [1, 1, 1] };

  it('holds each value until its next step, which counts from its own moment', () => {
    expect([0, 0.99, 1, 2.49, 2.5, 9].map((day) => survivalAt(curve, day))).toEqual([
      1, 1, 0.6, 0.6, 0.01, 0.01,
    ]);
  });

  it('is drawn a little past the day when fewer than one in fifty are left, to a quarter of a day', () => {
    expect(drawnUntilDay([curve], 14)).toBe(2.75); // 2.5 × 1.08 = 2.7
    expect(drawnUntilDay([{ ...curve, survival: [1, 0.6, 0.02] }], 14)).toBe(14);
    expect(drawnUntilDay([{ ...curve, day: [0, 1, 3] }], 14)).toBe(4); // above three days, to a whole one
    expect(drawnUntilDay([{ ...curve, day: [0, 0.01, 0.02] }], 14)).toBe(0.25);
    expect(drawnUntilDay([curve], 2)).toBe(2);
  });
});

describe('the part of an outage that is shown', () => {
  const view = (from: number, to: number) => ({ from, to, trace: { minutes: 1000 } }) as OutageView;
  const ends = ({ from, to }: { from: number; to: number }) => [from, to];

  it('is all of it where what was asked for lies outside or holds nothing', () => {
    expect(ends(rangeWithin(undefined, 1000))).toEqual([0, 1000]);
    expect(ends(rangeWithin({ from: 200, to: 5000, at: undefined }, 1000))).toEqual([200, 1000]);
    expect(ends(rangeWithin({ from: 300, to: 300, at: undefined }, 1000))).toEqual([0, 1000]);
    expect(ends(rangeWithin({ from: 2000, to: 3000, at: undefined }, 1000))).toEqual([999, 1000]);
  });

  it('moves by its own length and stops at either end of the outage', () => {
    expect(ends(moved(view(300, 500), 1))).toEqual([500, 700]);
    expect(ends(moved(view(100, 300), -1))).toEqual([0, 200]);
    expect(ends(moved(view(750, 950), 1))).toEqual([800, 1000]);
  });

  it('narrows and widens about its middle, from an hour to the whole outage', () => {
    expect(ends(zoomed(view(400, 600), 0.5))).toEqual([450, 550]);
    expect(ends(zoomed(view(400, 500), 0.5))).toEqual([420, 480]);
    expect(ends(zoomed(view(0, 200), 2))).toEqual([0, 400]);
    expect(ends(zoomed(view(900, 1000), 2))).toEqual([800, 1000]);
    expect(ends(zoomed(view(100, 900), 2))).toEqual([0, 1000]);
  });
});
