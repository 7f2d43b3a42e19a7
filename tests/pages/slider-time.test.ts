/**
 * How long a reader waits for the page after a change: the first, coarse curve and the settled one. The times are
 * printed, not asserted: they are the machine's. What is asserted is that both come, in this order, and are told apart.
 */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { noBrowser } from './browser.ts';
import { fullHouse, studyInNode } from './houses.ts';
import { pageBench, settled } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const DRAWS = 200;
const demo = fullHouse();
/** One household, all of its strategies, a fortnight. */
const scenario = {
  ...demo,
  alternatives: demo.alternatives.slice(0, 1),
  outage: { ...demo.outage, horizonDays: 14 },
};

interface Waited {
  readonly settledMs: number;
  /** Every newly drawn curve: when, of what, and what the line said then. */
  readonly drawn: readonly { readonly ms: number; readonly provenance: string; readonly said: string }[];
}

/** The first curve of the household that was chosen last; one of an earlier choice may still be drawn after it was made. */
function firstOfItsOwn(drawn: Waited['drawn']) {
  const household = (provenance: string) => /Scenario (\w+)/.exec(provenance)![1];
  const last = household(drawn.at(-1)!.provenance);
  return drawn.find(({ provenance }) => household(provenance) === last)!;
}

/** Notes when the first new curve and when the settled one was drawn, counted from the last change of a control. */
async function watch(page: Page): Promise<() => Promise<Waited>> {
  await page.evaluate(() => {
    const noted = { from: 0, settledMs: 0, drawn: [] as { ms: number; provenance: string; said: string }[] };
    Object.assign(globalThis, { noted });
    const said = () => document.querySelector('.run')?.textContent ?? '';
    const provenance = () => document.querySelector('#survival-curves .provenance')?.textContent ?? '';
    let before = '';
    document.addEventListener(
      'input',
      (event) => {
        if (!event.isTrusted && event.target instanceof HTMLDivElement) return;
        Object.assign(noted, { from: performance.now(), settledMs: 0, drawn: [] });
        before = provenance();
      },
      true,
    );
    new MutationObserver(() => {
      if (noted.from === 0) return;
      const after = performance.now() - noted.from;
      if (provenance() !== '' && provenance() !== before) {
        before = provenance();
        noted.drawn.push({ ms: after, provenance: before, said: said() });
      }
      if (noted.settledMs === 0 && noted.drawn.length > 0 && said().includes('Settled'))
        noted.settledMs = after;
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
  });
  return async () => {
    await page.waitForFunction(
      () => (globalThis as unknown as { noted: Waited }).noted.settledMs > 0,
      undefined,
      {
        timeout: 60_000,
      },
    );
    return page.evaluate(() => (globalThis as unknown as { noted: Waited }).noted);
  };
}

describe.skipIf(noBrowser())('waiting for the page', () => {
  const bench = pageBench();
  let file: PublishedFile;

  beforeAll(async () => {
    const { summary } = studyInNode(scenario, { seed: 'rideout', draws: DRAWS });
    file = await published('how-many-days', { scenario, summary });
  }, 120_000);

  it('gets a coarse curve first, said to be so, and then the settled one', async () => {
    const { page, troubles } = await bench.open(file, { viewport: { width: 1280, height: 1200 } });
    await page.locator('#survival-curves').waitFor();
    const waited = await watch(page);
    const modules = page.getByLabel('Battery modules on each unit', { exact: true });
    await modules.hover();
    await page.waitForTimeout(1500);
    const lines: string[] = [];
    for (const [change, labels] of [
      ['first change', ['3']],
      ['second change', ['4']],
      ['third change', ['2']],
      ['several in a row', ['1', '2', '3', '4', '5']],
    ] as const) {
      for (const label of labels) {
        await modules.selectOption({ label });
        if (labels.length > 1) await page.waitForTimeout(60);
      }
      const { settledMs, drawn } = await waited();
      await settled(page);
      const { ms: firstMs, said: saidFirst } = firstOfItsOwn(drawn);
      expect(firstMs).toBeLessThanOrEqual(settledMs);
      expect(saidFirst).toMatch(/coarse/i);
      lines.push(
        `${change}: first curve after ${Math.round(firstMs)} ms, settled after ${Math.round(settledMs)} ms`,
      );
    }
    const cores = await page.evaluate(() => navigator.hardwareConcurrency);
    console.log(
      [`${DRAWS} draws × 4 strategies × 14 days, a browser with ${cores} cores`, ...lines].join('\n  '),
    );
    expect(troubles).toEqual([]);
  });
});
