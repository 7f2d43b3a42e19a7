import { lstat, mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';

/** A file to write, by its plain name in the folder. */
export interface FileToWrite {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Why a folder could not be written to, in words for the person who asked. The cause is kept. */
export class WriteError extends Error {
  override readonly name = 'WriteError';
}

/**
 * Writes a set of files whole or not at all. Each is written beside its place and flushed to the disk; only when all
 * are there do they take their places, and what stood there before is put back if one cannot. Nothing half-written is
 * left behind. The folder is made if it is missing.
 *
 * @throws WriteError naming the folder and what stood in the way; the folder's own files are then as before.
 * @throws RangeError for a name that leads elsewhere, such as `../notes`; nothing is written.
 */
export async function writeWhole(folder: string, files: readonly FileToWrite[]): Promise<void> {
  for (const { name } of files) assertPlainName(name);
  const staged = files.map(({ name, bytes }) => stage(join(folder, name), bytes));
  try {
    await mkdir(folder, { recursive: true });
    for (const file of staged) await writeFlushed(file.beside, file.bytes);
    for (const file of staged) await takePlace(file);
    await flushFolder(folder);
  } catch (cause) {
    for (const file of staged) await putBack(file);
    throw new WriteError(`nothing was written to "${folder}": ${writeTrouble(cause)}`, { cause });
  }
  for (const file of staged) await rm(file.before, { force: true });
}

function assertPlainName(name: string): void {
  if (name === '' || name === '.' || name === '..' || basename(name) !== name)
    throw new RangeError(
      `name: found ${JSON.stringify(name)}; expected the plain name of a file in the folder`,
    );
}

/** A file on its way: where it goes, where it waits, where what it replaces waits, and how far it has come. */
interface Staged {
  readonly target: string;
  readonly beside: string;
  readonly before: string;
  readonly bytes: Uint8Array;
  kept: boolean;
  placed: boolean;
}

function stage(target: string, bytes: Uint8Array): Staged {
  return {
    target,
    beside: `${target}.${process.pid}.new`,
    before: `${target}.${process.pid}.old`,
    bytes,
    kept: false,
    placed: false,
  };
}

async function takePlace(file: Staged): Promise<void> {
  file.kept = await setAside(file.target, file.before);
  await rename(file.beside, file.target);
  file.placed = true;
}

async function putBack(file: Staged): Promise<void> {
  if (file.placed) await removeQuietly(file.target);
  if (file.kept) await rename(file.before, file.target);
  await removeQuietly(file.beside);
}

async function writeFlushed(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'w');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Moves a file out of the way; false when there is none. A folder is left alone: it is not ours to replace. */
async function setAside(from: string, to: string): Promise<boolean> {
  try {
    if ((await lstat(from)).isDirectory())
      throw new WriteError(`"${from}" is a folder, and a file should go there`);
    await rename(from, to);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

/** So that the new names survive a power cut too. Some systems cannot flush a folder; that is no fault. */
async function flushFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // the files themselves are flushed
  }
}

async function removeQuietly(path: string): Promise<void> {
  await rm(path, { force: true }).catch(() => undefined);
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there. Choose another folder',
  EPERM: 'you may not write there. Choose another folder',
  EROFS: 'that disk is read-only. Choose another folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  ENOTDIR: 'part of that path is a file, not a folder',
  EEXIST: 'that is a file, not a folder',
  ENOENT: 'no file can be made there. Choose another folder',
};

/** What stood in the way of writing, in words. */
export function writeTrouble(error: unknown): string {
  const said = error instanceof Error ? error.message : String(error);
  return REASONS[codeOf(error) ?? ''] ?? said;
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}
