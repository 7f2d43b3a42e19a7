import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { WriteError, writeWhole } from '../../../packages/sim/src/node/write-whole.ts';

let folder = '';
beforeEach(async () => (folder = await mkdtemp(join(tmpdir(), 'write-whole-'))));
afterEach(async () => rm(folder, { recursive: true, force: true }));

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (name: string) => readFile(join(folder, name), 'utf8');

describe('writeWhole', () => {
  it('makes the folder and writes every file', async () => {
    const inner = join(folder, 'new', 'deeper');
    await writeWhole(inner, [
      { name: 'a', bytes: bytes('one') },
      { name: 'b', bytes: bytes('two') },
    ]);
    expect(await readdir(inner)).toEqual(['a', 'b']);
    expect(await readFile(join(inner, 'b'), 'utf8')).toBe('two');
  });

  it('takes plain names only, and writes nothing when one leads elsewhere', async () => {
    const inner = join(folder, 'inner');
    for (const name of ['../x', 'sub/x', '/x', '..', '.', '']) {
      const attempt = writeWhole(inner, [
        { name: 'a', bytes: bytes('one') },
        { name, bytes: bytes('two') },
      ]);
      await expect(attempt).rejects.toThrow(`name: found ${JSON.stringify(name)}; expected the plain name`);
    }
    expect(await readdir(folder)).toEqual([]);
  });

  it('replaces what was there and leaves nothing beside it', async () => {
    await writeFile(join(folder, 'a'), 'old');
    await writeWhole(folder, [{ name: 'a', bytes: bytes('new') }]);
    expect(await readdir(folder)).toEqual(['a']);
    expect(await read('a')).toBe('new');
  });

  it('puts everything back when one file cannot take its place', async () => {
    await writeFile(join(folder, 'a'), 'old');
    await mkdir(join(folder, 'c'));
    const attempt = writeWhole(
      folder,
      ['a', 'b', 'c'].map((name) => ({ name, bytes: bytes('new') })),
    );
    await expect(attempt).rejects.toThrow(WriteError);
    expect(await readdir(folder)).toEqual(['a', 'c']);
    expect(await read('a')).toBe('old');
  });

  it('says what is in the way', async () => {
    await mkdir(join(folder, 'c'));
    await writeFile(join(folder, 'file'), '');
    await expect(writeWhole(folder, [{ name: 'c', bytes: bytes('') }])).rejects.toThrow(
      `nothing was written to "${folder}": "${join(folder, 'c')}" is a folder, and a file should go there`,
    );
    await expect(writeWhole(join(folder, 'file', 'x'), [{ name: 'a', bytes: bytes('') }])).rejects.toThrow(
      `nothing was written to "${join(folder, 'file', 'x')}": part of that path is a file, not a folder`,
    );
    await expect(writeWhole(join(folder, 'file'), [{ name: 'a', bytes: bytes('') }])).rejects.toThrow(
      'that is a file, not a folder',
    );
  });

  it.skipIf(process.platform !== 'linux')('says so when the folder may not be written to', async () => {
    const attempt = writeWhole('/sys/kernel', [{ name: 'a', bytes: bytes('') }]); // takes no new files, not even from root
    await expect(attempt).rejects.toThrow(
      'nothing was written to "/sys/kernel": you may not write there. Choose another folder',
    );
  });
});
