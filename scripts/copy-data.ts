/** Copies what the package that is about to be built ships besides its code: tables, demo households, licence and README. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
cpSync(here('../data'), here('../packages/sim/data'), { recursive: true });
cpSync(here('../LICENSE'), here('../packages/sim/LICENSE'));
const readme = readFileSync(here('../README.md'), 'utf8');
writeFileSync(here('../packages/sim/README.md'), readme.replaceAll('](packages/sim/', ']('));
