/** The page "Which strategy?", opened from a file with the network off. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { askDrawsHere, askNeeds, atLeastThisLong, reachCell, type Scenario } from '@rideout/sim';
import { needsFinding } from '../../packages/notebooks/src/charts/family-needs.ts';
import { matrixFinding } from '../../packages/notebooks/src/charts/needs-matrix.ts';
import { allNeedsDays, bestForNeeds, firstToGo } from '../../packages/notebooks/src/charts/need-endurance.ts';
import { switchingWords } from '../../packages/notebooks/src/page/strategy-switching.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { smallHouse, studyInNode } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, settled, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'which strategy';
const DRAWS = 20;
const ENOUGH = 30; // outages that can tell what nine in ten reach
const scenario = smallHouse();
const { summary } = studyInNode(scenario, { seed: SEED, draws: DRAWS });
const firstHousehold = summary.strategies.filter((s) => s.alternativeId === scenario.alternatives[0]!.id);

describe('which strategy keeps needs met longest', () => {
  const strategy = (title: string, days: Record<string, number>) => ({
    ...firstHousehold[0]!,
    draws: ENOUGH,
    strategyId: title,
    strategyTitle: title,
    needs: Object.entries(days).map(([need, value]) => ({
      ...firstHousehold[0]!.needs[0]!,
      need,
      nineInTenDays: { value, low: value, high: value },
    })),
  });

  it('is said of every need only where it is true of every need', () => {
    const plain = strategy('Plain', { food: 3, water: 1 });
    expect(matrixFinding([plain, strategy('Better', { food: 4, water: 2 })], 14)).toMatch(
      /^“Better” keeps every need met longest: 2.days/,
    );
    expect(matrixFinding([plain, strategy('Wetter', { food: 2.5, water: 2 })], 14)).toMatch(
      /^With “Wetter” it takes longest until any need goes unmet: 2.days in nine outages in ten, water first/,
    );
  });
});

describe('titles about needs', () => {
  const ENDING = /; 6 simulated outages are too few to tell$/;

  it('say so where outages are too few to tell, and only there', async () => {
    const matrix = (draws: number) =>
      matrixFinding(
        firstHousehold.map((s) => ({ ...s, draws })),
        14,
      );
    expect(matrix(6)).toMatch(ENDING);
    expect(matrix(ENOUGH)).not.toContain('to tell');
    const answer = await askNeeds(scenario, { seed: SEED, draws: 6 }, askDrawsHere);
    const family = (draws: number) =>
      needsFinding(answer.figures, { ...answer, provenance: { ...answer.provenance, draws } });
    expect(family(6)).toMatch(ENDING);
    expect(family(ENOUGH)).not.toContain('to tell');
    expect(needsFinding([], answer)).toBe('No strategy is chosen');
  });
});

describe.skipIf(noBrowser())('the page "Which strategy?"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  /** Read only. */
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('which-strategy', { scenario, seed: SEED, draws: DRAWS });
    whole = await bench.openForAll(file);
    await complete(whole.page);
  }, 120_000);

  /** The study, and then each need as a family would notice it. */
  const complete = async (page: Page) => {
    await settled(page, 2);
    await page.locator('#family-needs').waitFor();
  };
  const open = async (hash = '', options = {}) => {
    const opened = await bench.open(file, { hash, ...options });
    await complete(opened.page);
    return opened;
  };
  const answer = (page: Page) => page.locator('.answer').innerText();

  it('opens from a file, asks nothing of any network, and says in its headline what Node works out', async () => {
    const { page, requests, troubles } = whole;
    const best = bestForNeeds(firstHousehold)!;
    expect(await answer(page)).toContain(`“${best.strategyTitle}”`);
    expect(await answer(page)).toContain(atLeastThisLong(Math.min(allNeedsDays(best), summary.horizonDays)));
    expect(await page.locator('.headline').innerText()).toContain(firstToGo(best)!.need);
    expect(await page.locator('.chart-picture > svg').count()).toBe(4);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('says in the open why a need can last longer in the second chart of needs', async () => {
    expect(await whole.page.locator('p', { hasText: 'what is in store counts too' }).isVisible()).toBe(true);
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
      expect(rows[i]).toContain(reachCell(nineInTenDays.value, told.horizonDays));
      expect(rows[i]).toContain(hoursUnmet.mean.toFixed(1));
    });
    const words = () => chart.locator('#family-needs-words').textContent();
    expect(await words()).toContain('40\u00a0°F'); // 4.4 °C, of food
    await page.getByLabel('Temperatures').selectOption({ label: '°C' });
    await expect.poll(words).toContain('4.4\u00a0°C');
  });

  it('shows for every strategy and need the figures of Node, in the picture and in the table', async () => {
    const { page } = whole;
    const chart = page.locator('#needs-matrix');
    expect(await chart.locator('.chart-note').innerText()).toContain('The stronger the colour, the longer'); // in the dark too
    const rows = await chart.locator('tbody tr').allTextContents();
    const needs = firstHousehold[0]!.needs.length;
    expect(needs).toBeGreaterThan(2);
    expect(rows).toHaveLength(firstHousehold.length * (needs + 1));
    let compared = 0;
    for (const { strategyTitle, needs: each } of firstHousehold) {
      for (const { need, nineInTenDays, meanMinutesUnmet } of each) {
        const row = rows.find((text) => text.includes(strategyTitle) && text.includes(need))!;
        expect(row).toContain(reachCell(nineInTenDays.value, summary.horizonDays));
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
      const { page } =
        width === 1280 ? whole : await open('', { viewport: { width, height: 800 }, colorScheme });
      const { objections, passes } = await accessibility(page);
      expect(objections).toEqual([]);
      expect(passes).toBeGreaterThan(20);
      expect(await widthTaken(page)).toBeLessThanOrEqual(width);
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
    const bad = await published('which-strategy', { scenario: hostile, draws: 5 });
    const { page, troubles } = await bench.open(bad);
    await complete(page);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('#needs-matrix').textContent()).toContain(name);
    expect(troubles).toEqual([]);
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
    const study = studyInNode(withTwin, { seed: SEED, draws: DRAWS }).summary;
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
