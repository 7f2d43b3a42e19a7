/** What is said of needs above their tables is what the tables say. */
import { describe, expect, it } from 'vitest';
import { renderNeeds } from '../../../packages/sim/src/cli/render-needs.ts';

type Answer = Parameters<typeof renderNeeds>[0];
type Figures = Answer['figures'][number];

const measured = { mean: 1, nineInTen: 2, oneInTen: 0 };

function figures(needId: string, strategyId: string, days: number | null): Figures {
  return {
    needId,
    alternativeId: 'a',
    alternativeTitle: 'As it is',
    strategyId,
    strategyTitle: strategyId,
    neverFails: { value: 0.5, low: 0.4, high: 0.6 },
    nineInTenDays: { value: days, low: null, high: null },
    medianDays: { value: days, low: null, high: null },
    hoursUnmet: measured,
    longestHours: measured,
    depth: null,
    extreme: null,
    litresPerPersonPerDay: null,
  } as unknown as Figures;
}

function headline(...given: Figures[]): string {
  const need = (id: string, title: string) => ({ id, title, measure: 'power', failsWhen: 'without' });
  const answer = {
    provenance: {
      scenarioTitle: 'A house',
      scenarioHash: 'ab',
      seed: 's',
      draws: 10,
      version: '0',
      weatherName: 'w',
    },
    horizonDays: 7,
    needs: [need('food', 'Food'), need('light', 'Light')],
    figures: given,
  } as unknown as Answer;
  return renderNeeds(answer, { width: 100, colour: false }).split('\n\n')[1]!.replaceAll(/\s+/g, ' ');
}

describe('of needs', () => {
  it('a strategy keeps every need longest when no other keeps any of them longer', () => {
    const all = [
      figures('food', 'Frugal', 3),
      figures('light', 'Frugal', 2),
      figures('food', 'Everything', 3),
    ];
    expect(headline(...all, figures('light', 'Everything', 1))).toBe(
      '“Frugal” keeps every need longest; “Light” gives way first, and holds at least 2 days in nine outages of ten.',
    );
  });

  it('the first to give way is told as latest under it, when another keeps some need longer', () => {
    const all = [
      figures('food', 'Frugal', 3),
      figures('light', 'Frugal', 2),
      figures('food', 'Everything', null),
    ];
    expect(headline(...all, figures('light', 'Everything', 1))).toBe(
      'The first need to give way is latest under “Frugal”: “Light” holds at least 2 days in nine outages of ten. Another strategy keeps some need longer.',
    );
  });
});
