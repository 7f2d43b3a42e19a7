/** What a link carries. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedScenario } from '../../packages/notebooks/src/page/changed-scenario.ts';
import {
  changedWords,
  withChanges,
  withoutChanges,
} from '../../packages/notebooks/src/page/changed-words.ts';
import { provenanceText } from '../../packages/notebooks/src/charts/chart-frame.ts';
import { studyWords } from '../../packages/notebooks/src/page/study-words.ts';
import { standInFor } from '../../packages/notebooks/src/page/modules-everywhere.ts';
import { anyOfMonths, monthsText } from '../../packages/notebooks/src/page/months-text.ts';
import {
  choicesOf,
  ownSettings,
  settingsFromHash,
  settingsHash,
  type PageSettings,
} from '../../packages/notebooks/src/page/page-settings.ts';
import { smallHouse, studyInNode } from './houses.ts';

const scenario = smallHouse();
const choices = choicesOf(scenario);
const own = ownSettings({ scenario, seed: 'own', draws: 100 }, choices);

const anySettings: fc.Arbitrary<PageSettings> = fc.record({
  run: fc.record({
    months: fc.option(fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1 }), { nil: undefined }),
    modulesPerUnit: fc.option(fc.integer({ min: 1, max: 16 }), { nil: undefined }),
    stormLed: fc.option(fc.boolean(), { nil: undefined }),
    carriedOutBy: fc.option(fc.constantFrom('person' as const, 'switch' as const), { nil: undefined }),
    draws: fc.integer({ min: 1, max: 20_000 }),
    seed: fc.string({ minLength: 1, maxLength: 80, unit: 'grapheme-ascii' }),
  }),
  view: fc.record({
    alternativeId: fc.constantFrom(...choices.alternatives.map((a) => a.id)),
    strategyIds: fc.subarray(choices.strategies.map((s) => s.id)),
  }),
});

describe('the settings in a link', () => {
  it('come back as they were, whatever they are', () => {
    fc.assert(
      fc.property(anySettings, (settings) => {
        const { settings: back, complaints } = settingsFromHash(
          `#${settingsHash(settings, own)}`,
          own,
          choices,
        );
        expect(back).toEqual(settings);
        expect(complaints).toEqual([]);
      }),
    );
  });

  it('are not there at all when nothing was changed', () => {
    expect(settingsHash(own, own)).toBe('');
    expect(settingsFromHash('', own, choices).settings).toEqual(own);
  });

  it('never make a link unreadable: any text gives settings the page can use, or a complaint', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom('draws', 'modules', 'months', 'household', 'strategies'),
        (text, name) => {
          const { settings, complaints } = settingsFromHash(
            `#${name}=${encodeURIComponent(text)}`,
            own,
            choices,
          );
          const usual = JSON.stringify(settings) === JSON.stringify(own);
          expect(complaints.length === 0 || usual).toBe(true);
          expect(settings.run.draws).toBeGreaterThanOrEqual(1);
        },
      ),
    );
  });
});

describe('changedScenario(scenario, settings)', () => {
  it('is the very same scenario when nothing is changed', () => {
    expect(changedScenario(scenario, own.run)).toBe(scenario);
  });

  it('changes every household, and a fixed start gives way to months', () => {
    const fixed = { ...scenario, outage: { ...scenario.outage, startLocal: '2026-01-15T18:00' } };
    const run = {
      ...own.run,
      months: [7],
      modulesPerUnit: 3,
      stormLed: true,
      carriedOutBy: 'switch' as const,
    };
    const changed = changedScenario(fixed, run);
    expect(changed.outage).toMatchObject({ months: [7], stormLed: true });
    expect('startLocal' in changed.outage).toBe(false);
    for (const { household } of changed.alternatives) {
      expect(household.units.map((unit) => unit.battery.modules)).toEqual(household.units.map(() => 3));
      expect(new Set(household.strategies.map((s) => s.carriedOutBy))).toEqual(new Set(['switch']));
    }
    expect(fixed.outage.startLocal).toBe('2026-01-15T18:00');
  });
});

describe('changedWords(scenario, settings)', () => {
  it('has nothing to say where the settings say what the file says', () => {
    expect(changedWords(scenario, own.run)).toEqual([]);
    const { months, stormLed } = scenario.outage;
    expect(changedWords(scenario, { ...own.run, months, stormLed })).toEqual([]);
    const [first] = scenario.alternatives;
    const alone = { ...scenario, alternatives: [first!] };
    const modulesPerUnit = first!.household.units[0]!.battery.modules;
    expect(changedWords(alone, { ...own.run, modulesPerUnit })).toEqual([]);
  });

  it('says each change in words, and that a strategy’s name may no longer fit', () => {
    const run = {
      ...own.run,
      months: [12, 1, 2],
      stormLed: !scenario.outage.stormLed,
      modulesPerUnit: 3,
      carriedOutBy: 'switch' as const,
    };
    expect(changedWords(scenario, run)).toEqual([
      'begins in December to February',
      `the storm that took the grid ${run.stormLed ? 'is still overhead' : 'is not looked at'}`,
      '3 battery modules on each unit',
      'circuits are switched by an automatic switch, whatever a strategy’s name says',
    ]);
  });

  it('stands beside where an answer is from, and can be taken out again for files of the library', () => {
    const { summary } = studyInNode(scenario, { seed: 'changed', draws: 2 });
    expect(withChanges(summary, [])).toBe(summary);
    const changed = withChanges(summary, ['begins in July', '3 battery modules on each unit']);
    expect(provenanceText(changed.provenance)).toContain(
      `${scenario.title}. As changed here: begins in July; 3 battery modules on each unit. 2 simulated outages`,
    );
    expect(provenanceText(summary.provenance)).not.toContain('As changed');
    expect(withoutChanges(changed)).toEqual(summary);
  });
});

describe('so many modules on each unit', () => {
  const [first, second] = scenario.alternatives;
  const changedTo = (modulesPerUnit: number, alternatives = scenario.alternatives) =>
    changedScenario({ ...scenario, alternatives }, { ...own.run, modulesPerUnit }).alternatives;

  it('makes one of the households that differed in that alone, and calls it by what it has', () => {
    expect(changedTo(3).map(({ id, title }) => [id, title])).toEqual([
      ['modules-3', '3 battery modules on each unit'],
    ]);
    expect(standInFor(scenario, 3, second!.id)).toBe('modules-3');
    expect(standInFor(scenario, undefined, second!.id)).toBe(second!.id);
  });

  it('keeps an id and a title that are still true: those of the household that the change leaves as it is', () => {
    const modules = second!.household.units[0]!.battery.modules;
    expect(changedTo(modules)).toEqual([second]);
    for (const { id } of [first!, second!]) expect(standInFor(scenario, modules, id)).toBe(second!.id);
  });

  it('takes no id that the file already has for another household', () => {
    const named = [first!, { ...second!, id: 'modules-3' }];
    expect(changedTo(3, named).map(({ id }) => id)).toEqual(['modules-3-2']);
  });

  it('keeps households apart that differ in something else too, and says of each what was changed', () => {
    const alone = { ...second!.household, person: { ...second!.household.person, looksEveryMinutes: 7 } };
    const changed = changedTo(5, [first!, { ...second!, household: alone }]);
    expect(changed.map(({ id }) => id)).toEqual(['modules-5', 'modules-5-2']);
    expect(changed.map(({ title }) => title)).toEqual(
      [first!, second!].map(({ title }) => `${title}, but with 5 battery modules on each unit`),
    );
  });
});

describe('studyWords(scenario, …)', () => {
  it('says when the outages begin: by the scenario, or as a page that has months of its own says', () => {
    const { id } = scenario.alternatives[0]!;
    expect(studyWords(scenario, id)).toContain('beginning at any minute of ');
    const ofTheYear = studyWords(scenario, id, { clock: 24 }, 'in each month of the year in turn');
    expect(ofTheYear).toContain('beginning in each month of the year in turn');
    expect(ofTheYear).not.toContain('any minute of');
  });
});

describe('monthsText(months)', () => {
  it('names a run of months by its ends, past the new year too', () => {
    expect(monthsText([12, 1, 2])).toBe('December to February');
    expect(monthsText([1])).toBe('January');
    expect(monthsText([3, 7])).toBe('March, July');
    expect(monthsText([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])).toBe('any month');
    expect([[3, 7], [1, 4, 9], [5], [12, 1, 2]].map(anyOfMonths)).toEqual([
      'March or July',
      'January, April or September',
      'May',
      'December to February',
    ]);
  });
});
