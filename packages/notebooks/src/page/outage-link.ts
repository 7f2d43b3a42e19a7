/** How a link carries which outage is looked at, and which part of it. */
import type { OutageLook, OutageRange } from '../charts/outage-view.ts';

export interface OutageSettings extends OutageLook {
  readonly draw: number;
  /** Undefined: the whole outage. */
  readonly range: OutageRange | undefined;
}

/** The words of the link that differ from the usual ones. */
export function outageLink(settings: OutageSettings, usual: OutageSettings): string {
  const said = new URLSearchParams();
  const { draw, clock, temperature, range } = settings;
  if (draw !== usual.draw) said.set('draw', String(draw));
  if (clock !== usual.clock) said.set('clock', String(clock));
  if (temperature !== usual.temperature) said.set('degrees', temperature);
  if (range) said.set('minutes', `${range.from}-${range.to}`);
  if (range?.at !== undefined) said.set('at', String(range.at));
  return said.toString();
}

/** Settings from a link, and a sentence for each part of it that cannot be followed. */
export function outageSettingsFrom(
  hash: string,
  usual: OutageSettings,
): { settings: OutageSettings; complaints: readonly string[] } {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  const complaints: string[] = [];
  const read = <T>(
    name: string,
    otherwise: T,
    parse: (text: string) => T | undefined,
    expected: string,
  ): T => {
    const text = said.get(name);
    if (text === null) return otherwise;
    const value = parse(text);
    if (value === undefined)
      complaints.push(
        `The link says ${name} = “${text.slice(0, 60)}”; this page takes ${expected}. The usual setting is used.`,
      );
    return value ?? otherwise;
  };
  const at = read<number | undefined>('at', undefined, whole, 'a whole number of minutes');
  const range = read<OutageRange | undefined>(
    'minutes',
    undefined,
    (text) => rangeFrom(text, at),
    'two whole numbers of minutes, such as 1440-2880',
  );
  return {
    settings: {
      draw: read('draw', usual.draw, whole, 'a whole number from 0'),
      clock: read(
        'clock',
        usual.clock,
        (text) => (text === '12' ? 12 : text === '24' ? 24 : undefined),
        '12 or 24',
      ),
      temperature: read(
        'degrees',
        usual.temperature,
        (text) => (text === 'C' || text === 'F' ? text : undefined),
        'C or F',
      ),
      range,
    },
    complaints,
  };
}

function whole(text: string): number | undefined {
  return /^\d{1,6}$/.test(text) ? Number(text) : undefined;
}

function rangeFrom(text: string, at: number | undefined): OutageRange | undefined {
  const [from, to, more] = text.split('-').map(whole);
  if (from === undefined || to === undefined || more !== undefined || to <= from) return undefined;
  return { from, to, at };
}
