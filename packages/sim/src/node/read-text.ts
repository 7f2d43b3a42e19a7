import { isUtf8 } from 'node:buffer';
import { readFileSync } from 'node:fs';
import type { Finding } from '../scenario/findings.ts';

/** What stands in the way of reading a file, as part of a finding. */
export type TextFault = Pick<Finding, 'found' | 'expected' | 'hint'>;

const BYTE_ORDER_MARKS_16 = ['fffe', 'feff'];

/** The text of a file, or why it has none that can be read. Bytes that are no UTF-8 would be read as other letters. */
export function readText(path: string): { readonly text: string } | { readonly fault: TextFault } {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return { fault: { ...whyNotRead(path, error), hint: undefined } };
  }
  const found = otherEncoding(bytes);
  if (found === undefined) return { text: bytes.toString('utf8') };
  return { fault: { found, expected: 'a text in UTF-8', hint: 'Save it as UTF-8.' } };
}

function whyNotRead(path: string, error: unknown): Pick<Finding, 'found' | 'expected'> {
  const { code } = error as NodeJS.ErrnoException;
  const expected = 'a file that can be read';
  if (code === 'ENOENT') return { found: `no file at ${path}`, expected };
  if (code === 'EISDIR') return { found: `a folder at ${path}`, expected };
  return { found: `a file that cannot be read (${code})`, expected };
}

function otherEncoding(bytes: Buffer): string | undefined {
  if (BYTE_ORDER_MARKS_16.includes(bytes.subarray(0, 2).toString('hex'))) return 'a text in UTF-16';
  if (bytes.includes(0)) return 'zero bytes, as in UTF-16 or in a file that is no text';
  if (isUtf8(bytes)) return undefined;
  const lines = bytes.toString('latin1').split('\n');
  const line = lines.findIndex((each) => !isUtf8(Buffer.from(each, 'latin1'))) + 1;
  return `letters in line ${line} that are not UTF-8`;
}
