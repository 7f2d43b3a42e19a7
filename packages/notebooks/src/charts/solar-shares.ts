/**
 * What became of the sun: used at once, stored, or not taken.
 *
 * Observable Plot: see unit-charge.ts. Means are stacked, since only they add up.
 */
import * as Plot from '@observablehq/plot';
import type { UnitTrace } from '@rideout/sim';
import { svg } from '../elements.ts';
import { chartFrame } from './chart-frame.ts';
import { meanOf, minuteBuckets } from './minute-buckets.ts';
import { minutePanel, timePx } from './minute-panel.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, type OutageView } from './outage-view.ts';

type Column = 'solarUsedW' | 'solarStoredW' | 'solarCurtailedW' | 'solarClippedW';

/** From the bottom. Fill grows fainter from what serves to what is lost; losses are outlined. */
const SHARES: readonly {
  column: Column;
  name: string;
  text: string;
  colour: string;
  opacity: number;
  edge: string;
}[] = [
  {
    column: 'solarUsedW',
    name: 'Used',
    text: 'used at once',
    colour: 'var(--series-3)',
    opacity: 0.95,
    edge: '',
  },
  {
    column: 'solarStoredW',
    name: 'Stored',
    text: 'stored in the bank',
    colour: 'var(--series-1)',
    opacity: 0.6,
    edge: '',
  },
  {
    column: 'solarCurtailedW',
    name: 'Curtailed',
    text: 'curtailed: bank full or at its charging limit',
    colour: 'var(--series-2)',
    opacity: 0.3,
    edge: '3 2',
  },
  {
    column: 'solarClippedW',
    name: 'Clipped',
    text: 'clipped: more than the unit’s solar input takes',
    colour: 'var(--series-4)',
    opacity: 0.12,
    edge: '1 2',
  },
];

export function solarShares(outage: OutageView): HTMLElement {
  const columns = SHARES.map((share) => ({ ...share, watts: summed(outage.trace.units, share.column) }));
  const kWh = columns.map(({ watts }) => energyKWh(watts, outage));
  const rows = columns.flatMap(({ name, watts }) =>
    minuteBuckets(watts, outage.from, outage.to, timePx(outage)).map((b) => ({
      name,
      minute: b.minute,
      watts: b.mean,
    })),
  );
  const look = (of: (share: (typeof SHARES)[number]) => string | number) => (row: { name: string }) =>
    of(SHARES.find((s) => s.name === row.name)!);
  return chartFrame({
    id: 'solar-shares',
    title: finding(kWh),
    note: `Watts from all panels together, by what became of them. Shaded: no sun. ${shownText(outage)}`,
    picture: minutePanel(outage, {
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
          Plot.stackY({ order: SHARES.map((s) => s.name) }, {
            x: 'minute',
            y: 'watts',
            z: 'name',
            fill: look((s) => s.colour),
            fillOpacity: look((s) => s.opacity),
            clip: true,
          } as Plot.AreaYOptions),
        ),
      ],
    }),
    key: columns.map((share, i) => ({
      sample: shareKey(share),
      text: `${kWh[i]!.toFixed(1)}\u00a0kWh ${share.text}`,
    })),
    table: minutesTable(
      outage,
      'Mean watts from all panels.',
      columns.map(({ name, column, watts }) => ({
        name: `${name} (W)`,
        id: column,
        values: watts,
        take: 'mean',
        show: (w) => w.toFixed(0),
      })),
    ),
    provenance: outage.provenance,
  });
}

/** All units together. */
function summed(units: readonly UnitTrace[], column: Column): Float64Array {
  const sum = new Float64Array(units[0]?.[column].length ?? 0);
  for (const unit of units) for (let m = 0; m < sum.length; m++) sum[m]! += unit[column][m]!;
  return sum;
}

function energyKWh(watts: Float64Array, { from, to }: OutageView): number {
  return (meanOf(watts, from, to) * (to - from)) / 60_000;
}

function shareKey({ colour, opacity, edge }: (typeof SHARES)[number]): SVGElement {
  return svg`<svg viewBox="0 0 52 22"><rect x="3" y="4" width="46" height="14" fill=${colour} fill-opacity=${opacity} stroke=${colour} stroke-dasharray=${edge}></rect></svg>`;
}

function finding([used = 0, stored = 0, curtailed = 0, clipped = 0]: readonly number[]): string {
  const all = used + stored + curtailed + clipped;
  const kWh = (value: number) => `${value.toFixed(1)}\u00a0kWh`;
  if (all < 0.05) return 'The panels give nothing in the time shown';
  const lost = curtailed + clipped;
  const rest = lost < 0.05 ? 'all of it is taken' : `${kWh(lost)} of it cannot be taken`;
  return `The panels could give ${kWh(all)} in the time shown; ${rest}`;
}
