/** Whether files can be written somewhere, asked before the long work and not after it. */
import { open, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { WriteError, writeTrouble } from './write-whole.ts';

/**
 * Tries a file in `folder`, or, where that is not there yet, in the nearest folder above it; leaves nothing behind.
 *
 * @throws WriteError naming the folder and what stands in the way.
 */
export async function assertCanWrite(folder: string): Promise<void> {
  const probe = `.${process.pid}.rideout-try`;
  try {
    const path = join(await nearestFolder(resolve(folder)), probe);
    const handle = await open(path, 'wx');
    await handle.close();
    await rm(path, { force: true });
  } catch (cause) {
    throw new WriteError(`nothing can be written to "${folder}": ${writeTrouble(cause)}`, { cause });
  }
}

/**
 * The same for one file, which may stand there already.
 *
 * @throws WriteError when a folder stands where the file should go, too
 */
export async function assertCanWriteFile(file: string): Promise<void> {
  const there = await stat(file).catch(() => undefined);
  if (there?.isDirectory() === true)
    throw new WriteError(`nothing can be written to "${file}": that is a folder, not a file`);
  await assertCanWrite(dirname(file));
}

async function nearestFolder(folder: string): Promise<string> {
  try {
    if ((await stat(folder)).isDirectory()) return folder;
  } catch (error) {
    const above = dirname(folder);
    if ((error as NodeJS.ErrnoException).code === 'ENOENT' && above !== folder) return nearestFolder(above);
    throw error;
  }
  throw Object.assign(new Error('a file stands there'), { code: 'EEXIST' });
}
