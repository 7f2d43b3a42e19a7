/** An analyst's own notebook, beside ours or in a folder of its own. */
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '@rideout/sim';
import { startPreview } from '../../packages/notebooks/src/publish/preview.ts';
import { noBrowser } from './browser.ts';
import { fileOf, smallHouse } from './houses.ts';
import { pageBench } from './page-bench.ts';
import { publishedNotebook } from './published.ts';

const OURS = fileOf('../../packages/notebooks/examples/own-notebook.html');
const scenario = smallHouse();

describe.skipIf(noBrowser())('the example notebook', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rideout-own-'));
  const elsewhere = join(folder, 'own-notebook.html');
  const bench = pageBench();

  beforeAll(() => copyFileSync(OURS, elsewhere));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  for (const [where, notebook] of [
    ['beside ours', OURS],
    ['in a folder with no packages', elsewhere],
  ] as const) {
    it(`runs its trials and draws its chart, offline, when it lies ${where}`, async () => {
      const file = await publishedNotebook(notebook, { scenario, seed: 'own' });
      const { page, requests, troubles } = await bench.open(file);
      const bars = page.locator('svg [aria-label=rect] rect');
      await bars.first().waitFor();
      expect(await bars.count()).toBeGreaterThan(2);
      expect([...requests, ...troubles]).toEqual([]);
    }, 60_000);
  }

  it('draws its chart to the page’s width, and leaves it as it is while the page is not shown', async () => {
    const file = await publishedNotebook(OURS, { scenario, seed: 'own' });
    const { page, troubles } = await bench.open(file);
    const chartPx = async () =>
      Math.round(Number(await page.locator('main svg').first().getAttribute('width')));
    const becomes = (px: number) => expect.poll(chartPx, { timeout: 10_000 }).toBe(px);
    const widthPx = () =>
      page.evaluate(() => {
        const main = document.querySelector('main')!;
        const { paddingLeft, paddingRight } = getComputedStyle(main);
        return Math.round(main.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight));
      });
    const show = (display: string) =>
      page.evaluate((to) => void (document.querySelector('main')!.style.display = to), display);
    await page.locator('main svg').first().waitFor();
    const wide = await widthPx();
    await becomes(wide);
    await page.evaluate(() => {
      const widths = Object.assign(window, { widths: [] as string[] }).widths;
      new MutationObserver(() =>
        widths.push(document.querySelector('main svg')?.getAttribute('width') ?? 'none'),
      ).observe(document.querySelector('main')!, { childList: true, subtree: true });
    });
    await show('none');
    await page.waitForTimeout(500);
    await show('');
    await page.setViewportSize({ width: 500, height: 800 });
    expect(await widthPx()).toBeLessThan(wide);
    await becomes(await widthPx());
    const drawn = await page.evaluate(() => (window as unknown as { widths: string[] }).widths);
    expect(drawn.filter((width) => !(Number(width) > 0))).toEqual([]);
    expect(troubles).toEqual([]);
  }, 60_000);

  it('has the ten lines that the README shows', () => {
    const readme = readFileSync(fileOf('../../packages/notebooks/README.md'), 'utf8');
    const squeezed = (text: string) => text.replace(/\s+/g, ' ');
    const shown = /```html\n(<script id="2"[\s\S]*?<\/script>)/.exec(readme)![1]!;
    expect(squeezed(readFileSync(OURS, 'utf8'))).toContain(squeezed(shown));
  });

  it('takes the columns it names', () => {
    const { columns } = runShard(prepareStudy(scenario, { seed: 'own' }), 0, 3);
    for (const name of ['runtimeMinutes', 'alternative', 'strategy'])
      expect(columns[name]!.length).toBeGreaterThan(0);
  });

  it('can be seen while it is written, with its household inside and no library from any address', async () => {
    const { server, addresses } = await startPreview(fileOf('../../data/small-house.yaml'), {
      pages: [elsewhere],
      port: 0,
    });
    const page = await (await bench.browser.newContext()).newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(addresses[0]!);
    await page.locator('svg [aria-label=rect] rect').first().waitFor({ timeout: 60_000 });
    expect(
      asked.filter(
        (url) => !url.startsWith(new URL(addresses[0]!).origin) && !/^(data|blob|wss?):/.test(url),
      ),
    ).toEqual([]);
    await server.close();
  }, 90_000);
});
