/** The next outage in words: how sure, how often, and which strategy is put first. */
import { describe, expect, it } from 'vitest';
import type { NextOutage } from '../../../packages/sim/src/index.ts';
import { renderNextOutage } from '../../../packages/sim/src/cli/render-next-outage.ts';

type Figures = NextOutage['figures'][number];
type Bounds = Figures['riddenOut'];

const exactly = (value: number): Bounds => ({ least: value, most: value, low: value, high: value });

function figures(strategyTitle: string, riddenOut: Bounds, more: Partial<Figures> = {}): Figures {
  return {
    alternativeId: 'a',
    alternativeTitle: 'As it is',
    strategyId: strategyTitle,
    strategyTitle,
    riddenOut,
    hoursWithoutPerYear: exactly(1),
    notRiddenOutPerYear: exactly(0.5),
    ...more,
  };
}

function told(...given: Figures[]): string {
  const answer: NextOutage = {
    provenance: {
      version: '0',
      scenarioHash: '0123456789ab',
      scenarioTitle: 'A house',
      seed: 's',
      draws: 2,
      weatherName: 'w',
    },
    horizonDays: 7,
    lengths: {
      source: 'mine',
      perYear: 1,
      meanHours: 5,
      hoursPerYear: 5,
      overBy: [{ days: 1, share: 0.9 }],
      beyondHorizonFraction: 0.01,
    },
    figures: given,
  };
  return renderNextOutage(answer, { width: 80, colour: false });
}

const inOne = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('the next outage', () => {
  it('is told as rare only when the bad end of the interval is', () => {
    const never = { least: 0, most: 0, low: 0 };
    const rare = told(figures('Frugal', exactly(1), { notRiddenOutPerYear: { ...never, high: 0.01 } }));
    expect(inOne(rare)).toContain('comes less than once in a hundred years.');
    expect(rare).toContain('100 +');
    const unsure = told(figures('Frugal', exactly(1), { notRiddenOutPerYear: { ...never, high: 0.25 } }));
    expect(inOne(unsure)).toContain(
      'comes less than once in 4 years, as far as 2 simulated outages can tell.',
    );
    expect(unsure).toContain('4.0 +');
    const limit = (high: number) =>
      inOne(told(figures('Frugal', exactly(1), { notRiddenOutPerYear: { ...never, high } })));
    expect(limit(0.28)).toContain('less than once in 3.5 years,'); // 3.57: a limit is never more than it is
    expect(limit(0.5)).toContain('less than once in 2 years,');
    expect(limit(0.51)).toContain('less than once a year,');
    const few = told(figures('Frugal', exactly(1), { notRiddenOutPerYear: { ...never, high: 0.9 } }));
    expect(inOne(few)).toContain('comes less than once a year, as far as 2 simulated');
    expect(unsure).not.toMatch(/hundred|100 \+/);
  });

  it('comes once in a range of years where the horizon hides how often', () => {
    const hidden = { least: 0.125, most: 0.5, low: 0.1, high: 0.6 };
    const text = told(figures('Frugal', exactly(0.5), { notRiddenOutPerYear: hidden }));
    expect(inOne(text)).toContain('comes about once in 2 to 8 years.');
    expect(text).toContain('2.0–8.0');
    const open = told(figures('Frugal', exactly(0.5), { notRiddenOutPerYear: { ...hidden, least: 0 } }));
    expect(inOne(open)).toContain('comes about once in 2 years at most.');
    expect(open).toContain('2.0 +');
  });

  it.each([
    [0.01001, 'about once in 100 years'],
    [0.08, 'about once in 13 years'],
    [0.55, 'about once in 1.8 years'],
    [0.66, 'about once in 1.5 years'],
    [0.97, 'about once a year'],
    [1, 'about once a year'],
    [2.5, 'about 2.5 times a year'],
  ])('of which %d a year are not ridden out comes %s', (perYear, words) => {
    const text = told(figures('Frugal', exactly(0.5), { notRiddenOutPerYear: exactly(perYear) }));
    expect(inOne(text)).toContain(`one that outlasts it comes ${words}.`);
  });

  it('puts first, of strategies that are equally certain, the one that may do better, then the fewest hours', () => {
    const upTo = (most: number): Bounds => ({ least: 0.6, most, low: 0.5, high: 1 });
    const better = figures('Better', upTo(0.9));
    expect(inOne(told(figures('Worse', upTo(0.7)), better))).toContain('“Better” with');
    const shorter = figures('Shorter', upTo(0.9), { hoursWithoutPerYear: exactly(0.5) });
    expect(inOne(told(better, shorter))).toContain('“Shorter” with');
    expect(inOne(told(shorter, better))).toContain('“Shorter” with');
  });
});
