/** Copies the shipped tables and demo households into the package that is about to be built. */
import { cpSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
cpSync(here('../data'), here('../packages/sim/data'), { recursive: true });
