/** Where words go: answers to standard output, everything else to standard error. */
import { overridesTyped, type Overrides } from './render-overrides.ts';
import { plainSigns, type TerminalLook } from './render-style.ts';

export interface OutputOptions {
  readonly quiet?: boolean;
  readonly json?: boolean;
  readonly ascii?: boolean;
}

const MOST_COLUMNS = 100;

/** What this terminal can show; colour only where it is one and nobody asked for none (NO_COLOR). */
export function terminalLook(options: OutputOptions & Overrides): TerminalLook {
  const { isTTY, columns } = process.stdout;
  const width = Math.min(MOST_COLUMNS, Math.max(40, isTTY && columns > 0 ? columns : 80));
  return {
    width,
    colour: isTTY && process.env['NO_COLOR'] === undefined,
    ascii: options.ascii ?? false,
    overrides: overridesTyped(options),
  };
}

export function say(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** A reader that has seen enough (`| head`) is no fault, and no reason not to write files. */
export function bearClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}

/** A remark beside the answer; silent when quiet. */
export function remark(text: string, options: OutputOptions): void {
  if (options.quiet !== true) process.stderr.write(`${signsFor(text, options)}\n`);
}

/** Our own words with the signs that were asked for. */
export function signsFor(text: string, { ascii }: OutputOptions): string {
  return ascii === true ? plainSigns(text) : text;
}
