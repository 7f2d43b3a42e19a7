/** An analyst's own notebook, beside ours or in a folder of its own. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '@rideout/sim';
import { startPreview } from '../../packages/notebooks/src/publish/preview.ts';
import { noBrowser, openFile, startBrowser } from './browser.ts';
import { fileOf, published, smallHouse } from './published.ts';

const OURS = fileOf('../../packages/notebooks/examples/own-notebook.html');
const scenario = smallHouse();

describe.skipIf(noBrowser())('the example notebook', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rideout-own-'));
  const elsewhere = join(folder, 'own-notebook.html');
  let browser: Browser;

  beforeAll(async () => {
    copyFileSync(OURS, elsewhere);
    browser = await startBrowser();
  });
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close(); // what still runs there stops
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  for (const [where, notebook] of [
    ['beside ours', OURS],
    ['in a folder with no packages', elsewhere],
  ] as const) {
    it(`runs its trials and draws its chart, offline, when it lies ${where}`, async () => {
      const file = await published({ scenario, pages: [notebook], seed: 'own' });
      const { page, requests, troubles } = await openFile(browser, file.file);
      const bars = page.locator('svg [aria-label=rect] rect');
      await bars.first().waitFor();
      expect(await bars.count()).toBeGreaterThan(2);
      expect([...requests, ...troubles]).toEqual([]);
      file.remove();
    }, 60_000);
  }

  it('has the ten lines that the README shows', async () => {
    const { readFileSync } = await import('node:fs');
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
    const page = await (await browser.newContext()).newPage();
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
