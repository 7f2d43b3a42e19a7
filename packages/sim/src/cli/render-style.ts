/** What a terminal can show. */
export interface TerminalLook {
  /** Columns, 40 or more; text never runs past it. */
  readonly width: number;
  readonly colour: boolean;
  /** Leave out everything that is not plain ASCII, the words people wrote excepted. */
  readonly ascii?: boolean;
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

/** Our own signs in plain ASCII, each as long as before, so that columns stay columns. */
export function plainSigns(text: string): string {
  const signs: Readonly<Record<string, string>> = { '−': '-', '–': '-', '“': '"', '”': '"', '’': "'" };
  return text.replaceAll('≥ ', '>=').replace(/[−–“”’]/gu, (sign) => signs[sign] ?? sign);
}
