/** The page for eyes, screen readers, keyboards, phones and paper. */
import { beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, type OpenOptions } from './browser.ts';
import { smallHouse, studyInNode } from './houses.ts';
import { accessibility, pageBench, standsStill, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SCREENS = { phone: { width: 360, height: 740 }, desktop: { width: 1280, height: 900 } };

describe.skipIf(noBrowser())('the page "How many days?"', () => {
  const bench = pageBench();
  let file: PublishedFile;

  beforeAll(async () => {
    const scenario = smallHouse();
    const { summary } = studyInNode(scenario, { seed: 'looks', draws: 20 });
    file = await published('how-many-days', { scenario, summary });
  }, 60_000);

  /** As it was published, all of it drawn: how it looks does not hang on where its figures were worked out. */
  const open = async (options: OpenOptions = {}) => {
    const { page } = await bench.open(file, options);
    await page.locator('#what-changes').waitFor();
    await page.locator('#survival-curves').waitFor();
    await standsStill(page);
    return page;
  };

  for (const [screen, viewport] of Object.entries(SCREENS)) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`has nothing an accessibility check objects to (${screen}, ${colorScheme})`, async () => {
        const { objections, passes } = await accessibility(await open({ viewport, colorScheme }));
        expect(objections).toEqual([]);
        expect(passes).toBeGreaterThan(20);
      });
    }
  }

  for (const width of [320, 360, 768, 1280]) {
    it(`fits a screen ${width} px wide without scrolling sideways`, async () => {
      const page = await open({ viewport: { width, height: 800 } });
      expect(await widthTaken(page)).toBeLessThanOrEqual(width);
      const picture = (await page.locator('#survival-curves svg').first().boundingBox())!;
      expect(picture.width).toBeGreaterThan(width < 400 ? width * 0.85 : 300);
    });
  }

  it('is dark where dark is asked for, and light on paper all the same', async () => {
    const page = await open({ colorScheme: 'dark' });
    const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const line = () =>
      page.evaluate(() => getComputedStyle(document.querySelector('#survival-curves .mark-text text')!).fill);
    const [darkPaper, darkLine] = [await paper(), await line()];
    expect(brightness(darkPaper)).toBeLessThan(0.2);
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(brightness(await paper())).toBeGreaterThan(0.95);
    expect(await line()).not.toBe(darkLine);
    expect(await page.locator('.controls').first().isVisible()).toBe(false);
    expect(await page.locator('.cautions').isVisible()).toBe(true);
  });

  it('can be worked by keyboard: every control is reached in order and its focus is seen', async () => {
    const page = await open({ viewport: SCREENS.desktop });
    const reached: string[] = [];
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press('Tab');
      const focus = await page.evaluate(() => {
        const at = document.activeElement as HTMLElement;
        const { outlineStyle, outlineWidth } = getComputedStyle(at);
        return { tag: at.tagName, seen: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2 };
      });
      if (focus.tag === 'BODY') break;
      expect(focus.seen, `focus on ${focus.tag}, stop ${i + 1}`).toBe(true);
      reached.push(focus.tag);
    }
    const controls = await page.locator('button, select, input, summary').count();
    expect(reached.filter((tag) => ['BUTTON', 'SELECT', 'INPUT', 'SUMMARY'].includes(tag)).length).toBe(
      controls,
    );
    await page.getByLabel('The storm that took the grid').focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.url()).toContain('storm=');
  });

  it('gives every chart a title, a text equivalent, a table and its provenance', async () => {
    const page = await open();
    const charts = await page.locator('figure.chart').all();
    expect(charts).toHaveLength(2);
    for (const chart of charts) {
      const picture = chart.locator('[role=img]');
      expect(await picture.getAttribute('aria-label')).toContain(
        (await chart.locator('h2').innerText()).slice(0, 20),
      );
      for (const id of (await picture.getAttribute('aria-describedby'))!.split(' ')) {
        expect((await page.locator(`#${id}`).textContent())!.trim().length).toBeGreaterThan(20);
      }
      expect(await chart.locator('table tbody tr').count()).toBeGreaterThan(1);
      expect(await chart.locator('.provenance').innerText()).toMatch(
        /20 simulated outages, seed “looks”.*Scenario [0-9a-f]{12}, Rideout \d/,
      );
    }
  });
});

/** Of "rgb(r, g, b)", 0 to 1. */
function brightness(rgb: string): number {
  const parts = rgb.match(/\d+/g)!.slice(0, 3).map(Number);
  return parts.reduce((sum, part) => sum + part, 0) / 765;
}
