/** The page "How many days?", opened from a file with the network off. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { csvParse } from 'd3-dsv';
import { atLeastThisLong, longestLasting } from '@rideout/sim';
import { curvesTable } from '../../packages/notebooks/src/charts/curves-table.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { smallHouse, studyInNode } from './houses.ts';
import { pageBench, savedFrom, settled } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'page test';
const DRAWS = 30;
const scenario = smallHouse();

describe.skipIf(noBrowser())('the page "How many days?"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  /** Read only. */
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('how-many-days', { scenario, seed: SEED, draws: DRAWS });
    whole = await bench.openForAll(file);
    await settled(whole.page);
  }, 120_000);

  const open = (hash = '') => bench.open(file, { hash });
  const answer = (page: Page) => page.locator('.answer').innerText();

  it('opens from a file, asks nothing of any network, and has nothing to complain of', async () => {
    const { page, requests, troubles } = whole;
    expect(await page.locator('.chart-picture svg').count()).toBe(2);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('says in its headline what Node works out for the same scenario, seed and draws', async () => {
    const { page } = whole;
    const { summary } = studyInNode(scenario, { seed: SEED, draws: DRAWS });
    const first = summary.strategies.filter((s) => s.alternativeId === scenario.alternatives[0]!.id);
    const best = longestLasting(first);
    const days = best.nineInTenDays.value;
    expect(await answer(page)).toContain(`“${best.strategyTitle}”`);
    expect(await answer(page)).toContain(atLeastThisLong(days ?? summary.horizonDays));
    expect(await page.locator('#survival-curves .provenance').innerText()).toContain(
      summary.provenance.scenarioHash,
    );
  });

  it('does not claim to know from one outage, and counts it as one', async () => {
    const { page } = await open('#draws=1');
    await settled(page);
    const said = await page.locator('.headline').innerText();
    expect(said).toMatch(/^So few outages cannot tell yet what nine in ten reach\./);
    expect(said).toContain('from 1 simulated outage.');
    expect(await page.locator('body').innerText()).not.toMatch(/\b1 (simulated )?outages/);
    for (const chart of ['survival-curves', 'what-changes'])
      expect(await page.locator(`#${chart} .chart-title`).innerText()).toMatch(
        /; 1 simulated outage is too few to tell$/,
      );
    expect(await answer(whole.page)).toMatch(/^In nine outages in ten/);
    expect(await whole.page.locator('body').innerText()).not.toContain('too few to tell');
  });

  it('says when a number cannot be, what can, and what is still shown, until it is mended', async () => {
    const { page } = await open();
    const draws = page.getByRole('spinbutton', { name: 'Simulated outages' });
    await draws.fill('99999999');
    const note = page.locator('.setting-fault').first();
    expect(await note.innerText()).toBe(
      `A whole number from 1 to 20\u00a0000, please; still showing ${DRAWS}.`,
    );
    expect(await draws.getAttribute('aria-invalid')).toBe('true');
    expect(await draws.getAttribute('aria-describedby')).toBe(await note.getAttribute('id'));
    expect(page.url()).not.toContain('draws');
    await draws.fill('12');
    expect(await note.innerText()).toBe('');
    expect(await draws.getAttribute('aria-invalid')).toBe(null);
    await draws.fill('');
    await draws.blur();
    expect(await note.innerText()).toContain('still showing 12');
  });

  it('works anew when a setting changes, and keeps the setting in the link', async () => {
    const { page } = await open();
    await settled(page);
    const before = await page.locator('#survival-curves .provenance').innerText();
    await page.getByLabel('Battery modules on each unit').selectOption({ label: '6' });
    await page.locator('.run', { hasText: 'outages simulated' }).waitFor();
    await expect
      .poll(() => page.locator('#survival-curves .provenance').innerText(), { timeout: 30_000 })
      .not.toBe(before);
    await settled(page);
    expect(page.url()).toContain('modules=6');
    expect(await page.locator('.headline').innerText()).toContain('6 battery modules on each unit');
    expect(await page.locator('body').innerText()).not.toMatch(/(One|Two) modules?/);
    const linked = await open(new URL(page.url()).hash);
    await settled(linked.page);
    expect(await answer(linked.page)).toBe(await answer(page));
    expect(
      await linked.page.getByLabel('Battery modules on each unit').locator('option:checked').innerText(),
    ).toBe('6');
  });

  it('gives other figures for another seed, and the first ones again for the first seed', async () => {
    const { page } = await open('#seed=another');
    await settled(page);
    const provenance = () => page.locator('#survival-curves .provenance').innerText();
    const sentence = () => page.locator('#survival-curves .chart-key').innerText();
    expect(await provenance()).toContain('“another”');
    const other = await sentence();
    await page.getByLabel('Seed').fill(SEED);
    await expect.poll(provenance, { timeout: 30_000 }).toContain(`“${SEED}”`);
    await settled(page);
    expect(await sentence()).not.toBe(other);
    expect(page.url()).not.toContain('seed=');
  });

  it('shows another household or fewer strategies without simulating again', async () => {
    const { page } = await open();
    await settled(page);
    const second = scenario.alternatives[1]!;
    await page.getByLabel('One of the households').selectOption({ label: second.title });
    await expect.poll(() => page.locator('.headline').innerText()).toContain(second.title);
    expect(await page.locator('.run').innerText()).toContain('Settled');
    const strategies = scenario.alternatives[0]!.household.strategies;
    const keys = page.locator('#survival-curves .chart-key li');
    expect(await keys.count()).toBe(strategies.length);
    await page.getByLabel(strategies[0]!.title, { exact: true }).uncheck();
    await expect.poll(() => keys.count()).toBe(strategies.length - 1);
    for (const { title } of strategies.slice(1)) await page.getByLabel(title, { exact: true }).uncheck();
    await expect.poll(() => answer(page)).toContain('Choose a strategy');
  });

  it('can be stopped, says so, and can go on', async () => {
    const { page } = await open('#draws=5000');
    await page.locator('#survival-curves').waitFor();
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await page.locator('.run').innerText()).toMatch(/Stopped\. What is shown is of \d+ outages\./);
    await page.getByRole('button', { name: 'Run again' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
  });

  it('says which part of a link it cannot follow, and goes on with the usual setting', async () => {
    const { page, troubles } = await open('#modules=plenty&months=13&household=palace');
    await settled(page);
    const said = await page.locator('.trouble').innerText();
    for (const part of ['modules = “plenty”', 'months = “13”', 'household = “palace”'])
      expect(said).toContain(part);
    expect(troubles).toEqual([]);
  });

  it('says what to do when the simulation fails', async () => {
    const broken = await published('how-many-days', {
      scenario: { ...scenario, site: { ...scenario.site, timeZone: 'Nowhere/At_All' } },
      draws: 5,
    });
    const { page } = await bench.open(broken);
    const trouble = page.locator('.run .trouble');
    await trouble.waitFor();
    expect(await trouble.innerText()).toMatch(/The simulation stopped\..*Put the settings back/s);
  });

  it('shows the figures it was published with before anything has run, and runs on request', async () => {
    const { summary } = studyInNode(scenario, { seed: 'published', draws: 20 });
    const { page, troubles } = await bench.open(await published('how-many-days', { scenario, summary }));
    await page.locator('#survival-curves').waitFor();
    expect(await page.locator('.run').innerText()).toContain(
      'Worked out from 20 simulated outages when this page was made',
    );
    const before = await page.locator('#survival-curves').innerText();
    await page.getByRole('button', { name: 'Work it out again here' }).click();
    await settled(page);
    expect(await page.locator('#survival-curves').innerText()).toBe(before);
    expect(troubles).toEqual([]);
  });

  it('saves each chart as a picture that says what it is and where it is from, and its table with full figures', async () => {
    for (const chart of ['survival-curves', 'what-changes']) {
      const save = (label: string) => savedFrom(whole.page, `#${chart}`, label);
      const svg = (await save('Save as SVG')).toString('utf8');
      expect(svg).toContain('seed “page test”');
      expect(svg).not.toMatch(/var\(|<script|href="http/);
      const png = await save('Save as PNG');
      expect(png.subarray(1, 4).toString()).toBe('PNG');
      expect(png.length).toBeGreaterThan(5000);
      const csv = (await save('Save the table as CSV')).toString('utf8').trim().split('\n');
      expect(csv.length).toBeGreaterThan(4);
      expect(csv[0]).toMatch(/^alternative,alternativeTitle,strategy,strategyTitle,.*,study$/);
      for (const line of csv.slice(1))
        expect(line).toMatch(/,"[^"]*seed “page test”[^"]*Scenario [0-9a-f]{12}/);
    }
  });

  it('calls the household in its files by what it has, where a setting made several alike', async () => {
    const second = scenario.alternatives[1]!;
    const modules = second.household.units[0]!.battery.modules;
    for (const [asked, id, title] of [
      [modules, second.id, second.title],
      [6, 'modules-6', '6 battery modules on each unit'],
    ] as const) {
      const { page } = await open(`#modules=${asked}`);
      await settled(page);
      for (const chart of ['survival-curves', 'what-changes']) {
        const csv = await savedFrom(page, `#${chart}`, 'Save the table as CSV');
        const rows = csvParse(csv.toString('utf8')).map((row) => [
          row['alternative'],
          row['alternativeTitle'],
        ]);
        expect(new Set(rows.map(String))).toEqual(new Set([String([id, title])]));
      }
      const choice = page.getByLabel('One of the households').locator('option:not([hidden])');
      expect(await choice.allInnerTexts()).toEqual([title]);
    }
  });

  it('says beside each figure, in its files and in the line of the run what was changed from the file', async () => {
    const { page } = await open('#months=4&modules=6&by=switch');
    await settled(page);
    const words =
      'As changed here: begins in April; 6 battery modules on each unit; ' +
      'circuits are switched by an automatic switch, whatever a strategy’s name says.';
    expect((await page.locator('.run').innerText()).replace(/\s+/g, ' ')).toContain(words);
    for (const chart of ['survival-curves', 'what-changes']) {
      expect(await page.locator(`#${chart} .provenance`).innerText()).toContain(words);
      const csv = (await savedFrom(page, `#${chart}`, 'Save the table as CSV')).toString('utf8');
      for (const { study } of csvParse(csv)) expect(study).toContain(words);
      const svg = (await savedFrom(page, `#${chart}`, 'Save as SVG')).toString('utf8');
      const said = svg.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
      expect(said).toContain(words);
    }
    expect(await whole.page.locator('main').innerText()).not.toContain('As changed here');
  });

  it('saves curves without the noise of adding up: the first day below 0.9 is the day that nine in ten reach', () => {
    for (const alternative of scenario.alternatives) {
      const one = { ...scenario, alternatives: [alternative] };
      const { strategies, horizonDays } = studyInNode(one, { seed: SEED, draws: 20 }).summary;
      const rows = curvesTable(strategies, horizonDays).exact;
      for (const { strategyId, nineInTenDays } of strategies) {
        const curve = rows.filter((row) => row['strategy'] === strategyId);
        const below = curve.find((row) => Number(row['survival']) < 0.9);
        expect(below?.['day'] ?? null).toBe(nineInTenDays.value);
      }
    }
  });

  it('says beside a chart of one household of several which one it is', async () => {
    const from = (chart: string) => whole.page.locator(`#${chart} .provenance`).innerText();
    const [first] = scenario.alternatives;
    expect(await from('survival-curves')).toContain(`${scenario.title}: ${first!.title}. `);
    expect(await from('what-changes')).toContain(`${scenario.title}. `);
  });

  it('carries the usual cautions', async () => {
    const cautions = (await whole.page.locator('.cautions').innerText()).toLowerCase();
    for (const word of [
      'licensed electrician',
      'transfer equipment',
      'interlock',
      'backfeed',
      'outdoors',
      'carbon monoxide',
      'life-supporting',
      'local code',
    ]) {
      expect(cautions).toContain(word);
    }
  });
});
