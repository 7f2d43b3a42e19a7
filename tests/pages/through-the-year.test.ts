/** The page "Through the year", opened from a file with the network off. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { reachCell, type Scenario, type StudySummary } from '@rideout/sim';
import {
  bestAndWorst,
  cellText,
  monthsTold,
  whyNotYet,
} from '../../packages/notebooks/src/charts/year-cells.ts';
import { columnFinding, yearFinding } from '../../packages/notebooks/src/charts/year-heat-map.ts';
import { changedScenario } from '../../packages/notebooks/src/page/changed-scenario.ts';
import { standInFor } from '../../packages/notebooks/src/page/modules-everywhere.ts';
import { choicesOf, ownSettings } from '../../packages/notebooks/src/page/page-settings.ts';
import { yearColumns } from '../../packages/notebooks/src/page/year-columns.ts';
import { yearPlan } from '../../packages/notebooks/src/page/year-plan.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { smallHouse, studyInNode } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, settled, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'the year';
const DRAWS = 6; // each twelve months times four or five columns
const scenario = smallHouse();
const one = scenario.alternatives[0]!;
const TIERS = 'tiers'; // the first strategy that switches anything off
const run = ownSettings({ scenario, seed: SEED, draws: DRAWS }, choicesOf(scenario)).run;
const view = { alternativeId: one.id, strategyIds: [TIERS] };

const summaryOf = (of: Scenario) => studyInNode(of, { seed: SEED, draws: DRAWS }).summary;
/** The household chosen, where there are so many modules on each unit. */
const cellOf = ({ strategies }: StudySummary, modules: number) =>
  strategies.find(
    (s) => s.alternativeId === standInFor(scenario, modules, one.id) && s.strategyId === TIERS,
  )!;

describe('the plan of a year', () => {
  it('has twelve months, and columns that change nothing but what they say', () => {
    const plan = yearPlan(scenario, run, view, 'modules');
    expect(plan.map((p) => p.scenario.outage.months)).toEqual(Array.from({ length: 12 }, (_, i) => [i + 1]));
    const modules = plan[0]!.scenario.alternatives.map((a) =>
      a.household.units.map((u) => u.battery.modules),
    );
    expect(modules).toEqual([[1], [2], [3], [4]]);
    expect(plan[0]!.scenario.alternatives.every((a) => a.household.strategies.length === 1)).toBe(true);
  });

  it('gives the figures that the whole file gives for that month and number of modules', () => {
    const july = summaryOf(yearPlan(scenario, run, view, 'modules')[6]!.scenario);
    for (const modules of [1, 3]) {
      const whole = summaryOf(changedScenario(scenario, { ...run, months: [7], modulesPerUnit: modules }));
      const cell = cellOf(whole, modules);
      const planned = july.strategies.find((s) => s.alternativeId === `modules-${modules}`)!;
      expect(planned.nineInTenDays).toEqual(cell.nineInTenDays);
      expect(planned.curve).toEqual(cell.curve);
    }
  });

  it('scales the panels and leaves the input limit; no panels is no solar at all', () => {
    const [none, half, own, , double] = yearPlan(scenario, run, view, 'solar')[0]!.scenario.alternatives;
    const solar = (a: typeof none) => a!.household.units[0]!.solar;
    const filed = one.household.units[0]!.solar!;
    expect(solar(none)).toBeUndefined();
    expect(solar(own)).toEqual(filed);
    expect(solar(half)!.arrays[0]!.peakW).toBe(filed.arrays[0]!.peakW / 2);
    expect(solar(double)!.arrays[0]!.peakW).toBe(filed.arrays[0]!.peakW * 2);
    expect(solar(double)!.inputLimitW).toBe(filed.inputLimitW);
  });

  it('keeps a column for a household whose units differ, or whose stack is taller than those tried', () => {
    const [unit] = one.household.units;
    const units = (...modules: number[]) =>
      modules.map((n) => ({ ...unit!, battery: { ...unit!.battery, modules: n } }));
    const own = (...modules: number[]) =>
      yearColumns({ ...one.household, units: units(...modules) }, 'modules').filter((c) => c.own);
    expect(own(6, 6).map((c) => c.id)).toEqual(['modules-6']);
    expect(own(1, 2).map((c) => c.id)).toEqual(['as-it-is']);
  });
});

describe('what is said of a year', () => {
  const column = { id: 'a', label: '1', words: 'one', own: true };
  const cell = (
    month: string,
    value: number | null,
    low: number | null,
    high: number | null,
    draws = 100,
  ) => ({ month, column, days: { value, low, high }, draws });
  const toCome = (month: string) => ({ month, column, days: undefined, draws: 0 });
  const [may, june] = [cell('May', 0.4, 0.3, 0.6), cell('June', 2.4, 2, 3)];

  it('compares no months before all of them stand on equally many outages', () => {
    expect(columnFinding([may, toCome('June')], 14)).toBe(
      'the months cannot be compared yet, 1 month is still to come',
    );
    expect(whyNotYet([toCome('May'), toCome('June')])).toBe('2 months are still to come');
    expect(columnFinding([may, cell('June', 0.4, 0.3, 0.6, 20)], 14)).toBe(
      'the months cannot be compared yet, they do not all rest on equally many outages',
    );
  });

  it('ends a chart’s title as other titles end when outages are too few, and only then', () => {
    const said = (draws: number) =>
      yearFinding(
        [may, june].map((of) => ({ ...of, draws })),
        14,
      ).replaceAll('\u00a0', ' ');
    expect(said(20)).toBe(
      'With one: 9 hours to 2.4 days, by month; 20 simulated outages are too few to tell',
    );
    expect(said(30)).toBe('With one: 9 hours in May, 2.4 days in June');
    expect(yearFinding([{ ...may, draws: 20 }, toCome('June')], 14)).not.toContain('to tell');
  });

  it('tells too few outages from months that hardly differ', () => {
    const said = (of: Parameters<typeof columnFinding>[0], days: number) =>
      columnFinding(of, days).replaceAll('\u00a0', ' ');
    expect(said([may, june], 14)).toBe('9 hours in May, 2.4 days in June');
    const overlapping = [may, cell('June', 2.4, 0.5, 3)];
    expect(said(overlapping, 14)).toBe('too few outages to tell the months apart (9 hours to 2.4 days)');
    const few = [may, june].map((of) => ({ ...of, draws: 20 }));
    expect(said(few, 14)).toContain('too few outages to tell the months apart');
    expect(monthsTold([20, 20].map((draws) => cell('May', 1, 0.5, 2, draws)))).toBe('too few');
    expect(said([cell('May', 2.3, 2, 3), june], 14)).toBe(
      'months hardly differ (2.3 days in May, 2.4 days in June)',
    );
    expect(said([cell('May', 0.3, 0.2, 0.6), cell('June', 0.34, 0.3, 0.7)], 14)).toContain('hardly differ');
    expect(said([cell('May', null, 9, null), cell('June', null, 8, null)], 14)).toBe(
      '14 days or more in every month',
    );
  });

  it('names every month that is worst or best', () => {
    const year = [cell('May', 0.4, 0.3, 0.6), cell('June', null, 6, null), cell('July', null, 5, null)];
    const extremes = bestAndWorst(year);
    expect(extremes.worst.map((c) => c.month)).toEqual(['May']);
    expect(extremes.best.map((c) => c.month)).toEqual(['June', 'July']);
    expect(monthsTold(year)).toBe('apart');
    expect(year.map((c) => cellText(c, 14))).toEqual(['9\u00a0h', '≥\u00a014\u00a0d', '≥\u00a014\u00a0d']);
  });
});

describe.skipIf(noBrowser())('the page "Through the year"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  /** Read only. */
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('through-the-year', { scenario, seed: SEED, draws: DRAWS });
    whole = await bench.openForAll(file, { colorScheme: 'dark' });
    await settled(whole.page);
  }, 120_000);
  const open = (hash = '', options = {}) => bench.open(file, { hash, ...options });
  const rows = (page: Page) => page.locator('#year-heat-map tbody tr').allTextContents();

  it('opens from a file, asks nothing of any network, and has a figure in every cell', async () => {
    const { page, requests, troubles } = whole;
    const figures = await page.locator('#year-heat-map .chart-picture text').allTextContents();
    expect(figures.filter((text) => /\d\u00a0[hd]$/.test(text))).toHaveLength(48);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
    expect((await page.locator('.cautions').innerText()).toLowerCase()).toContain('licensed electrician');
  });

  it('shows in its table what Node works out for the same month, modules, seed and draws', async () => {
    const { page } = whole;
    const table = await rows(page);
    expect(table).toHaveLength(12);
    for (const month of [1, 7]) {
      const summary = summaryOf(changedScenario(scenario, { ...run, months: [month], modulesPerUnit: 2 }));
      const cell = cellOf(summary, 2);
      const cells = await page
        .locator('#year-heat-map tbody tr')
        .nth(month - 1)
        .locator('td')
        .allTextContents();
      expect(cells[1]).toContain(reachCell(cell.nineInTenDays.value, summary.horizonDays));
    }
    expect(await page.locator('.answer').innerText()).toMatch(
      /^Too few outages to tell the months apart: nine outages in ten hold for/,
    );
    expect(await page.locator('#year-heat-map .chart-title').innerText()).toMatch(
      /; 6 simulated outages are too few to tell$/,
    );
  });

  it('works anew for panels in the place of modules, and another seed, and keeps both in the link', async () => {
    const { page } = await open();
    await settled(page);
    const before = await rows(page);
    await page.getByLabel('What is changed').selectOption({ label: 'more or fewer solar panels' });
    await expect
      .poll(() => page.locator('#year-heat-map thead').textContent(), { timeout: 30_000 })
      .toContain('2\u00a0×');
    await settled(page);
    await page.getByLabel('Seed').fill('another');
    await expect
      .poll(() => page.locator('#year-heat-map .provenance').innerText(), { timeout: 30_000 })
      .toContain('“another”');
    await settled(page);
    expect(await rows(page)).not.toEqual(before);
    expect(page.url()).toMatch(/seed=another.*across=solar|across=solar.*seed=another/);
    const linked = await open(new URL(page.url()).hash);
    await settled(linked.page);
    expect(await rows(linked.page)).toEqual(await rows(page));
  });

  it('shows coarse months first, can be stopped, says so, and can go on', async () => {
    const { page } = await open('#draws=2000');
    await expect
      .poll(() => page.locator('#year-heat-map .chart-note').textContent(), { timeout: 30_000 })
      .toContain('So far 20 outages');
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await page.locator('.run').innerText()).toContain('Stopped.');
    await page.getByRole('button', { name: 'Run again' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
  });

  it('says which part of a link it cannot follow', async () => {
    const { page } = await open('#draws=lots&across=wind');
    await settled(page);
    expect(await page.getByRole('alert').innerText()).toMatch(/draws = “lots”[\s\S]*across = “wind”/);
  });

  for (const look of [
    { viewport: { width: 360, height: 740 }, colorScheme: 'light' },
    { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' },
  ] as const) {
    it(`fits, and has nothing an accessibility check objects to (${look.viewport.width} px, ${look.colorScheme})`, async () => {
      const { page } = look.viewport.width === 1280 ? whole : await open('', look);
      await settled(page);
      const { objections, passes } = await accessibility(page);
      expect(objections).toEqual([]);
      expect(passes).toBeGreaterThan(20);
      expect(await widthTaken(page)).toBeLessThanOrEqual(look.viewport.width);
    });
  }

  it('shows hostile names as text, and runs none of them', async () => {
    const IMAGE = '<img src=x onerror="globalThis.harm = 1">';
    const strategies = one.household.strategies.map((s) => ({ ...s, title: `${s.title} ${IMAGE}` }));
    const hostile: Scenario = {
      ...scenario,
      title: IMAGE,
      alternatives: [{ ...one, title: IMAGE, household: { ...one.household, strategies } }],
    };
    const bad = await published('through-the-year', { scenario: hostile, draws: 4 });
    const { page, troubles } = await bench.open(bad);
    await settled(page);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('.headline').innerText()).toContain(IMAGE);
    expect(troubles).toEqual([]);
  });
});
