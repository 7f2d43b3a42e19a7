/** Where words go: answers to standard output, everything else to standard error. */
import { writeTrouble } from '../node/write-whole.ts';
import { EXIT } from './exit-codes.ts';
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

let isAnswerLost = false;

/**
 * A reader that has seen enough (`| head`) is no fault, and no reason not to write files. An answer that cannot be written
 * (`> file` on a full disk) is told once; files are written all the same.
 */
export function bearOutputTrouble(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE' || isAnswerLost) return;
    isAnswerLost = true;
    process.exitCode = EXIT.cannotWrite; // the fault may come when everything else is done
    process.stderr.write(`the answer could not be written to standard output: ${writeTrouble(error)}\n`);
  });
  process.stderr.on('error', () => {}); // there is nowhere left to tell it
}

/** How the program ends, given how its verb did. */
export function finalExitCode(code: number): number {
  return isAnswerLost ? EXIT.cannotWrite : code;
}

/** A remark beside the answer; silent when quiet. */
export function remark(text: string, options: OutputOptions): void {
  if (options.quiet !== true) process.stderr.write(`${signsFor(text, options)}\n`);
}

/** Our own words with the signs that were asked for. */
export function signsFor(text: string, { ascii }: OutputOptions): string {
  return ascii === true ? plainSigns(text) : text;
}
