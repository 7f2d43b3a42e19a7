import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { assertCanWrite } from '../../../packages/sim/src/node/can-write.ts';

let folder = '';
beforeEach(async () => (folder = await mkdtemp(join(tmpdir(), 'can-write-'))));
afterEach(async () => rm(folder, { recursive: true, force: true }));

describe('assertCanWrite', () => {
  it('is content with a folder that is there, or that could be made, and leaves nothing behind', async () => {
    await assertCanWrite(folder);
    await assertCanWrite(join(folder, 'not', 'there', 'yet'));
    expect(await readdir(folder)).toEqual([]);
  });

  it('tells a file where the folder should be, and a file on the way to it', async () => {
    await writeFile(join(folder, 'file'), '');
    await expect(assertCanWrite(join(folder, 'file'))).rejects.toThrow('that is a file, not a folder');
    await expect(assertCanWrite(join(folder, 'file', 'deeper'))).rejects.toThrow(
      'part of that path is a file',
    );
  });
});
