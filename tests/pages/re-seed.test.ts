/** The page "Re-seed", opened from a file with the network off. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromArrow, fromCSV } from 'arquero';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  askDrawsHere,
  exportFiles,
  reachCell,
  runningEstimate,
  whatMatters,
  type Scenario,
} from '@rideout/sim';
import type { InputMatters } from '@rideout/sim';
import { sharesFinding } from '../../packages/notebooks/src/charts/input-shares.ts';
import { commandText } from '../../packages/notebooks/src/page/reseed-repeat.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { fileOf, smallHouse, studyInNode } from './houses.ts';
import {
  accessibility,
  harmDone,
  NO_HARM,
  pageBench,
  savedFrom,
  settled,
  standsStill,
  widthTaken,
} from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'seeds and seeds';
const DRAWS = 24;
const ROWS = 20;
const HASH = `#rows=${ROWS}&seeds=3`;
const TIERS = 1; // position of the first strategy that switches anything off
const scenario = smallHouse();
const LINES = 3; // that run something: the study, the seeds and what matters
const own = studyInNode(scenario, { seed: SEED, draws: DRAWS });
const cell = own.summary.strategies[TIERS]!;

describe('the commands that repeat the page', () => {
  const study = {
    file: 'a.yaml',
    run: { seed: `it's`, draws: 5, months: [1, 7] },
    alternative: { id: 'one', position: 0 },
    strategy: { id: 'two', position: 1 },
    repeats: { seeds: 2, rows: 30 },
  };

  it('name everything, and keep a seed with a quote in it whole for a shell', () => {
    expect(commandText(study).trim().split('\n')).toEqual([
      `rideout days a.yaml --seed 'it'\\''s' --draws 5 --months 1,7 --out outcomes`,
      `rideout days a.yaml --seed 'it'\\''s-2' --draws 5 --months 1,7`,
      `rideout matters a.yaml --seed 'it'\\''s' --draws 30 --months 1,7 --alternative one --strategy two`,
    ]);
  });
});

describe('what the shares of the inputs say', () => {
  const input = (title: string, value: number, low: number, high: number) =>
    ({ title, total: { value, low, high } }) as InputMatters;
  const said = (...inputs: InputMatters[]) => sharesFinding({ inputs, togetherFraction: 0 });

  it('ranks inputs only where their intervals lie apart', () => {
    expect(said(input('Weather', 0.6, 0.5, 0.7), input('Hour', 0.2, 0.1, 0.3))).toMatch(
      /^Most of the scatter of the days has to do with weather \(60.%\), then hour \(20.%\)$/,
    );
    expect(said(input('Weather', 0.6, 0.2, 0.9), input('Hour', 0.5, 0.1, 0.8))).toMatch(
      /cannot be ranked: the intervals of weather \(60.%\), hour \(50.%\) overlap$/,
    );
  });

  it('never gives more than all of it', () => {
    const told = said(input('Usage', 1.02, 0.9, 1.2), input('Hour', 1.01, 0.8, 1.3));
    expect(told).toContain('usage (nearly all of it), hour (nearly all of it)');
    expect(told).not.toMatch(/1\d\d.%/);
  });
});

describe.skipIf(noBrowser())('the page "Re-seed"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('re-seed', { scenario, seed: SEED, draws: DRAWS });
    whole = await bench.openForAll(file, { locale: 'en-GB', hash: HASH });
    await settled(whole.page, LINES);
  }, 120_000);

  const open = (hash: string, options = {}) => bench.open(file, { locale: 'en-GB', hash, ...options });
  const table = async (page: Page, chart: string) =>
    fromCSV((await savedFrom(page, chart, 'Save the table as CSV')).toString('utf8')).objects() as Record<
      string,
      unknown
    >[];

  it('opens from a file, asks nothing of any network, and draws its four charts', async () => {
    expect(await whole.page.locator('figure.chart .chart-picture').count()).toBe(4);
    expect(whole.requests).toEqual([]);
    expect(whole.troubles).toEqual([]);
  });

  it('shows the estimate that Node works out for the same seed and so many draws', async () => {
    const { page } = whole;
    const looks = runningEstimate(own.rows, { alternative: 0, strategy: TIERS });
    const shown = await table(page, '#running-estimates');
    expect(
      shown.map(({ draws, nineInTenDays, medianDays }) => ({ draws, nineInTenDays, medianDays })),
    ).toEqual(
      looks.map(({ draws, nineInTenDays: n, medianDays: m }) => ({
        draws,
        nineInTenDays: n.value,
        medianDays: m.value,
      })),
    );
    expect(looks.length).toBeGreaterThan(5);
    expect(looks.at(-1)!.nineInTenDays).toEqual(cell.nineInTenDays);
    expect(await page.locator('.answer').innerText()).toContain(`“${cell.strategyTitle}”`);
    expect(await page.locator('#running-estimates .provenance').innerText()).toContain(
      own.summary.provenance.scenarioHash,
    );
  });

  it('shows for each seed what a study of that seed says', async () => {
    const shown = await table(whole.page, '#seed-estimates');
    const seeds = [SEED, `${SEED}-2`, `${SEED}-3`];
    expect(shown.map((row) => row['seed'])).toEqual(seeds);
    seeds.forEach((seed, i) => {
      const { nineInTenDays: n } = studyInNode(scenario, { seed, draws: DRAWS }).summary.strategies[TIERS]!;
      expect(shown[i]).toMatchObject({ draws: DRAWS, nineInTenDays: n.value, low: n.low, high: n.high });
    });
    expect(await whole.page.locator('#seed-estimates h2').innerText()).toMatch(
      /3 seeds .*of their 3 intervals hold what all together say/,
    );
  });

  it('shows what the library finds to matter, input by input', async () => {
    const matters = await whatMatters(
      scenario,
      { alternative: 0, strategy: TIERS, seed: SEED, draws: ROWS },
      askDrawsHere,
    );
    const swings = await table(whole.page, '#input-swings');
    const shares = await table(whole.page, '#input-shares');
    expect(matters.inputs.length).toBeGreaterThan(3);
    for (const input of matters.inputs) {
      expect(swings.find((row) => row['input'] === input.id)).toMatchObject({
        nineInTenLowDays: input.nineInTen.lowDays,
        nineInTenHighDays: input.nineInTen.highDays,
      });
      expect(shares.find((row) => row['input'] === input.id)).toMatchObject({
        firstOrder: input.firstOrder.value,
        total: input.total.value,
      });
    }
  });

  it('saves the very files that the command line writes, and they read back', async () => {
    const { page } = whole;
    const [arrow, csv, json] = exportFiles(own.study, own.rows, own.summary);
    const save = (label: string) => savedFrom(page, 'section', label);
    const arrowSaved = await save('Save every outcome as Arrow');
    expect(arrowSaved.equals(arrow!.bytes)).toBe(true);
    const back = fromArrow(new Uint8Array(arrowSaved));
    expect(back.numRows()).toBe(own.rows.length);
    expect([...(back.array('runtimeMinutes') as Float64Array)]).toEqual([
      ...own.rows.columns['runtimeMinutes']!,
    ]);
    const csvSaved = await save('Save every outcome as CSV');
    expect(csvSaved.equals(csv!.bytes)).toBe(true);
    expect(fromCSV(csvSaved.toString('utf8')).numRows()).toBe(own.rows.length);
    const jsonSaved = await save('Save the study as JSON');
    expect(jsonSaved.equals(json!.bytes)).toBe(true);
    expect(JSON.parse(jsonSaved.toString('utf8'))).toEqual(JSON.parse(JSON.stringify(own.summary)));
  });

  it('writes out code that Node runs and that gives the figures of the page', async () => {
    const code = await whole.page.locator('#repeat-code').innerText();
    expect(code.trim().split('\n').length).toBeLessThanOrEqual(12);
    const named = /loadScenario\('([^']+)'/.exec(code)![1]!;
    const folder = mkdtempSync(join(fileOf('..'), '.repeat-'));
    try {
      writeFileSync(join(folder, named), readFileSync(fileOf('../../data/small-house.yaml')));
      writeFileSync(join(folder, 'repeat.mts'), code);
      const said = execFileSync(
        process.execPath,
        ['--import', 'tsx', '--conditions=rideout-source', 'repeat.mts'],
        {
          cwd: folder,
          encoding: 'utf8',
        },
      );
      expect(said).toContain(String(cell.nineInTenDays.value));
      expect(said).toContain(String(cell.medianDays.value));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
    const commands = await whole.page.locator('#repeat-commands').innerText();
    expect(commands).toContain(`--seed '${SEED}' --draws ${DRAWS} --out outcomes`);
    expect(commands).toContain(`--seed '${SEED}-3' --draws ${DRAWS}`);
    expect(commands).toMatch(/rideout matters .* --draws 20 --alternative \S+ --strategy tiers/);
  });

  it('restores everything from its link, and writes hours as asked', async () => {
    const second = scenario.alternatives[1]!;
    const { page } = await open(`#household=${second.id}&seed=x&draws=12&seeds=2&rows=20&clock=12&months=7`);
    await page.locator('#running-estimates').waitFor();
    await expect
      .poll(() => page.locator('#running-estimates .provenance').innerText(), { timeout: 30_000 })
      .toContain('12 simulated outages, seed “x”');
    expect(await page.locator('.headline').innerText()).toContain(second.title);
    expect(await page.getByLabel('Seeds', { exact: true }).inputValue()).toBe('2');
    await expect
      .poll(() => page.locator('#outcomes-title ~ .table-scroll').innerText(), { timeout: 30_000 })
      .toMatch(/2\d{3}-07-\d\d \d+:\d\d\s[ap]m/);
    expect(await page.locator('#repeat-code').innerText()).toContain('months: [7]');
    await page.getByLabel('Seeds', { exact: true }).fill('3');
    await expect.poll(() => page.url()).toContain('seeds=3');
    for (const part of ['seed=x', 'draws=12', 'rows=20', 'clock=12', 'months=7'])
      expect(page.url()).toContain(part);
  });

  it('says what it does next, can be stopped in each of its parts, and can go on', async () => {
    const { page } = await open('#rows=4000&seeds=2');
    await page.locator('.run', { hasText: /^Settled: the other seeds/ }).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.run', { hasText: 'Stopped: what matters.' }).waitFor();
    await page.getByRole('button', { name: 'Run again' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    expect(await page.locator('.run progress').count()).toBe(1);
  });

  it('says which part of a link it cannot follow', async () => {
    const { page } = await open('#seeds=1&rows=many&modules=3');
    await page.locator('.trouble').waitFor();
    const said = await page.locator('.trouble p').allInnerTexts();
    expect(said.join('\n')).toMatch(/seeds = “1”.*2 to 40[\s\S]*rows = “many”[\s\S]*modules = “3”/);
  });

  const fitsAndIsAccessible = async (page: Page, width: number) => {
    const { objections, passes } = await accessibility(page);
    expect(objections).toEqual([]);
    expect(passes).toBeGreaterThan(20);
    expect(await widthTaken(page)).toBeLessThanOrEqual(width);
    expect(await page.locator('figure.chart').count()).toBe(4);
  };

  it('fits, and has nothing an accessibility check objects to (320 px, dark)', async () => {
    const look = { viewport: { width: 320, height: 740 }, colorScheme: 'dark' };
    const { page } = await open(HASH, look);
    await settled(page, LINES);
    await fitsAndIsAccessible(page, 320);
  }, 120_000);

  it('fits, and has nothing an accessibility check objects to (1280 px, light)', async () => {
    await fitsAndIsAccessible(whole.page, 1280);
  });

  it('writes long names out on a phone, each inside its picture', async () => {
    const seed = 'the seed of the household in the long valley, second try';
    const { page } = await open(`#rows=20&seeds=2&draws=6&seed=${encodeURIComponent(seed)}`, {
      viewport: { width: 390, height: 844 },
    });
    await settled(page, LINES);
    await standsStill(page);
    const texts = await page.locator('figure.chart svg text').evaluateAll((all) =>
      all.map((text) => {
        const [box, frame] = [text, text.closest('svg')!].map((e) => e.getBoundingClientRect());
        const inside = box!.left >= frame!.left - 1 && box!.right <= frame!.right + 1;
        const lines = [...text.querySelectorAll('tspan')].map((line) => line.textContent);
        return { words: lines.length > 0 ? lines.join(' ') : text.textContent, inside };
      }),
    );
    expect(texts.filter(({ inside }) => !inside)).toEqual([]);
    const words = texts.map((text) => text.words);
    for (const name of [seed, `${seed}-2`, 'frugal, one home in ten below → lavish, one in ten above'])
      expect(words).toContain(name);
    expect(words.filter((text) => text.includes('…'))).toEqual([]);
  }, 120_000);

  it('shows hostile names as text', async () => {
    const bad = '</script><img src=x onerror="globalThis.harm = 1">';
    const strategies = scenario.alternatives[0]!.household.strategies.map((s) => ({ ...s, title: bad }));
    const hostile: Scenario = {
      ...scenario,
      title: bad,
      alternatives: [
        {
          ...scenario.alternatives[0]!,
          title: bad,
          household: { ...scenario.alternatives[0]!.household, strategies },
        },
      ],
    };
    const other = await published('re-seed', { scenario: hostile, seed: bad, draws: 6 });
    const { page, troubles } = await bench.open(other, { hash: '#rows=20&seeds=2' });
    await settled(page, LINES);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('#input-swings').innerText()).toContain('<img src=x');
    expect(troubles).toEqual([]);
  });

  it('rounds as every page does', async () => {
    expect(await whole.page.locator('#seed-estimates tbody').textContent()).toContain(
      reachCell(cell.nineInTenDays.value, own.summary.horizonDays),
    );
  });
});
