/**
 * Shells of our own pages, kept from one publishing to the next: building one takes seconds, and it changes only with
 * the sources and the installed packages. A shell is kept under the hash of all of them, beside the packages, so that
 * installing anew clears them away.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { dataFile, writeWhole } from '@rideout/sim/node';

/** What a shell is made from besides its page, and where it may be kept. */
export interface ShellSources {
  /** Every file in them may have gone into the shell. */
  readonly folders: readonly string[];
  /** npm's own list of what is installed, with versions. */
  readonly installed: string;
  readonly keptIn: string;
}

/** On their way: who asks meanwhile waits for the same one. */
const building = new Map<string, Promise<string>>();

/**
 * The shell of one of our pages: as kept, or built by `build` and then kept. Where there is no telling what it was made
 * from, or nowhere to keep it, it is built each time.
 */
export async function keptShell(
  page: string,
  build: (page: string) => Promise<string>,
  sources = ourSources(),
): Promise<string> {
  if (sources === undefined) return build(page);
  const name = basename(page, '.html');
  const file = `${name}.${fingerprint(page, sources)}.html`;
  const place = join(sources.keptIn, file);
  const begun = building.get(place);
  if (begun !== undefined) return begun;
  const shell = keptOrBuilt(page, build, { folder: sources.keptIn, name, file });
  building.set(place, shell);
  return shell.finally(() => building.delete(place));
}

async function keptOrBuilt(
  page: string,
  build: (page: string) => Promise<string>,
  { folder, name, file }: { readonly folder: string; readonly name: string; readonly file: string },
): Promise<string> {
  const kept = await readFile(join(folder, file), 'utf8').catch(() => undefined);
  if (kept !== undefined) return kept;
  const shell = await build(page);
  try {
    await writeWhole(folder, [{ name: file, bytes: new TextEncoder().encode(shell) }]);
    forgetOthers(folder, name, file);
  } catch {
    // A folder that cannot be written to costs the next publishing its seconds, and nobody else anything.
  }
  return shell;
}

/** Our own; undefined where npm has not left its list. */
function ourSources(): ShellSources | undefined {
  const here = fileURLToPath(new URL('..', import.meta.url));
  const sim = dirname(fileURLToPath(import.meta.resolve('@rideout/sim')));
  for (let folder = here, above = dirname(here); above !== folder; folder = above, above = dirname(folder)) {
    const installed = join(folder, 'node_modules', '.package-lock.json');
    if (!existsSync(installed)) continue;
    const keptIn = join(folder, 'node_modules', '.cache', 'rideout', 'pages');
    return { folders: [here, sim, dirname(dataFile('appliances.csv'))], installed, keptIn };
  }
  return undefined;
}

function fingerprint(page: string, { folders, installed }: ShellSources): string {
  const hash = createHash('sha256');
  for (const file of [page, installed, ...folders.flatMap(filesIn)])
    hash.update(`${file}\n`).update(createHash('sha256').update(readFileSync(file)).digest());
  return hash
    .update(process.env.NODE_ENV ?? 'production') // as the builder takes it, and leaves it set
    .digest('hex')
    .slice(0, 32);
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Shells of the page made from earlier sources. */
function forgetOthers(folder: string, name: string, file: string): void {
  for (const other of readdirSync(folder))
    if (other.startsWith(`${name}.`) && other.endsWith('.html') && other !== file)
      rmSync(join(folder, other), { force: true });
}
