/** The page "One battery or two?", opened from a file with the network off. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  gainInterval,
  gainLength,
  longestLasting,
  percent,
  reachCell,
  type EndCause,
  type Scenario,
} from '@rideout/sim';
import { comparison, verdictOf } from '../../packages/notebooks/src/charts/alternatives-comparison.ts';
import { dailyEnergy, deciderOf } from '../../packages/notebooks/src/charts/alternatives-energy.ts';
import { gainText } from '../../packages/notebooks/src/charts/gain-words.ts';
import { seasonsFinding } from '../../packages/notebooks/src/charts/season-gains.ts';
import { whatEndedTitle } from '../../packages/notebooks/src/charts/what-ended.ts';
import { strategyWords } from '../../packages/notebooks/src/page/strategy-note.ts';
import { withSecondHousehold } from '../../packages/notebooks/src/page/alternatives-page.ts';
import { seasonPlan } from '../../packages/notebooks/src/page/alternatives-seasons.ts';
import { changedScenario } from '../../packages/notebooks/src/page/changed-scenario.ts';
import { choicesOf, ownSettings } from '../../packages/notebooks/src/page/page-settings.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { fullHouse, smallHouse, studyInNode } from './houses.ts';
import {
  accessibility,
  harmDone,
  NO_HARM,
  pageBench,
  settled,
  standsStill,
  widthTaken,
} from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'one or two';
const DRAWS = 24;
const scenario = smallHouse();
const [one, two] = scenario.alternatives.map((a) => a.id) as [string, string];
const TIERS = 'tiers'; // the first strategy that switches anything off

const summaryOf = (of: Scenario) => studyInNode(of, { seed: SEED, draws: DRAWS }).summary;

/** Page, and then its seasons. */
async function bothSettled(page: Page): Promise<void> {
  await settled(page, 2);
  await page.locator('#season-gains').waitFor();
}

describe('the comparison in a season', () => {
  it('meets the same outages as the whole file does: narrowing it changes no figure', () => {
    const run = ownSettings({ scenario, seed: SEED, draws: DRAWS }, choicesOf(scenario)).run;
    const plan = seasonPlan(scenario, run, { alternativeId: two, strategyIds: [TIERS] });
    expect(plan.map((season) => season.title)).toEqual([
      'December to February',
      'March to May',
      'June to August',
      'September to November',
    ]);
    const whole = summaryOf(changedScenario(scenario, { ...run, months: [12, 1, 2] }));
    const narrow = summaryOf(plan[0]!.scenario);
    for (const id of [one, two]) {
      const cell = (s: typeof whole) =>
        s.strategies.find((c) => c.alternativeId === id && c.strategyId === TIERS)!;
      const { curve, nineInTenDays, medianDays, ends } = cell(whole);
      expect(cell(narrow)).toMatchObject({ curve, nineInTenDays, medianDays, ends });
      cell(whole).servedKWhByTier.forEach((kWh, tier) =>
        expect(cell(narrow).servedKWhByTier[tier]).toBeCloseTo(kWh, 10),
      );
    }
  });
});

describe('what is said of a comparison', () => {
  const compared = comparison(summaryOf(scenario), two, TIERS)!;
  const withGain = (value: number | null, low: number | null, high: number | null) => ({
    ...compared,
    gain: { ...compared.gain, nineInTenDays: { value, low, high } },
  });

  it('calls a gain one only where its interval leaves zero out and it is worth an hour', () => {
    expect(verdictOf(withGain(1, 0.5, 2))).toBe('longer');
    expect(verdictOf(withGain(1, -0.1, 2))).toBe('no difference');
    expect(verdictOf(withGain(0.01, 0.005, 0.02))).toBe('no difference');
    expect(verdictOf(withGain(-1, -2, -0.5))).toBe('shorter');
    expect(gainText(withGain(null, 2, null))).toContain('more than the 7\u00a0days simulated');
    expect(gainInterval({ value: 0.2, low: -0.1, high: 0.3 })).toBe(
      '95\u00a0% interval −3\u00a0to\u00a08\u00a0hours',
    );
  });

  it('tells of seasons what each shows: a gain, none, a loss, or more than was simulated', () => {
    const enough = (of: typeof compared) => ({ ...of, first: { ...of.first, draws: 30 } });
    const hidden = enough({
      ...withGain(null, null, null),
      first: { ...compared.first, nineInTenDays: { value: null, low: 6, high: null } },
      second: { ...compared.second, nineInTenDays: { value: null, low: 7, high: null } },
    });
    const [small, large, none, loss] = [
      [1, 0.5, 2],
      [3, 2, 4],
      [1, -0.1, 2],
      [-1, -2, -0.5],
    ].map(([value, low, high]) => enough(withGain(value!, low!, high!))) as [
      typeof compared,
      typeof compared,
      typeof compared,
      typeof compared,
    ];
    const said = (...of: (typeof compared)[]) =>
      seasonsFinding(of.map((one, i) => ({ season: `S${i + 1}`, compared: one })))
        .replaceAll('\u00a0', ' ')
        .replace(`“${compared.second.alternativeTitle}”`, '“It”');
    expect(said(small, large)).toBe('“It” gains least in S1 (1 day longer) and most in S2 (3 days longer)');
    expect(said(small, small)).toBe('“It” gains in every season worked out so far (1 day longer)');
    expect(said(small, hidden, none)).toBe(
      '“It” gains in S1 (1 day longer), shows no clear gain in S3; in S2 nine outages in ten last all 7 days simulated with both',
    );
    expect(said(hidden)).toBe('In S1 nine outages in ten last all 7 days simulated with both');
    expect(said(loss, none, none)).toBe('“It” lasts less long in S1, shows no clear gain in S2 and in S3');
    expect(said({ ...small, first: { ...small.first, draws: 29 } })).toMatch(
      /; 29 simulated outages are too few to tell$/,
    );
  });

  it('rounds a gain to the nearest, as its table does', () => {
    expect(
      [2.96, -2.96, 1.04, 0.98, 0.5, 0.02].map((days) => gainLength(days).replace('\u00a0', ' ')),
    ).toEqual(['3 days', '3 days', '1 day', '1 day', '12 hours', '29 minutes']);
    expect(gainText(withGain(2.17, 2, 3))).toBe('2.2\u00a0days longer');
  });

  it('says how many still run and what ends the others, where most still run, of the two compared', () => {
    const [first] = summaryOf(scenario).strategies.filter((s) => s.strategyId === TIERS);
    const end = (cause: EndCause, fraction: number) => ({ cause, unitId: null, fraction });
    const of = (title: string, ends: ReturnType<typeof end>[]) => ({
      ...first!,
      alternativeId: title,
      alternativeTitle: title,
      ends,
    });
    const summaries = [
      of('A', [end('battery empty', 0.61), end('still running', 0.39)]),
      of('B', [end('still running', 0.52), end('battery empty', 0.36), end('overload trip', 0.12)]),
      of('C', [end('still running', 1)]),
    ];
    const told = (alternativeId: string) =>
      whatEndedTitle(summaries, { alternativeId, legs: {} }).replaceAll('\u00a0', ' ');
    expect(told('B')).toBe(
      'What ends it. “A”: mostly battery empty (61 %). “B”: 52 % still run at the end; of those that end, mostly battery empty (75 %)',
    );
    expect(told('C')).toContain('“C”: all still run when the simulation ends');
    expect(told('C')).not.toContain('“B”');
  });

  it('names the sun, the inverters or an overload where one of them decides', () => {
    const means = (change: Record<string, number>) => ({
      ...compared,
      first: { ...compared.first, meanByColumn: { ...compared.first.meanByColumn, ...change } },
      second: { ...compared.second, meanByColumn: { ...compared.second.meanByColumn, ...change } },
    });
    const sun = { solarAvailableWh: 7000, solarUsedWh: 4000, solarStoredWh: 3000, solarCurtailedWh: 0 };
    expect(deciderOf(means({ ...sun, inverterLossWh: 1000 }))).toBe('no more sun');
    expect(deciderOf(means({ ...sun, inverterLossWh: 4000 }))).toBe('inverters');
    expect(deciderOf(means({ solarAvailableWh: 0 }))).toBe('no sun');
    const tripped = {
      ...compared.second,
      ends: [{ cause: 'overload trip', unitId: 'unit', fraction: 0.8 } as const],
    };
    expect(deciderOf({ ...compared, second: tripped })).toBe('overload');
    expect(dailyEnergy(means(sun).first, 7).caughtKWh).toBeCloseTo(1, 10);
  });

  it('gives a file with one household a second one, with a module more on each unit', () => {
    const alone = { ...scenario, alternatives: scenario.alternatives.slice(0, 1) };
    const [, more] = withSecondHousehold({ scenario: alone, seed: SEED, draws: 5 }).scenario.alternatives;
    expect(more!.household.units.map((unit) => unit.battery.modules)).toEqual([2]);
  });
});

describe('which strategy a page shows', () => {
  const house = fullHouse();
  const { summary } = studyInNode(house, { seed: 'shown', draws: 40 });
  const alternativeId = house.alternatives[0]!.id;
  const words = (strategyId: string, known: typeof summary | undefined) =>
    strategyWords(house, known, { alternativeId, strategyIds: [strategyId] }, 'Strategy');

  it('is said, with the one that lasts longest and whether that needs a switch', () => {
    const best = longestLasting(summary.strategies.filter((s) => s.alternativeId === alternativeId));
    const bySwitch = house.alternatives[0]!.household.strategies.find((s) => s.id === best.strategyId)!;
    const said = words('everything', summary);
    expect(said).toMatch(/^Shown is “Everything stays on”, which switches nothing off\./);
    expect(said).toContain(`“${best.strategyTitle}” lasts longest`);
    expect(said.includes('needs an automatic switch')).toBe(bySwitch.carriedOutBy === 'switch');
    expect(words(best.strategyId, summary)).toContain('None of the others is found to last longer.');
  });

  it('claims nothing about the others where there are no figures, or too few', () => {
    const few = { ...summary, strategies: summary.strategies.map((s) => ({ ...s, draws: 3 })) };
    for (const known of [undefined, few])
      expect(words('tiers-by-hand', known)).toMatch(
        /carried out by hand\. Choose another under “Strategy”\. .* may last longer, and needs? an automatic switch\.$/,
      );
  });
});

describe.skipIf(noBrowser())('the page "One battery or two?"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  /** Read only. */
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('one-battery-or-two', { scenario, seed: SEED, draws: DRAWS });
    whole = await bench.openForAll(file);
    await bothSettled(whole.page);
  }, 120_000);
  const open = (hash = '', options = {}) => bench.open(file, { hash, ...options });

  it('writes every name out on a phone, inside its picture', async () => {
    const { page } = await open('', { viewport: { width: 390, height: 844 } });
    await bothSettled(page);
    await standsStill(page);
    const lines = await page.locator('#paired-gains .chart-picture svg').evaluate((picture) => {
      const frame = picture.getBoundingClientRect();
      return [...picture.querySelectorAll('text')].map((text) => {
        const spans = [...text.querySelectorAll('tspan')];
        return {
          words: spans.length > 0 ? spans.map((span) => span.textContent).join(' ') : text.textContent,
          isInside: text.getBoundingClientRect().right <= frame.right + 1,
        };
      });
    });
    expect(lines.filter(({ isInside }) => !isInside)).toEqual([]);
    for (const { title } of scenario.alternatives[0]!.household.strategies)
      expect(lines.some(({ words }) => words.startsWith(`${title}: `))).toBe(true);
  }, 120_000);

  it('opens from a file, asks nothing of any network, and has nothing to complain of', async () => {
    const { page, requests, troubles } = whole;
    expect(await page.locator('.chart-picture svg').count()).toBe(4);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
    expect((await page.locator('.cautions').innerText()).toLowerCase()).toContain('licensed electrician');
  });

  it('says what Node works out: both times, the gain with its interval, what ended the runs, the energy', async () => {
    const { page } = whole;
    const compared = comparison(summaryOf(scenario), two, TIERS)!;
    const headline = await page.locator('.headline').innerText();
    expect(headline).toContain(gainText(compared));
    expect(headline).toContain(gainInterval(compared.gain.nineInTenDays));
    const rows = (chart: string) => page.locator(`#${chart} tbody tr`).allTextContents();
    const curves = await rows('alternative-curves');
    [compared.first, compared.second].forEach((s, i) =>
      expect(curves[i]).toContain(reachCell(s.nineInTenDays.value, compared.horizonDays)),
    );
    const ends = (await rows('what-ended')).join('\n');
    const empty = compared.first.ends.find((end) => end.cause === 'battery empty')!;
    expect(ends).toContain('Battery empty, L1 (unit)');
    expect(ends).toContain(percent(empty.fraction));
    const energy = await page.locator('section[aria-labelledby=why-title] tbody').textContent();
    expect(energy).toContain(dailyEnergy(compared.second, compared.horizonDays).servedKWh.toFixed(1));
  });

  it('shows in each season what Node works out for its months', async () => {
    const { page } = whole;
    const rows = await page.locator('#season-gains tbody tr').allTextContents();
    expect(rows).toHaveLength(8);
    const run = ownSettings({ scenario, seed: SEED, draws: DRAWS }, choicesOf(scenario)).run;
    const spring = summaryOf(changedScenario(scenario, { ...run, months: [3, 4, 5] }));
    const compared = comparison(spring, two, TIERS)!;
    expect(rows[3]).toContain('March to May');
    expect(rows[3]).toContain(reachCell(compared.second.nineInTenDays.value, compared.horizonDays));
    expect(rows[3]).toContain(gainText(compared));
  });

  it('works anew when a setting or the strategy changes, and keeps both in the link', async () => {
    const { page } = await open();
    await bothSettled(page);
    const season = await page.locator('#season-gains').innerText();
    await page.getByLabel('One of the strategies').selectOption({ label: 'Everything stays on' });
    await expect.poll(() => page.locator('.headline').innerText()).toContain('Everything stays on');
    await expect
      .poll(() => page.locator('#season-gains').innerText(), { timeout: 30_000 })
      .toContain('Everything stays on');
    expect(await page.locator('#season-gains').innerText()).not.toBe(season);
    await page.getByLabel('Seed').fill('another');
    await expect
      .poll(() => page.locator('#alternative-curves .provenance').innerText(), { timeout: 30_000 })
      .toContain('“another”');
    await bothSettled(page);
    expect(page.url()).toMatch(/strategies=everything.*seed=another/);
    const linked = await open(new URL(page.url()).hash);
    await bothSettled(linked.page);
    expect(await linked.page.locator('.headline').innerText()).toBe(
      await page.locator('.headline').innerText(),
    );
  });

  it('can be stopped in its seasons too, says so, and can go on', async () => {
    const { page } = await open('#draws=2000');
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await page.locator('.run').first().innerText()).toContain('Stopped.');
    expect(await page.locator('.run').last().innerText()).toContain('when the simulation above has settled');
  });

  for (const look of [
    { viewport: { width: 360, height: 740 }, colorScheme: 'dark' },
    { viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  ] as const) {
    it(`fits, and has nothing an accessibility check objects to (${look.viewport.width} px, ${look.colorScheme})`, async () => {
      const { page } = look.viewport.width === 1280 ? whole : await open('', look);
      await bothSettled(page);
      const { objections, passes } = await accessibility(page);
      expect(objections).toEqual([]);
      expect(passes).toBeGreaterThan(20);
      expect(await widthTaken(page)).toBeLessThanOrEqual(look.viewport.width);
    });
  }

  it('shows hostile names as text, and runs none of them', async () => {
    const IMAGE = '<img src=x onerror="globalThis.harm = 1">';
    const hostile: Scenario = {
      ...scenario,
      alternatives: scenario.alternatives.map((a, i) => ({
        ...a,
        title: `${i} ${IMAGE}`,
        household: {
          ...a.household,
          strategies: a.household.strategies.map((s) => ({ ...s, title: `${s.title} ${IMAGE}` })),
        },
      })),
    };
    const bad = await published('one-battery-or-two', { scenario: hostile, draws: 8 });
    const { page, troubles } = await bench.open(bad);
    await bothSettled(page);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('.answer').innerText()).toContain(IMAGE);
    expect(troubles).toEqual([]);
  });
});
