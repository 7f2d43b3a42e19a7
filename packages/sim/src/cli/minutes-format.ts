/** How the minutes, or the events, of an outage are written: as the name of their file says. */
import { extname } from 'node:path';
import { listed } from '../trials/listed.ts';
import { OptionError } from './report-error.ts';

const TABLE_FORMATS = ['csv', 'arrow', 'json'] as const;
const EVENT_FORMATS = ['txt', 'json'] as const;
export type MinutesFormat = (typeof TABLE_FORMATS | typeof EVENT_FORMATS)[number];

interface Wanted {
  readonly out?: string;
  readonly json?: boolean;
  readonly events?: boolean;
}

/** @throws OptionError for a name whose ending promises what is not written */
export function minutesFormat({ out, json, events }: Wanted): MinutesFormat {
  const formats: readonly MinutesFormat[] = events === true ? EVENT_FORMATS : TABLE_FORMATS;
  const allowed = json === true ? formats.filter((format) => format === 'json') : formats;
  if (out === undefined) return allowed[0]!;
  const ending = extname(out).slice(1).toLowerCase();
  const format = allowed.find((each) => each === ending);
  if (format === undefined)
    throw new OptionError(
      `--out: found ${JSON.stringify(out)}; expected a name that ends in ${endings(allowed)}`,
    );
  return format;
}

function endings(formats: readonly MinutesFormat[]): string {
  return listed(
    formats.map((format) => `.${format}`),
    'or',
  );
}
