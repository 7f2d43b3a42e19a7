/** The sample of a series that stands before its sentence: dash, marker and colour as in the picture. */
import { svg } from '../elements.ts';
import type { Marker, SeriesStyle } from './series-style.ts';

const OUTLINES: Readonly<Record<Marker, string>> = {
  circle: 'M5 0A5 5 0 1 1 -5 0A5 5 0 1 1 5 0Z',
  square: 'M-4.5 -4.5H4.5V4.5H-4.5Z',
  triangle: 'M0 -5.5L5.5 4.5H-5.5Z',
  diamond: 'M0 -6L5 0L0 6L-5 0Z',
  cross: 'M-2 -6H2V-2H6V2H2V6H-2V2H-6V-2H-2Z',
};

/** A line with its marker. */
export function seriesKey({ colour, dash, marker }: SeriesStyle): SVGElement {
  return svg`<svg viewBox="0 0 52 22">
    <line x1="0" x2="52" y1="11" y2="11" stroke=${colour} stroke-width="2.25" stroke-dasharray=${dash.join(' ')}></line>
    ${markerShape(marker, colour, 'translate(26 11)')}
  </svg>`;
}

/** A line in its band, without a marker. */
export function bandKey({ colour, dash }: Pick<SeriesStyle, 'colour' | 'dash'>): SVGElement {
  return svg`<svg viewBox="0 0 52 22">
    <rect x="0" y="5" width="52" height="12" fill=${colour} fill-opacity="0.28"></rect>
    <line x1="0" x2="52" y1="11" y2="11" stroke=${colour} stroke-width="2" stroke-dasharray=${dash.join(' ')}></line>
  </svg>`;
}

/** A bar with its marker on it: value and interval. */
export function intervalKey({ colour, marker }: SeriesStyle): SVGElement {
  return svg`<svg viewBox="0 0 52 22">
    <line x1="6" x2="46" y1="11" y2="11" stroke=${colour} stroke-width="7" stroke-opacity="0.35"></line>
    ${markerShape(marker, colour, 'translate(26 11)')}
  </svg>`;
}

/** A filled bar, outlined in its colour. */
export function barKey({
  colour,
  opacity,
}: {
  readonly colour: string;
  readonly opacity: number;
}): SVGElement {
  return svg`<svg viewBox="0 0 52 22"><rect x="3" y="5" width="46" height="12" fill=${colour} fill-opacity=${opacity} stroke=${colour}></rect></svg>`;
}

export function markerShape(marker: Marker, colour: string, transform: string): SVGElement {
  return svg`<path d=${OUTLINES[marker]} transform=${transform} fill=${colour}></path>`;
}
