/** What a page works out is what Node works out: the same rows, bit for bit, and so the same figures. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { StudySummary } from '@rideout/sim';
import { noBrowser } from './browser.ts';
import { fileOf, smallHouse, studyInNode } from './houses.ts';
import { pageBench } from './page-bench.ts';
import { publishedNotebook } from './published.ts';

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
  const { rows, summary } = studyInNode(scenario, { seed: SEED, draws: DRAWS });
  const bench = pageBench();
  let result: PageResult;

  beforeAll(async () => {
    const notebook = fileOf('fixtures/rows.html');
    const file = await publishedNotebook(notebook, { scenario, seed: SEED, draws: DRAWS });
    const { page, troubles } = await bench.open(file);
    await page
      .locator('#done')
      .waitFor({ timeout: 60_000 })
      .catch(() => expect(troubles).toEqual([]));
    result = await page.evaluate(() => (globalThis as unknown as { result: PageResult }).result);
  }, 120_000);

  it('gives the same outcome rows as Node, bit for bit, over two workers and uneven batches', () => {
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
    expect(result.summary).toEqual(summary);
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
