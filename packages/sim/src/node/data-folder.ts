import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The shipped tables: beside the built package, or at the top of the repository when run from source. */
const places = ['../../data/', '../../../../data/'].map((path) =>
  fileURLToPath(new URL(path, import.meta.url)),
);

/** Full path of a shipped file such as `normals.csv`. */
export function dataFile(name: string): string {
  const folder = places.find((place) => existsSync(place + name));
  if (folder === undefined)
    throw new Error(`the shipped file ${name} is missing; looked in ${places.join(' and ')}`);
  return folder + name;
}

/** The text of a shipped file such as `normals.csv`. */
export function readDataFile(name: string): string {
  return readFileSync(dataFile(name), 'utf8');
}
