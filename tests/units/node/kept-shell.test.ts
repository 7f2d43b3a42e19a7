/** A built page is used again as long as nothing that it was made from has changed. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keptShell } from '../../../packages/notebooks/src/publish/kept-shell.ts';

describe('the shell of a page', () => {
  let folder = '';
  let built = 0;
  const at = (...names: string[]) => join(folder, ...names);
  const ask = (page = at('page.html'), keptIn = at('kept')) =>
    keptShell(page, () => Promise.resolve(`shell ${++built} é`), {
      folders: [at('sources')],
      installed: at('installed.json'),
      keptIn,
    });

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'rideout-kept-'));
    built = 0;
    mkdirSync(at('sources', 'deep'), { recursive: true });
    for (const file of ['page.html', 'other.html', 'installed.json', 'sources/a.ts', 'sources/deep/b.ts'])
      writeFileSync(at(file), `as ${file} was`);
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is built once, and the same text afterwards', async () => {
    expect(await ask()).toBe('shell 1 é');
    expect(await ask()).toBe('shell 1 é');
    expect(built).toBe(1);
  });

  it.each(['page.html', 'installed.json', 'sources/a.ts', 'sources/deep/b.ts'])(
    'is built anew when %s has changed, and once more when it is as it was',
    async (file) => {
      await ask();
      writeFileSync(at(file), 'changed');
      expect(await ask()).toBe('shell 2 é');
      expect(await ask()).toBe('shell 2 é');
      writeFileSync(at(file), `as ${file} was`);
      expect(await ask()).toBe('shell 3 é');
      expect(readdirSync(at('kept'))).toHaveLength(1);
    },
  );

  it('is built anew when a source came or went', async () => {
    await ask();
    writeFileSync(at('sources', 'c.ts'), '');
    expect(await ask()).toBe('shell 2 é');
    rmSync(at('sources', 'deep', 'b.ts'));
    expect(await ask()).toBe('shell 3 é');
  });

  it('is built once for all who ask while it is being built', async () => {
    expect(await Promise.all([ask(), ask()])).toEqual(['shell 1 é', 'shell 1 é']);
  });

  it('leaves those of other pages alone', async () => {
    await ask();
    await ask(at('other.html'));
    expect(await ask()).toBe('shell 1 é');
  });

  it('is built each time where it cannot be kept', async () => {
    const noFolder = at('installed.json', 'under a file');
    expect(await ask(undefined, noFolder)).toBe('shell 1 é');
    expect(await ask(undefined, noFolder)).toBe('shell 2 é');
  });

  it('is not kept when it could not be built', async () => {
    const fails = keptShell(at('page.html'), () => Promise.reject(new Error('no such cell')), {
      folders: [at('sources')],
      installed: at('installed.json'),
      keptIn: at('kept'),
    });
    await expect(fails).rejects.toThrow('no such cell');
    expect(await ask()).toBe('shell 1 é');
  });
});
