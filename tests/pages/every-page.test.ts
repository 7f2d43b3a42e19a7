/** What holds for every one of our pages: keyboard, narrow screens, paper, stillness; how big they are and how soon they answer. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { OUR_PAGES } from '@rideout/notebooks/publish';
import { noBrowser, type OpenedPage } from './browser.ts';
import { fullHouse } from './houses.ts';
import { pageBench, settled, standsStill, unfoldAll, widthTaken } from './page-bench.ts';
import { published, type PageName, type PublishedFile } from './published.ts';

const full = fullHouse();
const NAMES = Object.keys(OUR_PAGES) as PageName[];
/** So that a test does not wait for hundreds of runs. */
const HASHES: Partial<Record<PageName, string>> = {
  're-seed': '#rows=20&seeds=2',
  'through-the-year': '#draws=4',
};
const DRAWS = 20; // the first figures of a page are of twenty outages, however many it goes on to
/** Without Vega or without any chart a page must not weigh what one with both does. Bytes, the full demo household. */
const MOST_BYTES: Readonly<Record<PageName, number>> = {
  'how-many-days': 1_450_000,
  'which-strategy': 950_000,
  'minute-by-minute': 1_750_000,
  'one-battery-or-two': 1_500_000,
  'through-the-year': 1_350_000,
  'what-to-buy-next': 750_000,
  're-seed': 1_250_000,
  'card-by-the-panel': 300_000,
  'describe-your-house': 2_250_000,
};
const LETTER = { width: 816, height: 1056 }; // CSS px: 8.5 × 11 in at 96 px an inch

interface Row {
  readonly page: string;
  readonly 'size, kB': number;
  readonly 'first chart, ms': number;
}
interface Opened extends OpenedPage {
  readonly file: PublishedFile;
  readonly row: Row;
}

describe.skipIf(noBrowser())('every page of ours', () => {
  const bench = pageBench();
  const opened = new Map<PageName, Promise<Opened>>();

  /**
   * On a wide screen, done and unfolded, once for all that is asked of it; then its reader turns to a phone, and then
   * to paper. That a page fits when it is first opened on a phone is asked of each in the tests of that page.
   */
  const onDesk = (name: PageName): Promise<Opened> => {
    if (!opened.has(name)) opened.set(name, open(name));
    return opened.get(name)!;
  };
  async function open(name: PageName): Promise<Opened> {
    const file = await published(name, { scenario: full, draws: DRAWS });
    const options = { hash: HASHES[name] ?? '', locale: 'en-GB', before: noteFirstChart };
    const desk = await bench.openForAll(file, options);
    await whenDone(desk.page);
    const ms = await desk.page.evaluate(() => (globalThis as { firstChartMs?: number }).firstChartMs!);
    await unfoldAll(desk.page);
    const row = { page: name, 'size, kB': Math.round(file.bytes / 1000), 'first chart, ms': Math.round(ms) };
    return { ...desk, file, row };
  }

  for (const name of NAMES) {
    it(`${name}: can be worked by keyboard alone; the focus is seen; controls and tables are reached`, async () => {
      const { page, troubles } = await onDesk(name);
      const walk = await tabThrough(page);
      expect(walk.unseen, 'stops where the focus is not seen').toEqual([]);
      expect(walk.missed, 'controls and tables that Tab does not reach').toEqual([]);
      expect(walk.stops).toBeGreaterThan(2);
      expect(troubles).toEqual([]);
    }, 120_000);

    it(`${name}: fits 390 and 320 px without scrolling sideways, and stands still where stillness is asked for`, async () => {
      const { page } = await onDesk(name);
      await page.emulateMedia({ reducedMotion: 'reduce' });
      for (const width of [390, 320]) {
        await page.setViewportSize({ width, height: 800 });
        await standsStill(page);
        expect(await widthTaken(page), `${width} px`).toBeLessThanOrEqual(width);
        expect(await moving(page), `${width} px`).toEqual([]);
      }
    }, 120_000);

    it(`${name}: prints whole: nothing runs off the paper, no picture is taller than a page`, async () => {
      const { page } = await onDesk(name);
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      await page.setViewportSize({ width: LETTER.width - 84, height: LETTER.height }); // less margins of 11 mm
      await standsStill(page);
      expect(await cutByPaper(page)).toEqual([]);
      expect(
        await page.locator('button:not(.outage-events button), select').filter({ visible: true }).count(),
      ).toBe(0);
      for (const format of ['Letter', 'A4'] as const) {
        const sides = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;
        expect(sides, format).toBeGreaterThanOrEqual(1);
        if (name === 'card-by-the-panel') expect(sides, format).toBe(1);
      }
      await page.context().close();
    }, 120_000);
  }

  it('carries what it shows and no more, and shows its first chart soon: the table', async () => {
    const rows: Row[] = [];
    for (const name of NAMES) {
      const { file, row } = await onDesk(name);
      expect(file.bytes, name).toBeLessThan(MOST_BYTES[name]);
      expect(row['first chart, ms'], name).toBeGreaterThan(0);
      rows.push(row);
    }
    console.table(rows);
    expect(rows).toHaveLength(NAMES.length);
  }, 120_000);
});

/** Runs in the page before anything else: when the first chart, or the card, is there. */
function noteFirstChart(): void {
  const look = () => {
    if (!document.querySelector('.chart-picture svg, .card[data-type-pt]')) return;
    requestAnimationFrame(() => Object.assign(globalThis, { firstChartMs: performance.now() }));
    watch.disconnect();
  };
  const watch = new MutationObserver(look);
  watch.observe(document, { childList: true, subtree: true, attributes: true });
}

/** Until every line that runs something says that it has settled; a page without one is done at once. */
async function whenDone(page: Page): Promise<void> {
  await page.locator('figure.chart, .card[data-type-pt]').first().waitFor({ timeout: 60_000 });
  await settled(page, 0);
  await page.getByText('Looking the household over').waitFor({ state: 'detached', timeout: 60_000 });
  await standsStill(page);
}

/** What runs off the paper's width, is taller than a sheet, or hides a part of itself. */
function cutByPaper(page: Page): Promise<string[]> {
  return page.evaluate((paper) => {
    const past = [...document.querySelectorAll<HTMLElement>('main *')].filter((e) => {
      const box = e.getBoundingClientRect();
      return box.width > 0 && box.right > innerWidth + 1 && getComputedStyle(e).visibility !== 'hidden';
    });
    const tall = [...document.querySelectorAll('.chart-picture, .cautions, pre')].filter(
      (e) => e.getBoundingClientRect().height > paper.height - 90,
    );
    const hidden = [...document.querySelectorAll('.table-scroll, .chart-picture')].filter(
      (e) => e.scrollWidth > e.clientWidth + 1,
    );
    return [...past, ...tall, ...hidden].map((e) => e.outerHTML.slice(0, 120));
  }, LETTER);
}

/** What moves, or would. */
function moving(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const styled = [...document.querySelectorAll('*')].filter((e) => {
      const { transitionDuration, animationName } = getComputedStyle(e);
      return parseFloat(transitionDuration) > 0 || animationName !== 'none';
    });
    const running = document.getAnimations().map((animation) => `an animation, ${animation.playState}`);
    return [...running, ...styled.map((e) => e.outerHTML.slice(0, 100))];
  });
}

const AT_ONCE = 20; // Tab is held down for so many stops

interface Walk {
  readonly stops: number;
  readonly unseen: readonly string[];
  readonly missed: readonly string[];
}

/** Tab from the first stop to the last: until twenty more lead nowhere new. */
async function tabThrough(page: Page): Promise<Walk> {
  await page.evaluate(() => {
    const walk = { stops: 0, unseen: [] as string[] };
    Object.assign(globalThis, { walk });
    document.addEventListener('focusin', ({ target }) => {
      const at = target as HTMLElement;
      if (at.dataset['reached'] === 'yes') return;
      at.dataset['reached'] = 'yes';
      walk.stops++;
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      if (outlineStyle === 'none' || parseFloat(outlineWidth) < 2)
        walk.unseen.push(at.outerHTML.slice(0, 100));
    });
  });
  const walked = () =>
    page.evaluate(() => (globalThis as unknown as { walk: { stops: number; unseen: string[] } }).walk);
  for (let before = -1; before !== (await walked()).stops;) {
    before = (await walked()).stops;
    await Promise.all(Array.from({ length: AT_ONCE }, () => page.keyboard.down('Tab')));
    await page.keyboard.up('Tab');
  }
  const missed = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'main :is(button:not(:disabled), select, input, summary, a[href], [tabindex="0"])',
      ),
    ]
      .filter((e) => e.dataset['reached'] !== 'yes' && e.getClientRects().length > 0)
      .map((e) => e.outerHTML.slice(0, 100)),
  );
  return { ...(await walked()), missed };
}
