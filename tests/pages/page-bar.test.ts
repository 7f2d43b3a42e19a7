/** The bar of pages in a published folder hands settings on: to each page what it has a control for, and no more. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { OUR_PAGES, publishPages } from '@rideout/notebooks/publish';
import { handedOn, PAGE_WORDS } from '../../packages/notebooks/src/page/page-words.ts';
import { noBrowser, openFile } from './browser.ts';
import { fullHouse } from './houses.ts';
import { pageBench } from './page-bench.ts';

vi.mock('../../packages/notebooks/src/publish/build-shell.ts', async () => {
  const { builtShell } = await import('./published.ts');
  return { buildShell: builtShell };
});

describe('handedOn(said, words)', () => {
  const handed = (hash: string, page: keyof typeof OUR_PAGES) =>
    handedOn(new URLSearchParams(hash), PAGE_WORDS[page]!).toString();

  it('keeps what the page knows, and several strategies from a page that shows one', () => {
    expect(handed('months=7&modules=3&draw=5', 'one-battery-or-two')).toBe('months=7');
    expect(handed('strategies=a,b&draws=9', 're-seed')).toBe('draws=9');
    expect(handed('strategies=a&draws=9', 're-seed')).toBe('strategies=a&draws=9');
    expect(handed('strategies=a,b', 'which-strategy')).toBe('strategies=a%2Cb');
    expect(Object.keys(PAGE_WORDS).sort()).toEqual(Object.keys(OUR_PAGES).sort());
  });
});

describe.skipIf(noBrowser())('the bar of pages', () => {
  const scenario = fullHouse();
  const bench = pageBench();
  const outDir = mkdtempSync(join(tmpdir(), 'rideout-bar-'));
  beforeAll(async () => {
    await publishPages({ scenario, outDir, draws: 4 });
  }, 240_000);
  afterAll(() => rmSync(outDir, { recursive: true, force: true }));

  it('leads on with the settings of the page, as they are and as they become, and no page complains of them', async () => {
    const { id } = scenario.alternatives[0]!.household.strategies[1]!;
    const hash = `#strategies=${id}&months=4&modules=3&storm=false&by=switch&draws=3&seed=on&clock=12&degrees=F`;
    const { page } = await openFile(bench.browser, join(outDir, 'how-many-days.html'), { hash });
    await page.getByRole('spinbutton', { name: 'Simulated outages' }).fill('2');
    await expect.poll(() => page.url()).toContain('draws=2');
    const links = await page
      .locator('.page-links a')
      .evaluateAll((all: HTMLAnchorElement[]) => all.map((a) => [a.getAttribute('href')!, a.href] as const));
    const of = (name: string) => links.find(([href]) => href.startsWith(`./${name}.html`))![0];
    expect(of('which-strategy')).toMatch(/#.*months=4&modules=3&storm=false&by=switch&draws=2&seed=on/);
    expect(of('card-by-the-panel')).toMatch(new RegExp(`#strategies=${id}(&clock=12&degrees=F)?$`));
    expect(links[0]![0]).toBe('./index.html');
    for (const [, address] of links.slice(1)) {
      await page.goto(address);
      await page.locator('.cautions, .card').first().waitFor();
      const said = await page.locator('.trouble').allInnerTexts();
      expect([address, said.filter((text) => text.includes('The link says'))]).toEqual([address, []]);
    }
    expect(links.length).toBe(Object.keys(OUR_PAGES).length);
  }, 120_000);

  it('opens on a phone where the page stands in it', async () => {
    for (const name of Object.keys(OUR_PAGES)) {
      const { page } = await openFile(bench.browser, join(outDir, `${name}.html`), {
        viewport: { width: 390, height: 800 },
      });
      await page.locator('.cautions, .card').first().waitFor();
      const own = (await page.locator('.page-links [aria-current]').boundingBox())!;
      expect([name, own.x >= 0, own.x + own.width <= 390]).toEqual([name, true, true]);
      await page.close();
    }
  }, 120_000);
});
