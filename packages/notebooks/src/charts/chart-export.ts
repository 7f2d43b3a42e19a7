/**
 * A chart as a file: the drawing that stands on the page, in the light colours, with its finding above and its
 * provenance below, so that a picture passed on still says what it shows and where it is from.
 *
 * Both chart libraries draw SVG, and only one of them can save; this serves both alike, and turns the house style's
 * variables, which mean nothing outside the page, into the colours they stand for.
 */
export interface ExportWords {
  readonly title: string;
  readonly note: string;
  readonly foot: string;
}

const SVG = 'http://www.w3.org/2000/svg';
const MARGIN = 16;
const PNG_SCALE = 2;

/** Saves as `.png` when the name says so, as SVG otherwise. */
export async function savePicture(
  picture: SVGSVGElement,
  words: ExportWords,
  fileName: string,
): Promise<void> {
  const { text, width, height } = standalonePicture(picture, words);
  if (!fileName.endsWith('.png')) return saveText(text, 'image/svg+xml', fileName);
  save(await rasterised(text, width, height), fileName);
}

export function saveText(text: string, type: string, fileName: string): void {
  save(new Blob([text], { type: `${type};charset=utf-8` }), fileName);
}

/** The drawing as an SVG document of its own. */
export function standalonePicture(
  picture: SVGSVGElement,
  { title, note, foot }: ExportWords,
): { text: string; width: number; height: number } {
  const { width: drawnWidth, height: drawnHeight } = drawnSize(picture);
  const width = drawnWidth + 2 * MARGIN;
  const head = [...lines(title, width, TITLE), ...lines(note, width, SMALL)];
  const tail = lines(foot, width, SMALL);
  const top = MARGIN + heightOf(head) + 8;
  const height = top + drawnHeight + 8 + heightOf(tail) + MARGIN;
  const page = element('svg', { width, height, viewBox: `0 0 ${width} ${height}` });
  page.append(
    element('rect', { width, height, fill: 'var(--paper)' }),
    ...written(head, MARGIN),
    placed(picture, MARGIN, top, drawnWidth, drawnHeight),
    ...written(tail, top + drawnHeight + 8),
  );
  return { text: literalColours(new XMLSerializer().serializeToString(page)), width, height };
}

interface Lettering {
  readonly px: number;
  readonly weight: number;
  readonly fill: string;
}
interface Line extends Lettering {
  readonly text: string;
}
const TITLE: Lettering = { px: 17, weight: 650, fill: 'var(--ink)' };
const SMALL: Lettering = { px: 11.5, weight: 400, fill: 'var(--ink-soft)' };
const LEADING = 1.3;
const LETTER_EM = 0.56; // width of a letter, about, generously

function lines(text: string, width: number, lettering: Lettering): Line[] {
  const most = (width - 2 * MARGIN) / (lettering.px * LETTER_EM);
  return wrapped(text, most).map((line) => ({ ...lettering, text: line }));
}

const heightOf = (all: readonly Line[]) => all.reduce((sum, { px }) => sum + px * LEADING, 0);

/** Lines one under the other, the first at `top`. */
function written(all: readonly Line[], top: number): SVGElement[] {
  return all.map(({ text, px, weight, fill }, i) => {
    const y = top + heightOf(all.slice(0, i)) + px;
    const look = { x: MARGIN, y, fill, 'font-size': px, 'font-weight': weight, 'font-family': 'sans-serif' };
    const line = element('text', look);
    line.textContent = text;
    return line;
  });
}

function drawnSize(picture: SVGSVGElement): { width: number; height: number } {
  const box = picture.viewBox.baseVal;
  return box?.width ? box : { width: picture.clientWidth, height: picture.clientHeight };
}

function placed(picture: SVGSVGElement, x: number, y: number, width: number, height: number): SVGElement {
  const copy = picture.cloneNode(true) as SVGSVGElement;
  for (const name of ['style', 'aria-hidden', 'focusable']) copy.removeAttribute(name);
  for (const [name, value] of Object.entries({ x, y, width, height })) copy.setAttribute(name, String(value));
  copy.setAttribute('font-family', 'sans-serif');
  copy.setAttribute('overflow', 'visible');
  return copy;
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes))
    if (key !== 'xmlns') node.setAttribute(key, String(value));
  return node;
}

function wrapped(text: string, most: number): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1]!;
    if (last && last.length + word.length + 1 > most) lines.push(word);
    else lines[lines.length - 1] = last ? `${last} ${word}` : word;
  }
  return lines;
}

/** `var(--ink)` → the light colour it stands for; other variables → nothing, as outside a page. */
function literalColours(svg: string): string {
  const light = document.createElement('div');
  light.className = 'paper';
  document.body.append(light);
  const style = getComputedStyle(light);
  const text = svg.replace(/var\((--[\w-]+)\)/g, (_, name: string) => style.getPropertyValue(name).trim());
  light.remove();
  return text;
}

async function rasterised(svg: string, width: number, height: number): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width * PNG_SCALE;
  canvas.height = height * PNG_SCALE;
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be made'))),
      'image/png',
    ),
  );
}

function save(blob: Blob, fileName: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
