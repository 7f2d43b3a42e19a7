/** How a link carries which outage is looked at, and which part of it. */
import type { OutageRange } from '../charts/outage-view.ts';
import { wordReader } from './page-link.ts';

export interface OutageSettings {
  readonly draw: number;
  /** Undefined: the whole outage. */
  readonly range: OutageRange | undefined;
}

export const OUTAGE_WORDS = ['draw', 'minutes', 'at'];

/** Only what differs from the first outage, all of it. */
export function outageLink({ draw, range }: OutageSettings): URLSearchParams {
  const said = new URLSearchParams();
  if (draw !== 0) said.set('draw', String(draw));
  if (range) said.set('minutes', `${range.from}-${range.to}`);
  if (range?.at !== undefined) said.set('at', String(range.at));
  return said;
}

/** Settings from a link, and a sentence for each part of it that cannot be followed. */
export function outageSettingsFrom(said: URLSearchParams): {
  settings: OutageSettings;
  complaints: readonly string[];
} {
  const complaints: string[] = [];
  const read = wordReader(said, complaints);
  const at = read<number | undefined>('at', undefined, whole, 'a whole number of minutes');
  const range = read<OutageRange | undefined>(
    'minutes',
    undefined,
    (text) => rangeFrom(text, at),
    'two whole numbers of minutes, such as 1440-2880',
  );
  return { settings: { draw: read('draw', 0, whole, 'a whole number from 0'), range }, complaints };
}

function whole(text: string): number | undefined {
  return /^\d{1,6}$/.test(text) ? Number(text) : undefined;
}

function rangeFrom(text: string, at: number | undefined): OutageRange | undefined {
  const [from, to, more] = text.split('-').map(whole);
  if (from === undefined || to === undefined || more !== undefined || to <= from) return undefined;
  return { from, to, at };
}
