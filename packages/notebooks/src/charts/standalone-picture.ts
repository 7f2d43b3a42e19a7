/**
 * A chart as an SVG document of its own: the drawing that stands on the page, in the light colours, with its finding
 * above, its key and provenance below, so that a picture passed on still says what it shows and where it is from.
 *
 * Both chart libraries draw SVG, and only one of them can save; this serves both alike, and turns the house style's
 * variables, which mean nothing outside the page, into the colours they stand for.
 */
export interface PictureParts {
  readonly picture: SVGSVGElement;
  readonly title: string;
  readonly note: string;
  readonly key: readonly { readonly sample: SVGElement; readonly text: string }[];
  readonly foot: string;
}

export interface StandalonePicture {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

export function standalonePicture({ picture, title, note, key, foot }: PictureParts): StandalonePicture {
  const drawn = drawnSize(picture);
  const width = drawn.width + 2 * MARGIN;
  const blocks = [
    gap(MARGIN),
    textBlock(title, TITLE, drawn.width),
    textBlock(note, SMALL, drawn.width),
    gap(8),
    { height: drawn.height, draw: (top: number) => [placed(picture, MARGIN, top, drawn)] },
    gap(6),
    ...key.map((item) => keyBlock(item, drawn.width)),
    gap(6),
    textBlock(foot, SMALL, drawn.width),
    gap(MARGIN),
  ];
  const height = Math.ceil(blocks.reduce((sum, block) => sum + block.height, 0));
  const page = element('svg', {
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    'font-family': 'sans-serif',
  });
  page.append(element('rect', { width, height, fill: 'var(--paper)' }), ...stacked(blocks));
  return { svg: literalColours(new XMLSerializer().serializeToString(page)), width, height };
}

/** A strip across the picture. */
interface Block {
  readonly height: number;
  readonly draw: (top: number) => readonly SVGElement[];
}

interface Lettering {
  readonly px: number;
  readonly weight: number;
  readonly fill: string;
}

const SVG = 'http://www.w3.org/2000/svg';
const MARGIN = 16;
const TITLE: Lettering = { px: 17, weight: 650, fill: 'var(--ink)' };
const KEY: Lettering = { px: 13, weight: 400, fill: 'var(--ink)' };
const SMALL: Lettering = { px: 11.5, weight: 400, fill: 'var(--ink-soft)' };
const SAMPLE = { width: 52, height: 22 };
const LEADING = 1.3;
const LETTER_EM = 0.56; // width of a letter, about, generously

/** Each below the one before. */
function stacked(blocks: readonly Block[]): SVGElement[] {
  let top = 0;
  return blocks.flatMap((block) => {
    const drawn = block.draw(top);
    top += block.height;
    return drawn;
  });
}

function gap(height: number): Block {
  return { height, draw: () => [] };
}

function textBlock(text: string, look: Lettering, width: number, left = MARGIN): Block {
  const lines = wrapped(text, width / (look.px * LETTER_EM));
  const step = look.px * LEADING;
  return {
    height: lines.length * step,
    draw: (top) => lines.map((line, i) => textLine(line, look, left, top + i * step + look.px)),
  };
}

function keyBlock({ sample, text }: PictureParts['key'][number], width: number): Block {
  const indent = SAMPLE.width + 10;
  const beside = textBlock(text, KEY, width - indent, MARGIN + indent);
  return {
    height: Math.max(SAMPLE.height, beside.height + 4),
    draw: (top) => [placed(sample, MARGIN, top, SAMPLE), ...beside.draw(top + 2)],
  };
}

function textLine(text: string, { px, weight, fill }: Lettering, x: number, y: number): SVGElement {
  const line = element('text', { x, y, fill, 'font-size': px, 'font-weight': weight });
  line.textContent = text;
  return line;
}

function drawnSize(picture: SVGSVGElement): { width: number; height: number } {
  const { width, height } = picture.viewBox.baseVal;
  return { width, height };
}

function placed(
  drawing: SVGElement,
  x: number,
  y: number,
  size: { width: number; height: number },
): SVGElement {
  const copy = drawing.cloneNode(true) as SVGElement;
  for (const name of ['style', 'aria-hidden', 'focusable']) copy.removeAttribute(name);
  const attributes = { x, y, ...size, color: 'var(--ink)', 'font-size': KEY.px, overflow: 'visible' };
  for (const [name, value] of Object.entries(attributes)) copy.setAttribute(name, String(value));
  return copy;
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, String(value));
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

/** `var(--ink)` → the light colour it stands for. */
function literalColours(svg: string): string {
  const light = document.createElement('div');
  light.className = 'paper';
  document.body.append(light);
  const style = getComputedStyle(light);
  const text = svg.replace(/var\((--[\w-]+)\)/g, (_, name: string) => style.getPropertyValue(name).trim());
  light.remove();
  return text;
}
