/** What a terminal can show. */
export interface TerminalLook {
  /** Columns, 40 or more; text never runs past it. */
  readonly width: number;
  readonly colour: boolean;
  /** Leave out everything that is not plain ASCII, the words people wrote excepted. */
  readonly ascii?: boolean;
  /** Options that stood in for what the file says, as typed; empty for none. */
  readonly overrides?: string;
}

/** Emphasis that is never the only sign of anything. */
export interface Style {
  readonly heading: (text: string) => string;
  readonly strong: (text: string) => string;
  readonly quiet: (text: string) => string;
}

export function styleFor(look: TerminalLook): Style {
  const wrapIn = (on: number, off: number) => (text: string) =>
    look.colour && text !== '' ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  return { heading: wrapIn(36, 39), strong: wrapIn(1, 22), quiet: wrapIn(2, 22) };
}

const PLAIN: Readonly<Record<string, string>> = {
  '−': '-',
  '–': '-',
  '“': '"',
  '”': '"',
  '’': "'",
  '·': '*',
  '×': 'x',
  '²': '2',
  '³': '3',
  '\u00a0': ' ',
  // never in a table, so they may be longer
  '≥': '>=',
  '±': '+-',
  '…': '...',
};

/** Our own signs in plain ASCII. What stands in tables is as long as before, so that columns stay columns. */
export function plainSigns(text: string): string {
  return text
    .replaceAll('≥ ', '>=')
    .replace(/(\d[ \u00a0])°C/gu, '$1C') // prose: 4.4 C
    .replaceAll('°', ' ')
    .replace(/[−–“”’·×²³\u00a0≥±…]/gu, (sign) => PLAIN[sign]!);
}
