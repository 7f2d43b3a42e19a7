/** Stretches of the day as people type them, in the words of the file. */
import { clockTimesFrom } from '../charts/look.ts';

/** "6:30 am to 10:30 pm", "6:30 - 22:30" → "06:30-22:30"; what is no such stretch stays as it is, to be told of. */
export function stretchFrom(text: string): string {
  return clockTimesFrom(text)
    .trim()
    .replace(/\s*(?:-|–|\bto\b)\s*/i, '-')
    .replace(/\b(\d):/g, '0$1:');
}

/** Several, with commas, semicolons or lines between them. */
export function stretchesFrom(text: string): string[] {
  return text
    .split(/[,;\n]+/)
    .map(stretchFrom)
    .flatMap((part) => part.split(/\s+/))
    .filter((part) => part !== '');
}
