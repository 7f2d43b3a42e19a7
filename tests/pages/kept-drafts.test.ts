/** Drafts that a browser keeps for the form: what is kept comes back, and what cannot be one is never let near the form. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readDataFile } from '@rideout/sim/node';
import { writtenHouse } from '../../packages/notebooks/src/page/house-from-scenario.ts';
import {
  browserStore,
  KeptDrafts,
  type DraftStore,
} from '../../packages/notebooks/src/page/house-kept-drafts.ts';
import { houseTables } from '../../packages/notebooks/src/page/house-tables.ts';
import { noBrowser } from './browser.ts';
import { fullHouse, smallHouse, studyInNode } from './houses.ts';
import { harmDone, NO_HARM, pageBench, savedFrom } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const tables = houseTables(readDataFile('appliances.csv'), readDataFile('normals.csv'));
const small = smallHouse();
const { spec } = writtenHouse(small, tables);

function storeOf(items = new Map<string, string>()): DraftStore & { items: Map<string, string> } {
  return {
    items,
    get length() {
      return items.size;
    },
    key: (i) => [...items.keys()][i] ?? null,
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, text) => void items.set(key, text),
    removeItem: (key) => void items.delete(key),
  };
}

describe('drafts that the browser keeps', () => {
  it('come back at another opening, of the same household only, newest first', () => {
    const store = storeOf();
    const [first, second] = [new KeptDrafts(store, 'elm', 1), new KeptDrafts(store, 'elm', 2)];
    expect(first.keep({ ...spec, title: 'Older' }, 100)).toBe(true);
    first.keep({ ...spec, title: 'First' }, 110); // over its own
    second.keep({ ...spec, title: 'Second' }, 120);
    const later = new KeptDrafts(store, 'elm', 3).others();
    expect(later.map((draft) => [draft.spec!.title, draft.changedAt])).toEqual([
      ['Second', 120],
      ['First', 110],
    ]);
    expect(new KeptDrafts(store, 'oak', 4).others()).toEqual([]);
    first.forgetOwn();
    second.forget(later[0]!.key);
    expect(store.items.size).toBe(0);
  });

  it('are whole households, and households half described', () => {
    const store = storeOf();
    const half = { ...structuredClone(writtenHouse(fullHouse(), tables).spec), title: '', circuits: [] };
    new KeptDrafts(store, 'elm', 1).keep(half, 5);
    expect(new KeptDrafts(store, 'elm', 2).others()[0]!.spec).toEqual(half);
  });

  it('are not said to be kept where they are more than would be read back', () => {
    const store = storeOf();
    const huge = { ...spec, title: 'x'.repeat(300_000) };
    expect(new KeptDrafts(store, 'elm', 1).keep(huge, 5)).toBe(false);
    expect(store.items.size).toBe(0);
  });

  it('are three of a household at most', () => {
    const store = storeOf();
    for (let n = 1; n <= 6; n++) new KeptDrafts(store, 'elm', n).keep({ ...spec, title: String(n) }, n);
    const titles = new KeptDrafts(store, 'elm', 9).others().map((draft) => draft.spec!.title);
    expect(titles).toEqual(['6', '5', '4']);
    expect(store.items.size).toBe(3);
  });

  it.each([
    ['no JSON', '{'],
    ['nothing', ''],
    ['null', 'null'],
    ['no time', JSON.stringify({ spec })],
    ['no such time', JSON.stringify({ changedAt: 1e300, spec })],
    ['no household', JSON.stringify({ changedAt: 1, spec: 'a house' })],
    ['a list', JSON.stringify({ changedAt: 1, spec: [] })],
    ['a block for a word', JSON.stringify({ changedAt: 1, spec: { ...spec, title: { a: 1 } } })],
    ['a word for a list', JSON.stringify({ changedAt: 1, spec: { ...spec, circuits: 'many' } })],
    ['words for units', JSON.stringify({ changedAt: 1, spec: { ...spec, units: ['a'] } })],
    ['far too much', JSON.stringify({ changedAt: 1, spec: { ...spec, notes: 'x'.repeat(300_001) } })],
  ])('are no households where the store holds %s', (_, text) => {
    const store = storeOf(new Map([['rideout-draft/elm/1', text]]));
    expect(new KeptDrafts(store, 'elm', 2).others().map((draft) => draft.spec)).toEqual([undefined]);
  });

  it('are none, without a fault, where the store is missing or throws', () => {
    const fails = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    const broken = { length: 3, key: fails, getItem: fails, setItem: fails, removeItem: fails };
    for (const store of [undefined, broken]) {
      const drafts = new KeptDrafts(store, 'elm', 1);
      expect(drafts.keep(spec, 1)).toBe(false);
      expect(drafts.others()).toEqual([]);
      drafts.forgetOwn();
    }
    expect(() => browserStore()).not.toThrow();
  });
});

describe.skipIf(noBrowser())('on the page "Describe your house", a draft of what is not saved', () => {
  const bench = pageBench();
  let file: PublishedFile;

  beforeAll(async () => {
    const { summary } = studyInNode(small, { seed: 'kept', draws: 4 });
    file = await published('describe-your-house', { scenario: small, summary });
  }, 60_000);

  const opened = async (options = {}) => {
    const open = await bench.open(file, options);
    await open.page.locator('#survival-curves').waitFor();
    return open;
  };
  const savedTitle = async (page: Page) => {
    const text = (await savedFrom(page, 'main', 'Save as YAML')).toString('utf8');
    return (parse(text) as { title: string }).title;
  };
  const title = (page: Page) => page.getByLabel('Name of the household');
  const again = async (page: Page) => {
    const next = await page.context().newPage();
    await next.goto(page.url());
    await next.locator('#survival-curves').waitFor();
    return next;
  };
  /** Something that is kept in the place of what the page kept. */
  const plant = (page: Page, draft: unknown) =>
    page.evaluate((text) => {
      for (const key of Object.keys(localStorage)) localStorage.setItem(key, text);
    }, JSON.stringify(draft));

  it('is offered back when the page is opened again, and gone once it is saved', async () => {
    const { page, requests, troubles } = await opened();
    await title(page).fill('The house I was describing');
    await page.locator('.house-unsaved', { hasText: 'This browser keeps a draft.' }).waitFor();
    const next = await again(page);
    const offer = next.locator('.draft-offer');
    expect(await offer.innerText()).toMatch(
      /^This browser kept a draft of The house I was describing, last changed on \d+ \w+ \d{4}/,
    );
    expect(await title(next).inputValue()).toBe(small.title); // nothing is changed before it is asked for
    await next.getByRole('button', { name: 'Go on with the draft' }).click();
    expect(await title(next).inputValue()).toBe('The house I was describing');
    expect(await offer.count()).toBe(0);
    expect(await savedTitle(next)).toBe('The house I was describing');
    expect(await next.evaluate(() => localStorage.length)).toBe(0);
    expect([...requests, ...troubles]).toEqual([]);
  });

  it('is discarded when asked to, and then not offered again', async () => {
    const { page } = await opened();
    await title(page).fill('Not this one');
    const next = await again(page);
    await next.getByRole('button', { name: 'Discard it' }).click();
    expect(await next.locator('.draft-offer').count()).toBe(0);
    expect(await (await again(next)).locator('.draft-offer').count()).toBe(0);
  });

  it('is refused in one line where it is none, or cannot be shown', async () => {
    const { page } = await opened();
    await title(page).fill('x');
    await plant(page, { changedAt: 1, spec: { title: { harm: 1 } } });
    const REFUSED = /^A draft that this browser kept cannot be used in this page\. Discard it$/;
    const next = await again(page);
    expect(await next.locator('.draft-offer').innerText()).toMatch(REFUSED);
    await plant(page, { changedAt: 1, spec: { title: '<img src=x onerror="globalThis.harm = 1">' } });
    const last = await again(page);
    await last.getByRole('button', { name: 'Go on with the draft' }).click();
    expect(await last.locator('.draft-offer').innerText()).toMatch(REFUSED);
    expect(await harmDone(last)).toEqual(NO_HARM);
    await title(last).fill('Still works');
    expect(await savedTitle(last)).toBe('Still works');
  });

  it('is not missed where the browser keeps nothing', async () => {
    const before = () =>
      Object.defineProperty(globalThis, 'localStorage', {
        get() {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    const { page, troubles } = await opened({ before });
    await title(page).fill('Nobody keeps me');
    await page.locator('.house-unsaved', { hasText: /^Not saved yet\.$/ }).waitFor();
    expect(await savedTitle(page)).toBe('Nobody keeps me');
    expect(troubles).toEqual([]);
  });
});
