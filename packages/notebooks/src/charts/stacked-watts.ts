/**
 * Watts of several kinds, one upon the other over the minutes.
 *
 * Observable Plot: see unit-charge.ts. Means are stacked, since only they add up.
 */
import * as Plot from '@observablehq/plot';
import { svg } from '../elements.ts';
import { meanOf, minuteBuckets } from './minute-buckets.ts';
import { minutePanel, timePx } from './minute-panel.ts';
import type { OutageView } from './outage-view.ts';

/** How one kind is drawn. */
export interface WattsLook {
  readonly colour: string;
  readonly opacity: number;
  /** Dashes of its outline in the key. */
  readonly edge: string;
}

/** One kind: its name, and a value per minute. */
export interface WattsShare extends WattsLook {
  readonly name: string;
  readonly watts: Float64Array;
}

/** @param shares from the bottom up */
export function stackedWatts(outage: OutageView, shares: readonly WattsShare[]): SVGSVGElement {
  const rows = shares.flatMap(({ name, watts }) =>
    minuteBuckets(watts, outage.from, outage.to, timePx(outage)).map((b) => ({
      name,
      minute: b.minute,
      watts: b.mean,
    })),
  );
  const look = (of: (share: WattsLook) => string | number) => (row: { name: string }) =>
    of(shares.find((s) => s.name === row.name)!);
  return minutePanel(outage, {
    height: 200,
    y: {
      label: 'watts',
      grid: true,
      ticks: 4,
      zero: true,
      ...(rows.some((r) => r.watts > 0) ? {} : { domain: [0, 100] }),
    },
    marks: [
      Plot.areaY(
        rows,
        Plot.stackY({ order: shares.map((s) => s.name) }, {
          x: 'minute',
          y: 'watts',
          z: 'name',
          fill: look((s) => s.colour),
          fillOpacity: look((s) => s.opacity),
          clip: true,
        } as Plot.AreaYOptions),
      ),
    ],
  });
}

/** Of the part shown. */
export function energyKWh(watts: Float64Array, { from, to }: OutageView): number {
  return (meanOf(watts, from, to) * (to - from)) / 60_000;
}

export function shareKey({ colour, opacity, edge }: WattsLook): SVGElement {
  return svg`<svg viewBox="0 0 52 22"><rect x="3" y="4" width="46" height="14" fill=${colour} fill-opacity=${opacity} stroke=${colour} stroke-dasharray=${edge}></rect></svg>`;
}
