/** A published page holds everything it needs and can ask nobody for more. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { publishPages } from '@rideout/notebooks/publish';
import { smallHouse, studyInNode } from './houses.ts';
import { published } from './published.ts';

/** Hosts that serve packages, fonts or data to pages. */
const HOSTS = [
  'jsdelivr',
  'unpkg',
  'esm.sh',
  'skypack',
  'jspm',
  'cdnjs',
  'googleapis',
  'gstatic',
  'observableusercontent',
  'static.observable',
  'rawgit',
  'githubusercontent',
  'bootcdn',
  'esm.run',
];

describe('a published page', () => {
  const scenario = smallHouse();
  const folder = mkdtempSync(join(tmpdir(), 'rideout-offline-'));
  const file = { html: '', bytes: 0 };

  beforeAll(async () => {
    const [page] = await publishPages({ scenario, outFile: join(folder, 'page.html'), seed: 's', draws: 9 });
    Object.assign(file, { html: readFileSync(page!.file, 'utf8'), bytes: page!.bytes });
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('names no host that serves code, fonts or data', () => {
    expect(HOSTS.filter((host) => file.html.includes(host))).toEqual([]);
  });

  it('has no address where a browser would fetch one', () => {
    const fetched =
      /(?:\bimport\s*\(\s*|\bfrom\s*|\bfetch\s*\(\s*|importScripts\s*\(\s*|new Worker\s*\(\s*|@import\s+(?:url\()?|url\(\s*|\b(?:src|srcset|poster|action)\s*=\s*|<link[^>]*\bhref\s*=\s*)["'`]?(?:https?:)?\/\/[^\s"'`)]*/g;
    expect(file.html.match(fetched) ?? []).toEqual([]);
  });

  it('is one file, whose policy allows its own scripts by name, its own worker, and no request', () => {
    const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(file.html)![1]!;
    const rules = new Map(
      policy.split('; ').map((rule) => [rule.split(' ')[0]!, rule.split(' ').slice(1).join(' ')]),
    );
    expect(rules.get('default-src')).toBe("'none'");
    expect(rules.get('connect-src')).toBe("'none'");
    expect(rules.get('form-action')).toBe("'none'");
    expect(rules.get('base-uri')).toBe("'none'");
    expect(rules.get('worker-src')).toBe('blob:');
    expect(rules.get('script-src')).toMatch(/^'sha256-[\w+/=]+'$/);
    expect(policy).not.toMatch(/https?:|\*|unsafe-eval/);
    expect(file.html.indexOf('Content-Security-Policy')).toBeLessThan(
      file.html.search(/<script|<style|<link/),
    );
    expect(file.html).not.toMatch(/<script[^>]*\ssrc=|<link[^>]*stylesheet/);
  });

  it('stays small enough to send: under 2 MB without a weather year', () => {
    expect(file.bytes).toBeLessThan(2_000_000);
  });

  const refused = (name: string, cells: string, words: RegExp) =>
    it(`is refused, and nothing is written, when its notebook ${name}`, async () => {
      const page = join(folder, 'bad.html');
      const outDir = join(folder, 'out');
      writeFileSync(page, `<!doctype html><notebook><title>Bad</title>${cells}</notebook>`);
      await expect(publishPages({ scenario, pages: [page], outDir })).rejects.toThrow(words);
      expect(existsSync(outDir) ? readdirSync(outDir) : []).toEqual([]);
    });

  refused(
    'reads a file beside it',
    '<script id="1" type="module">display(await FileAttachment("a.csv").text())</script>',
    /cell 1 names FileAttachment/,
  );
  refused(
    'imports from an address',
    '<script id="1" type="module">import x from "https://example.org/x.js"; display(x)</script>',
    /imports "https:\/\/example.org\/x.js"/,
  );
  refused(
    'imports by npm:',
    '<script id="1" type="module">import x from "npm:left-pad"; display(x)</script>',
    /import local packages only/,
  );
  refused(
    'runs a program while it is built',
    '<script id="1" type="text/x-python">print(1)</script>',
    /cell 1 is python/,
  );
  refused('has a fault in a cell', '<script id="1" type="module">const = 1</script>', /bad\.html/);

  it('is refused with a plain word when its file is missing, is no notebook, or has no place to go', async () => {
    const notes = join(folder, 'notes.html');
    writeFileSync(notes, '<p>hello</p>');
    await expect(
      publishPages({ scenario, pages: [join(folder, 'gone.html')], outDir: folder }),
    ).rejects.toThrow(/no page to read/);
    await expect(publishPages({ scenario, pages: [notes], outDir: folder })).rejects.toThrow(
      /not a notebook file/,
    );
    await expect(publishPages({ scenario })).rejects.toThrow(/a file or a folder/);
  });

  it('is not written at all when another page of the same call cannot be built', async () => {
    const good = join(folder, 'good.html');
    writeFileSync(
      good,
      '<!doctype html><notebook><title>Good</title><script id="1" type="text/html"><p>hello</p></script></notebook>',
    );
    const outDir = join(folder, 'both');
    await expect(
      publishPages({ scenario, pages: [good, join(folder, 'gone.html')], outDir }),
    ).rejects.toThrow();
    expect(existsSync(outDir)).toBe(false);
  });

  it('is what the tests of single pages look at, byte for byte, with its answer inside or without', async () => {
    expect((await published('how-many-days', { scenario, seed: 's', draws: 9 })).html).toBe(file.html);
    const { summary } = studyInNode(scenario, { seed: 'answered', draws: 9 });
    const [page] = await publishPages({ scenario, summary, outFile: join(folder, 'answered.html') });
    const same = await published('how-many-days', { scenario, summary });
    expect(same.html).toBe(readFileSync(page!.file, 'utf8'));
    expect(same.bytes).toBe(page!.bytes);
  }, 60_000);
});
