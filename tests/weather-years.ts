/** Weather years that the repository does not carry: TMY3 files and the like, named by station number. See DEVELOPERS.md. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const BESIDE_THE_REPOSITORY = fileURLToPath(new URL('../../shared/weather', import.meta.url));

/** Where the file is; undefined: nowhere, and what needs it is skipped. */
export function weatherYearFile(name: string): string | undefined {
  const named = process.env['RIDEOUT_WEATHER_YEARS'];
  const folders = named === undefined ? [BESIDE_THE_REPOSITORY] : [named, BESIDE_THE_REPOSITORY];
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path));
}

/** Why it was skipped. */
export function withoutWeatherYear(name: string): string {
  return `skipped: no ${name} in the folder that RIDEOUT_WEATHER_YEARS names`;
}
