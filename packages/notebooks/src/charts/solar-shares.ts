/** What became of the sun: used at once, stored, or not taken. */
import type { UnitTrace } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, type OutageView } from './outage-view.ts';
import { energyKWh, shareKey, stackedWatts, type WattsLook } from './stacked-watts.ts';

type Column = 'solarUsedW' | 'solarStoredW' | 'solarCurtailedW' | 'solarClippedW';

/** From the bottom. Fill grows fainter from what serves to what is lost; losses are outlined. */
const SHARES: readonly (WattsLook & { column: Column; name: string; text: string })[] = [
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
  return chartFrame({
    id: 'solar-shares',
    title: finding(kWh),
    note: `Watts from all panels together, by what became of them. Shaded: no sun. ${shownText(outage)}`,
    picture: stackedWatts(outage, columns),
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

function finding([used = 0, stored = 0, curtailed = 0, clipped = 0]: readonly number[]): string {
  const all = used + stored + curtailed + clipped;
  const kWh = (value: number) => `${value.toFixed(1)}\u00a0kWh`;
  if (all < 0.05) return 'The panels give nothing in the time shown';
  const lost = curtailed + clipped;
  const rest = lost < 0.05 ? 'all of it is taken' : `${kWh(lost)} of it cannot be taken`;
  return `The panels could give ${kWh(all)} in the time shown; ${rest}`;
}
