/** The page "Which strategy?", opened from a file with the network off. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { OUR_PAGES } from '@rideout/notebooks/publish';
import {
  askDrawsHere,
  askNeeds,
  atLeastThisLong,
  daysDown,
  prepareStudy,
  runShard,
  summarise,
  type Scenario,
  type StudySummary,
} from '@rideout/sim';
import { allNeedsDays, bestForNeeds, firstToGo } from '../../packages/notebooks/src/charts/need-endurance.ts';
import { switchingWords } from '../../packages/notebooks/src/page/strategy-switching.ts';
import { noBrowser, openFile, settled, startBrowser } from './browser.ts';
import { published, smallHouse, type PublishedFile } from './published.ts';

const SEED = 'which strategy';
const DRAWS = 20;
const scenario = smallHouse();
const pages = [OUR_PAGES['which-strategy']];

function summaryOf(of: Scenario): StudySummary {
  const study = prepareStudy(of, { seed: SEED });
  return summarise(study, runShard(study, 0, DRAWS));
}
const summary = summaryOf(scenario);
const firstHousehold = summary.strategies.filter((s) => s.alternativeId === scenario.alternatives[0]!.id);

describe.skipIf(noBrowser())('the page "Which strategy?"', () => {
  let browser: Browser;
  let file: PublishedFile;

  beforeAll(async () => {
    file = await published({ scenario, pages, seed: SEED, draws: DRAWS });
    browser = await startBrowser();
  }, 60_000);
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close(); // what still runs there stops
  });
  afterAll(async () => {
    await browser?.close();
    file?.remove();
  });

  const open = async (hash = '', options = {}) => {
    const opened = await openFile(browser, file.file, {
      viewport: { width: 1280, height: 900 },
      hash,
      ...options,
    });
    await settled(opened.page);
    await opened.page.locator('#family-needs').waitFor({ timeout: 60_000 });
    return opened;
  };
  const answer = (page: Page) => page.locator('.answer').innerText();

  it('opens from a file, asks nothing of any network, and says in its headline what Node works out', async () => {
    const { page, requests, troubles } = await open();
    const best = bestForNeeds(firstHousehold)!;
    expect(await answer(page)).toContain(`“${best.strategyTitle}”`);
    expect(await answer(page)).toContain(atLeastThisLong(Math.min(allNeedsDays(best), summary.horizonDays)));
    expect(await page.locator('.headline').innerText()).toContain(firstToGo(best)!.need);
    expect(await page.locator('.chart-picture > svg').count()).toBe(4);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('shows each need as a family would notice it, in the reader’s degrees', async () => {
    const told = await askNeeds(scenario, { seed: SEED, draws: DRAWS }, askDrawsHere);
    const own = told.figures.filter((f) => f.alternativeId === scenario.alternatives[0]!.id);
    const { page } = await open('#degrees=F', { locale: 'en-GB' });
    const chart = page.locator('#family-needs');
    const rows = await chart.locator('tbody tr').allTextContents();
    expect(rows).toHaveLength(own.length);
    expect(own.length).toBeGreaterThan(3);
    own.forEach(({ strategyTitle, nineInTenDays, hoursUnmet }, i) => {
      expect(rows[i]).toContain(strategyTitle);
      expect(rows[i]).toContain(daysDown(nineInTenDays.value, told.horizonDays));
      expect(rows[i]).toContain(hoursUnmet.mean.toFixed(1));
    });
    const words = () => chart.locator('#family-needs-words').textContent();
    expect(await words()).toContain('39.9\u00a0°F'); // 4.4 °C, of food
    await page.getByLabel('Temperatures').selectOption({ label: '°C' });
    await expect.poll(words).toContain('4.4\u00a0°C');
  });

  it('shows for every strategy and need the figures of Node, in the picture and in the table', async () => {
    const { page } = await open();
    const chart = page.locator('#needs-matrix');
    const rows = await chart.locator('tbody tr').allTextContents();
    const needs = firstHousehold[0]!.needs.length;
    expect(needs).toBeGreaterThan(2);
    expect(rows).toHaveLength(firstHousehold.length * (needs + 1));
    let compared = 0;
    for (const { strategyTitle, needs: each } of firstHousehold) {
      for (const { need, nineInTenDays, meanMinutesUnmet } of each) {
        const row = rows.find((text) => text.includes(strategyTitle) && text.includes(need))!;
        expect(row).toContain(daysDown(nineInTenDays.value, summary.horizonDays));
        expect(row).toContain((meanMinutesUnmet / 60).toFixed(1));
        compared++;
      }
    }
    expect(compared).toBe(firstHousehold.length * needs);
    expect(await chart.locator('.chart-picture rect').count()).toBe(rows.length);
    const tiers = await page.locator('#energy-by-tier tbody tr').allTextContents();
    const tier1 = firstHousehold.map((s) => [s.servedKWhByTier[0]!, s.unservedKWhByTier[0]!]);
    tier1.forEach(([served, unserved]) =>
      expect(tiers.some((t) => t.includes(served!.toFixed(1)) && t.includes(unserved!.toFixed(1)))).toBe(
        true,
      ),
    );
    const throws = await page.locator('#inconvenience tbody tr').allTextContents();
    firstHousehold.forEach((s, i) => expect(throws[i]).toContain(s.meanByColumn['switchThrows']!.toFixed(1)));
  });

  it('changes with the household and the strategies shown, and keeps them in the link', async () => {
    const { page } = await open();
    const second = scenario.alternatives[1]!;
    await page.getByLabel('One of the households').selectOption({ label: second.title });
    await expect.poll(() => page.locator('.headline').innerText()).toContain(second.title);
    expect(page.url()).toContain(`household=${second.id}`);
    const best = bestForNeeds(summary.strategies.filter((s) => s.alternativeId === second.id))!;
    expect(await answer(page)).toContain(best.strategyTitle);
    const strategies = scenario.alternatives[0]!.household.strategies;
    await page.getByLabel(strategies[0]!.title, { exact: true }).uncheck();
    await expect.poll(() => page.locator('#needs-matrix').textContent()).not.toContain(strategies[0]!.title);
    for (const { title } of strategies.slice(1)) await page.getByLabel(title, { exact: true }).uncheck();
    await expect.poll(() => answer(page)).toContain('Choose a strategy');
  });

  it('works anew with a setting changed', async () => {
    const { page } = await open();
    const before = await page.locator('#needs-matrix .provenance').innerText();
    await page.getByLabel('Circuits are switched').selectOption({ index: 2 });
    await expect
      .poll(() => page.locator('#needs-matrix .provenance').innerText(), { timeout: 30_000 })
      .not.toBe(before);
    await expect
      .poll(() => page.locator('.switching').innerText(), { timeout: 30_000 })
      .toContain('an automatic switch');
  });

  for (const [screen, width, colorScheme] of [
    ['phone, dark', 320, 'dark'],
    ['desktop, light', 1280, 'light'],
  ] as const) {
    it(`has nothing an accessibility check objects to, and fits its screen (${screen})`, async () => {
      const { page } = await open('', { viewport: { width, height: 800 }, colorScheme });
      for (const details of await page.locator('details').all())
        await details.evaluate((d) => d.setAttribute('open', ''));
      const { violations, passes } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((n) => n.html) }))).toEqual([]);
      expect(passes.length).toBeGreaterThan(20);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    });
  }

  it('shows hostile names as text', async () => {
    const name = '</script><img src=x onerror="globalThis.harm = 1">';
    const hostile: Scenario = {
      ...scenario,
      title: name,
      alternatives: scenario.alternatives.map((a) => ({
        ...a,
        title: name,
        household: {
          ...a.household,
          strategies: a.household.strategies.map((s, i) => ({ ...s, title: `${i} ${name}` })),
          circuits: a.household.circuits.map((c) => ({ ...c, title: name })),
        },
      })),
    };
    const bad = await published({ scenario: hostile, pages, draws: 5 });
    const { page, troubles } = await openFile(browser, bad.file);
    await settled(page);
    expect(await page.evaluate(() => (globalThis as { harm?: number }).harm)).toBeUndefined();
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.locator('#needs-matrix').textContent()).toContain(name);
    expect(troubles).toEqual([]);
    bad.remove();
  });
});

describe('switchingWords(scenario, study, household)', () => {
  const withTwin: Scenario = {
    ...scenario,
    alternatives: scenario.alternatives.map((a) => ({
      ...a,
      household: {
        ...a.household,
        strategies: [
          ...a.household.strategies,
          { ...a.household.strategies[1]!, id: 'twin', title: 'Its twin', carriedOutBy: 'switch' as const },
        ],
      },
    })),
  };
  const id = scenario.alternatives[0]!.id;

  it('compares the same rules by hand and by a switch, with their intervals', () => {
    const study = summaryOf(withTwin);
    const words = switchingWords(withTwin, study, id).join(' ');
    const person = study.strategies.find((s) => s.alternativeId === id && s.strategyId === 'tiers')!;
    const machine = study.strategies.find((s) => s.alternativeId === id && s.strategyId === 'twin')!;
    expect(words).toContain(`“${person.strategyTitle}”`);
    expect(words).toContain('“Its twin”');
    for (const { nineInTenDays } of [person, machine])
      expect(words).toContain(atLeastThisLong(nineInTenDays.value ?? study.horizonDays));
  });

  it('says that there is nothing to compare where there is not, and how to', () => {
    expect(switchingWords(scenario, summary, id).join(' ')).toMatch(
      /Every strategy here is carried out by a person.*Circuits are switched/,
    );
  });
});
