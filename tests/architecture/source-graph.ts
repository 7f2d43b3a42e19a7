/** Every file under packages/sim/src with what it imports, read by the TypeScript compiler's own scanner. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const SOURCE = fileURLToPath(new URL('../../packages/sim/src/', import.meta.url));

export interface SourceFile {
  /** Path from packages/sim/src, such as `step/advance.ts`. */
  readonly path: string;
  /** Its folder, or its own name for an entry at the top. */
  readonly folder: string;
  /** Paths from packages/sim/src of the files it imports, types included. */
  readonly files: readonly string[];
  /** Everything else it imports: packages and Node's own modules. */
  readonly packages: readonly string[];
}

export function readSource(): SourceFile[] {
  const names = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' });
  return names
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map(readOne);
}

function readOne(path: string): SourceFile {
  const text = readFileSync(join(SOURCE, path), 'utf8');
  const imported = ts.preProcessFile(text, true, true).importedFiles.map((file) => file.fileName);
  const isOurs = (name: string) => name.startsWith('.');
  return {
    path,
    folder: folderOf(path),
    files: imported.filter(isOurs).map((name) => posix.normalize(posix.join(dirname(path), name))),
    packages: imported.filter((name) => !isOurs(name)),
  };
}

export function folderOf(path: string): string {
  const folder = relative('.', dirname(path));
  return folder === '' ? path : folder.split(/[\\/]/)[0]!;
}
