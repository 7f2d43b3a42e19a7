/**
 * How one series looks. Position in the scenario decides, so a strategy keeps its look whatever else is shown.
 * Colour, dash and marker change together, and with different periods: 6 × 5 looks before two are the same,
 * and no two neighbours share a dash or a marker.
 */
export interface SeriesStyle {
  /** A colour of the house style, as CSS. */
  readonly colour: string;
  /** Dash and gap lengths, px; empty = solid. */
  readonly dash: readonly number[];
  readonly marker: Marker;
  /** A short name for narrow charts: A, B, C, … */
  readonly letter: string;
}

/** Marker names that Vega and Plot share. */
export type Marker = 'circle' | 'square' | 'triangle' | 'diamond' | 'cross';

const COLOURS = 6;
const DASHES: readonly (readonly number[])[] = [[], [8, 4], [2, 3], [12, 3, 2, 3], [5, 2, 2, 2]];
const MARKERS: readonly Marker[] = ['circle', 'square', 'triangle', 'diamond', 'cross'];

/** The look of the series at `index` (0, 1, 2, …). */
export function seriesStyle(index: number): SeriesStyle {
  return {
    colour: `var(--series-${(index % COLOURS) + 1})`,
    dash: DASHES[index % DASHES.length]!,
    marker: MARKERS[index % MARKERS.length]!,
    letter: String.fromCharCode(65 + (index % 26)),
  };
}
