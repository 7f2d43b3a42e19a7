import { describe, expect, it } from 'vitest';
import { survivalAt } from '../../../packages/sim/src/cli/render-curves.ts';
import { differenceSentences } from '../../../packages/sim/src/cli/render-differences.ts';
import { headlineSentences } from '../../../packages/sim/src/cli/render-headline.ts';
import { renderStudy } from '../../../packages/sim/src/cli/render-study.ts';
import type { Estimate, PairedDifference } from '../../../packages/sim/src/trials/study-summary.ts';
import { summarise } from '../../../packages/sim/src/trials/summarise.ts';
import { fabricatedOutline, fabricatedRows } from '../trials/fabricated-study.ts';

const outline = fabricatedOutline();
const summary = summarise(outline, fabricatedRows(outline, 0, 400));
const longest = (text: string) => Math.max(...text.split('\n').map((line) => Array.from(line).length));
const plain = (texts: string[]) => texts.map((text) => text.replaceAll('\u00a0', ' '));

describe('renderStudy', () => {
  it.each([40, 60, 79, 80, 100, 132])('fits %i columns, in either alphabet', (width) => {
    expect(longest(renderStudy(summary, { width, colour: false }))).toBeLessThanOrEqual(width);
    expect(longest(renderStudy(summary, { width, colour: false, ascii: true }))).toBeLessThanOrEqual(width);
  });

  it('says the same with colour as without', () => {
    const coloured = renderStudy(summary, { width: 80, colour: true });
    expect(coloured).toContain('\u001b[');
    // eslint-disable-next-line no-control-regex
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(renderStudy(summary, { width: 80, colour: false }));
  });

  it('is plain ASCII when asked', () => {
    // eslint-disable-next-line no-control-regex
    expect(renderStudy(summary, { width: 80, colour: false, ascii: true })).toMatch(/^[\x00-\x7f]+$/);
  });

  it('explains the horizon only when it hides something', () => {
    expect(renderStudy(summary, { width: 80, colour: false })).not.toContain('≥');
    const short = fabricatedOutline({ horizonDays: 3 });
    const text = renderStudy(summarise(short, fabricatedRows(short, 0, 400)), { width: 80, colour: false });
    expect(text).toContain('≥ 3 d: the horizon.');
  });

  it('does without comparison and star when there is one strategy and no alternative', () => {
    const one = fabricatedOutline({
      strategies: outline.strategies.slice(0, 1),
      alternatives: outline.alternatives.slice(0, 1),
    });
    const text = renderStudy(summarise(one, fabricatedRows(one, 0, 200)), { width: 80, colour: false });
    expect(text).not.toContain('compared');
    expect(text).not.toMatch(/^\*/m);
  });

  it('unchanged (a photograph of made-up figures, not a claim that they are right)', () => {
    expect(renderStudy(summary, { width: 80, colour: false })).toMatchSnapshot('80 columns');
    const short = fabricatedOutline({ horizonDays: 3 });
    expect(
      renderStudy(summarise(short, fabricatedRows(short, 0, 400)), { width: 72, colour: false, ascii: true }),
    ).toMatchSnapshot('72 columns, ASCII, horizon of 3 days');
  });
});

describe('headlineSentences', () => {
  it('answers for the longest-lasting strategy, rounded down', () => {
    const [first] = plain(headlineSentences(summary));
    expect(first).toMatch(
      /^As it stands: in nine outages in ten, “Essentials only, .*” holds for at least \d+\.\d days \(95 % interval .* to .* days\)\.$/,
    );
  });

  it('says how far the study looked when the horizon hides the answer', () => {
    const short = fabricatedOutline({ horizonDays: 1, alternatives: outline.alternatives.slice(0, 1) });
    const [sentence] = plain(headlineSentences(summarise(short, fabricatedRows(short, 0, 400))));
    expect(sentence).toBe(
      'In nine outages in ten, “Essentials only, from the first minute to the last” holds to the end of the study (1 day); it does not look further.',
    );
  });

  it('speaks of hours below a day, interval and all', () => {
    const one = fabricatedOutline({
      strategies: outline.strategies.slice(0, 1),
      alternatives: outline.alternatives.slice(0, 1),
    });
    const [sentence] = plain(headlineSentences(summarise(one, fabricatedRows(one, 0, 400))));
    expect(sentence).toMatch(/holds for at least \d+ hours \(95 % interval \d+ to \d+ hours\)\.$/);
  });
});

describe('an interval in the headline', () => {
  const told = (nineInTenDays: Estimate) => {
    const strategies = [{ ...summary.strategies[0]!, nineInTenDays }];
    return plain(headlineSentences({ ...summary, horizonDays: 14, strategies }))[0]!;
  };

  it('tells each end in hours below a day, in days from there', () => {
    expect(told({ value: 0.96, low: 0.5, high: 1.5 })).toMatch(
      /23 hours \(95 % interval 12 hours to 1\.5 days\)\.$/,
    );
    expect(told({ value: 0.96, low: 0.5, high: 2 })).toContain('12 hours to 2.0 days');
    expect(told({ value: 1, low: 0.5, high: 1.5 })).toContain('1 day (95 % interval 12 hours to 1.5 days)');
    expect(told({ value: 0.96, low: 0, high: 13.7 })).toMatch(
      /23 hours \(95 % interval 0 to 13\.7 days\)\.$/,
    );
  });

  it('begins at the first minute, not at 0 minutes', () => {
    expect(told({ value: null, low: 0, high: null })).toContain(
      '(14 days; 95 % interval from the first minute)',
    );
    expect(told({ value: null, low: 2, high: null })).toContain('(14 days; 95 % interval from 2 days)');
  });
});

describe('differenceSentences', () => {
  const with_ = (meanDays: Estimate, nineInTenDays: Estimate) => {
    const difference: PairedDifference = {
      ...summary.differences[0]!,
      meanDays,
      nineInTenDays,
      firstLongerFraction: 0.5,
      secondLongerFraction: 0.4,
    };
    return plain(differenceSentences({ ...summary, differences: [difference] }))[0]!;
  };
  const none = { value: null, low: null, high: null };

  it('says longer, less long, or about as long, by the interval', () => {
    expect(with_({ value: 1.4, low: 1.2, high: 1.6 }, none)).toContain(
      'lasts 1.4 days longer on average than “Everything stays on” (1.2 to 1.6 days)',
    );
    expect(with_({ value: -1.4, low: -1.6, high: -1.2 }, none)).toContain(
      'lasts 1.4 days less long on average than “Everything stays on” (−1.6 to −1.2 days)',
    );
    expect(with_({ value: 0.1, low: -0.1, high: 0.3 }, none)).toContain(
      'lasts about as long on average as “Everything stays on” (−3 to 8 hours)',
    );
  });

  it('says what the horizon leaves to know of the days nine in ten reach', () => {
    const mean = { value: 1, low: 0.5, high: 1.5 };
    expect(with_(mean, { value: 2, low: 1, high: 3 })).toContain(
      'Nine in ten reach 2 days more (1.0 to 3.0 days).',
    );
    expect(with_(mean, { value: -2, low: -3, high: -1 })).toContain(
      'Nine in ten reach 2 days less (−3.0 to −1.0 days).',
    );
    expect(with_(mean, { value: 0.2, low: -1, high: 1 })).toContain(
      'No clear difference in the time nine in ten reach (−1.0 to 1.0 days).',
    );
    expect(with_(mean, { value: null, low: 1.5, high: null })).toContain(
      'Nine in ten hold longer; the horizon hides how much (at least 1.5 days).',
    );
    expect(with_(mean, none)).toContain('The horizon hides the difference in the time nine in ten reach.');
  });

  it('tells the first alternative and the longest-lasting strategy, and counts the rest', () => {
    const sentences = plain(differenceSentences(summary));
    expect(sentences).toHaveLength(4);
    expect(sentences.at(-1)).toBe('4 more comparisons are in the study’s tables.');
  });
});

describe('survivalAt', () => {
  const curve = { day: [0, 1, 2], survival: [1, 0.5, 0], low: [1, 0, 0], high: [1, 1, 1] };
  it.each([
    [0, 1],
    [0.9, 1],
    [1, 0.5],
    [5, 0],
  ])('at day %f is %f', (day, survival) => expect(survivalAt(curve, day)).toBe(survival));
});
