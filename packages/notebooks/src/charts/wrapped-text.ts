/** Names in pictures, broken into lines that fit: a name that is cut off may be the half that tells it from another. */

export const LINE_PX = 15; // from line to line, at the sizes that charts write in

/** Width of one line, px; `font` as CSS writes it, as in "650 13px system-ui". */
export type Measure = (text: string, font: string) => number;

let pen: CanvasRenderingContext2D | null | undefined;

export function textWidth(text: string, font: string): number {
  pen ??= document.createElement('canvas').getContext('2d');
  if (!pen) return text.length * WIDE_PX;
  pen.font = font;
  return pen.measureText(text).width;
}
const WIDE_PX = 8;

/** Broken between words, and within a word that is wider than a line by itself. No sign is lost but spaces at breaks. */
export function wrapped(text: string, font: string, widthPx: number, measure: Measure = textWidth): string[] {
  const fits = (line: string) => measure(line, font) <= widthPx;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = broken(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1)!;
  }
  return [...lines, line];
}

function broken(word: string, fits: (piece: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && !fits(piece + sign)) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}
