/** Names in a scenario are text on the page, whatever they look like. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Scenario } from '@rideout/sim';
import { noBrowser } from './browser.ts';
import { smallHouse } from './houses.ts';
import { harmDone, NO_HARM, pageBench, savedFrom, settled } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SCRIPT = '</script><script>globalThis.harm = 1</script>';
const IMAGE = '<img src=x onerror="globalThis.harm = 2">';
const ODD = '%MODE% $& ${globalThis.harm = 3} \u2028 <!-- <title>';

function hostile(scenario: Scenario): Scenario {
  return {
    ...scenario,
    title: `${SCRIPT} ${ODD}`,
    site: { ...scenario.site, place: IMAGE },
    alternatives: scenario.alternatives.map((alternative, i) => ({
      ...alternative,
      title: i === 0 ? IMAGE : SCRIPT,
      household: {
        ...alternative.household,
        strategies: alternative.household.strategies.map((s, j) => ({
          ...s,
          title: `${j} ${j % 2 ? IMAGE : SCRIPT}`,
        })),
        circuits: alternative.household.circuits.map((c) => ({ ...c, title: SCRIPT })),
      },
    })),
  };
}

describe.skipIf(noBrowser())('a page about a household with hostile names', () => {
  const scenario = hostile(smallHouse());
  const bench = pageBench();
  let file: PublishedFile;
  let page: Page;
  let troubles: readonly string[];

  beforeAll(async () => {
    file = await published('how-many-days', { scenario, seed: IMAGE, draws: 20 });
    ({ page, troubles } = await bench.openForAll(file));
    await settled(page);
  }, 120_000);

  it('runs none of them', async () => {
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(troubles).toEqual([]);
  });

  it('shows them as text', async () => {
    expect(await page.locator('.answer').innerText()).toMatch(/<\/script><script>|<img src=x/);
    expect(await page.locator('body').innerText()).toContain(IMAGE);
    expect(await page.title()).toContain(SCRIPT);
    expect(await page.title()).toContain('%MODE% $&');
  });

  it('saves a picture with them as text', async () => {
    const svg = (await savedFrom(page, '#survival-curves', 'SVG')).toString('utf8');
    const parsed = await page.evaluate((text) => {
      const document = new DOMParser().parseFromString(text, 'image/svg+xml');
      return {
        scripts: document.querySelectorAll('script, image, img, parsererror').length,
        text: document.documentElement.textContent,
      };
    }, svg);
    expect(parsed.scripts).toBe(0);
    expect(parsed.text).toContain('globalThis.harm');
  });

  it('has one script that runs: the page’s own', () => {
    const opened = file.html.match(/<script\b[^>]*>/g)!;
    expect(opened.filter((tag) => tag.includes('application/json'))).toHaveLength(1);
    expect(file.html).not.toContain('<img src=x');
    expect(file.html).not.toContain(SCRIPT);
  });
});
