/** What a page works out is what Node works out: the same rows, bit for bit, and so the same figures. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareStudy, runShard, summarise, type StudySummary } from '@rideout/sim';
import { noBrowser, openFile, startBrowser } from './browser.ts';
import { fileOf, published, smallHouse, type PublishedFile } from './published.ts';

interface PageResult {
  readonly length: number;
  /** 64 bits of each value, hexadecimal. */
  readonly columns: Readonly<Record<string, readonly string[]>>;
  readonly summary: StudySummary;
  readonly drawsTold: readonly number[];
  readonly summariesOf: readonly (number | null)[];
}

const SEED = 'same bits';
const DRAWS = 61; // not a multiple of the page's batch of 3

describe.skipIf(noBrowser())('a study run in a page', () => {
  const scenario = smallHouse();
  let browser: Browser;
  let file: PublishedFile;
  let result: PageResult;

  beforeAll(async () => {
    file = await published({ scenario, pages: [fileOf('fixtures/rows.html')], seed: SEED, draws: DRAWS });
    browser = await startBrowser();
    const { page, troubles } = await openFile(browser, file.file);
    await page
      .locator('#done')
      .waitFor({ timeout: 60_000 })
      .catch(() => expect(troubles).toEqual([]));
    result = await page.evaluate(() => (globalThis as unknown as { result: PageResult }).result);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    file?.remove();
  });

  it('gives the same outcome rows as Node, bit for bit, over two workers and uneven batches', () => {
    const rows = runShard(prepareStudy(scenario, { seed: SEED }), 0, DRAWS);
    expect(result.length).toBe(rows.length);
    expect(Object.keys(result.columns)).toEqual(Object.keys(rows.columns));
    let compared = 0;
    for (const [name, values] of Object.entries(rows.columns)) {
      expect(result.columns[name], name).toEqual(bitsOf(values));
      compared += values.length;
    }
    expect(compared).toBe(rows.length * Object.keys(rows.columns).length);
    expect(compared).toBeGreaterThan(1000);
  });

  it('gives the same summary as Node, every figure of it', () => {
    const study = prepareStudy(scenario, { seed: SEED });
    expect(result.summary).toEqual(summarise(study, runShard(study, 0, DRAWS)));
  });

  it('tells draws in order and a coarse summary before the settled one', () => {
    expect([...result.drawsTold]).toEqual([...result.drawsTold].sort((a, b) => a - b));
    expect(result.drawsTold.at(-1)).toBe(DRAWS);
    const summaries = [...new Set(result.summariesOf)];
    expect(summaries[0]).toBeNull();
    expect(summaries.length).toBeGreaterThan(2);
    expect(summaries.at(-1)).toBe(DRAWS);
  });
});

function bitsOf(values: Float64Array): string[] {
  return Array.from(new BigUint64Array(values.buffer, values.byteOffset, values.length), (bits) =>
    bits.toString(16),
  );
}
