/** Plain text fitted into columns. Lengths are counted in code points. */

const lengthOf = (text: string): number => Array.from(text).length;

/** Breaks text at spaces into lines of at most `width`; a longer word is cut. A no-break space holds. */
export function wrapLines(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((long) => pieces(long, width))) {
    if (line === '') line = word;
    else if (lengthOf(line) + 1 + lengthOf(word) <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}

function pieces(word: string, width: number): string[] {
  const points = Array.from(word);
  const cut: string[] = [];
  for (let i = 0; i < points.length; i += width) cut.push(points.slice(i, i + width).join(''));
  return cut;
}

/** A paragraph: the first line after `first`, the others under it. Both are the same length. */
export function paragraph(
  text: string,
  width: number,
  first = '',
  rest = ' '.repeat(lengthOf(first)),
): string[] {
  return wrapLines(text, width - lengthOf(first)).map((line, i) => (i === 0 ? first : rest) + line);
}

export function toLeft(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - lengthOf(text)));
}

export function toRight(text: string, width: number): string {
  return ' '.repeat(Math.max(0, width - lengthOf(text))) + text;
}
