/** The page of contents that a published folder gets. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { scenarioHash } from '@rideout/sim';
import { OUR_PAGES, publishPages } from '@rideout/notebooks/publish';
import { contentsPage } from '../../packages/notebooks/src/publish/contents-page.ts';
import { listedPage } from '../../packages/notebooks/src/publish/listed-page.ts';
import { noBrowser, openFile, startBrowser } from './browser.ts';
import { smallHouse } from './houses.ts';
import { accessibility, widthTaken } from './page-bench.ts';

const scenario = smallHouse();
const folder = mkdtempSync(join(tmpdir(), 'rideout-contents-'));
const NOTEBOOK = (title: string, lead: string) =>
  `<!doctype html><notebook><title>${title}</title><script id="1" type="text/html"><p class="lead">${lead}</p></script></notebook>`;

describe('a published folder', () => {
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const notebook = (name: string, title: string, lead: string) => {
    const path = join(folder, name);
    writeFileSync(path, NOTEBOOK(title, lead));
    return path;
  };

  it('has a page of contents with a working link, a title and a line for each page', async () => {
    const outDir = join(folder, 'out');
    const pages = [
      notebook('first page.html', 'First &amp; best', 'What it <b>answers</b>.'),
      notebook('second.html', 'Second', 'Another.'),
    ];
    const [contents, ...others] = await publishPages({ scenario, pages, outDir, seed: 'seed of it' });
    expect(contents!.file).toBe(join(outDir, 'index.html'));
    expect(others).toHaveLength(2);
    const html = readFileSync(contents!.file, 'utf8');
    const links = [...html.matchAll(/<a href="([^"]+)"/g)].map(([, href]) => decodeURIComponent(href!));
    expect(links).toEqual(['first page.html', 'second.html']);
    for (const link of links) expect(existsSync(join(outDir, link))).toBe(true);
    for (const text of [
      'First &#38; best',
      'What it answers.',
      'Another.',
      scenario.title,
      'seed seed of it',
      scenarioHash(scenario).slice(0, 12),
    ])
      expect(html).toContain(text);
  });

  it('leads from each page to the contents and to the others, by links that need no script', async () => {
    const outDir = join(folder, 'linked');
    const pages = [
      notebook('first page.html', 'First &amp; best', 'One.'),
      notebook('second.html', 'Second', 'Two.'),
    ];
    const [, first] = await publishPages({ scenario, pages, outDir });
    const html = readFileSync(first!.file, 'utf8');
    const nav = /<nav .*?<\/nav>/s.exec(html)![0];
    expect([...nav.matchAll(/href="([^"]+)"/g)].map(([, href]) => href)).toEqual([
      './index.html',
      './second.html',
    ]);
    expect(nav).toContain('<span aria-current="page">First &#38; best</span>');
    expect(html).toContain(`<title>First &amp; best – ${scenario.title}</title>`);
    const [alone] = await publishPages({
      scenario,
      pages: pages.slice(0, 1),
      outFile: join(folder, 'one.html'),
    });
    expect(readFileSync(alone!.file, 'utf8')).not.toContain('<nav');
  });

  it.skipIf(noBrowser())('can be gone through in a browser from a file', async () => {
    const browser = await startBrowser();
    try {
      const { page, troubles } = await openFile(browser, join(folder, 'linked', 'second.html'));
      await page.getByRole('link', { name: 'First & best' }).click();
      await page.getByRole('link', { name: 'All pages' }).click();
      expect(await page.locator('h1').innerText()).toBe(scenario.title);
      expect(troubles).toEqual([]);
    } finally {
      await browser.close();
    }
  });

  it('keeps a page called index.html that was given to it', async () => {
    const outDir = join(folder, 'given');
    const written = await publishPages({
      scenario,
      pages: [notebook('index.html', 'Mine', 'My own.')],
      outDir,
    });
    expect(written).toHaveLength(1);
    expect(readFileSync(join(outDir, 'index.html'), 'utf8')).toContain('My own.');
    expect(readdirSync(outDir)).toEqual(['index.html']);
    await publishPages({ scenario, pages: [notebook('beside.html', 'Beside', 'It.')], outDir });
    expect(readFileSync(join(outDir, 'index.html'), 'utf8')).toContain('My own.');
  });

  it('keeps listing the pages that are there when one is published beside them', async () => {
    const outDir = join(folder, 'beside');
    const [a, b] = ['a.html', 'b.html'].map((name) =>
      notebook(name, `Page &amp; ${name}`, `What "${name}" &lt;answers>.`),
    ) as [string, string];
    const ours = OUR_PAGES['card-by-the-panel'];
    await publishPages({ scenario, pages: [a, ours], outDir });
    const all = readFileSync(join(outDir, 'index.html'), 'utf8');
    writeFileSync(join(outDir, 'not-a-page.html'), '<title>Not one of ours</title>');
    writeFileSync(
      join(outDir, 'broken.html'),
      '<script type="application/json" id="rideout-study">{"scenario":{}}</script>',
    );
    const [contents, added] = await publishPages({ scenario, pages: [b], outDir });
    const html = readFileSync(contents!.file, 'utf8');
    const listed = [...html.matchAll(/<a href="([^"]+)"/g)].map(([, href]) => href);
    expect(listed).toEqual(['card-by-the-panel.html', 'a.html', 'b.html']);
    const items = (of: string) => [...of.matchAll(/<li><p>.*<\/p><\/li>/g)].map(([item]) => item);
    expect(items(html)).toEqual(expect.arrayContaining(items(all))); // word for word as before
    expect(readFileSync(added!.file, 'utf8')).toContain('href="./a.html"');
  }, 60_000);

  it('says of a page that is there from another household what it is made from, and leads no settings to it', async () => {
    const outDir = join(folder, 'another');
    const other = { ...scenario, title: 'The <other> house' };
    await publishPages({
      scenario: other,
      pages: [notebook('o.html', 'Other', 'It.')],
      outDir,
      seed: 'theirs',
    });
    const pages = [notebook('m.html', 'Mine', 'This.')];
    const [contents, mine] = await publishPages({ scenario, pages, outDir });
    const html = readFileSync(contents!.file, 'utf8');
    expect(html).toMatch(
      new RegExp(
        `<strong>Other</strong></a><br>It\\. Published at another time, from “The &#60;other&#62; house”, scenario ${scenarioHash(other).slice(0, 12)}; seed theirs;`,
      ),
    );
    expect(html).toContain('<strong>Mine</strong></a><br>This.</p>');
    expect(/<nav .*?<\/nav>/s.exec(readFileSync(mine!.file, 'utf8'))![0]).not.toContain('o.html');
  }, 60_000);
});

describe('the page of contents', () => {
  const study = { scenario, seed: 's', draws: 5 };
  const ours = Object.keys(OUR_PAGES).map((name) => listedPage(`${name}.html`, NOTEBOOK(name, '')));

  it('says what every one of our pages answers', () => {
    const items = contentsPage(study, ours).match(/<li><p>.*<\/p><\/li>/g)!;
    expect(items).toHaveLength(ours.length);
    for (const item of items) expect(item).toMatch(/<br>.{20,}<\/p>/);
  });

  it('holds no script and allows no request', () => {
    const html = contentsPage(study, ours);
    expect(html).not.toMatch(/<script|\son\w+=|https?:/i);
    expect(html).toContain(
      `content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"`,
    );
    expect(html).toContain('licensed electrician');
  });

  it('shows hostile names as text', () => {
    const bad = '</title><script>globalThis.harm = 1</script><img src=x onerror=alert(1)>';
    const html = contentsPage(
      { ...study, scenario: { ...scenario, title: bad, site: { ...scenario.site, place: bad } }, seed: bad },
      [listedPage('"><script>.html', NOTEBOOK('&lt;img src=x>', '&lt;script>harm()&lt;/script>'))],
    );
    expect(html).not.toMatch(/<script|<img/);
    expect(html).toContain('&#60;script');
  });

  it.skipIf(noBrowser())('has nothing an accessibility check objects to, and fits a phone', async () => {
    const file = join(folder, 'contents.html');
    const { mkdirSync } = await import('node:fs');
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, contentsPage(study, ours));
    const browser = await startBrowser();
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, requests, troubles } = await openFile(browser, file, {
        viewport: { width: 320, height: 700 },
        colorScheme,
      });
      expect((await accessibility(page)).objections).toEqual([]);
      expect(await widthTaken(page)).toBeLessThanOrEqual(320);
      expect([...requests, ...troubles]).toEqual([]);
    }
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });
});
