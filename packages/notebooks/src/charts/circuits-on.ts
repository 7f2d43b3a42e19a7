/**
 * Which circuits are on, tier by tier.
 *
 * Observable Plot: see unit-charge.ts. Bars on rows set by hand, so that names stand above their bars and fit a phone.
 */
import * as Plot from '@observablehq/plot';
import { percent } from '@rideout/sim';
import { svg } from '../elements.ts';
import { chartFrame } from './chart-frame.ts';
import { minutePanel } from './minute-panel.ts';
import { circuitStretches, minutesIn, type Stretch, type StretchState } from './circuit-stretches.ts';
import { shownText, type OutageView } from './outage-view.ts';

interface Row {
  readonly id: string;
  readonly title: string;
  readonly tier: number;
  readonly stretches: readonly Stretch[];
  readonly top: number;
}

const ROW_PX = 31;
const TIER_PX = 24;
const TOP = 4;

const LOOK: Readonly<
  Record<StretchState, { colour: string; opacity: number; half: number; dash: string; text: string }>
> = {
  on: { colour: 'var(--series-3)', opacity: 0.85, half: 5, dash: '', text: 'on' },
  shed: { colour: 'var(--ink-soft)', opacity: 0.5, half: 1, dash: '', text: 'off, as the strategy says' },
  dark: {
    colour: 'var(--caution)',
    opacity: 0.22,
    half: 5,
    dash: '2 2',
    text: 'off, because its unit is down',
  },
};

export function circuitsOn(outage: OutageView): HTMLElement {
  const rows = rowsOf(outage);
  const height = (rows[rows.length - 1]?.top ?? 0) + ROW_PX + TOP;
  return chartFrame({
    id: 'circuits-on',
    title: finding(rows, outage),
    note: `Circuits by tier; tier 1 is kept longest. On means that it has power, whether or not anything draws it. ${shownText(outage)}`,
    picture: picture(rows, outage, height),
    key: Object.values(LOOK).map((look) => ({ sample: stateKey(look), text: look.text })),
    sentences: rows.map(
      (row) => `${row.title} (tier ${row.tier}): on ${share(row, 'on', outage)} of the time shown.`,
    ),
    table: table(rows, outage),
    provenance: outage.provenance,
  });
}

/** In order of tier, then of the household. */
function rowsOf({ trace, household }: OutageView): Row[] {
  const circuits = household.circuits
    .map((circuit, c) => ({ circuit, c }))
    .sort((a, b) => a.circuit.tier - b.circuit.tier || a.c - b.c);
  let top = TOP;
  let tier = 0;
  return circuits.map(({ circuit, c }) => {
    if (circuit.tier !== tier) [tier, top] = [circuit.tier, top + TIER_PX];
    const row = {
      id: circuit.id,
      title: circuit.title ?? circuit.id,
      tier,
      stretches: circuitStretches(trace, c),
      top,
    };
    top += ROW_PX;
    return row;
  });
}

function picture(rows: readonly Row[], outage: OutageView, height: number): SVGSVGElement {
  const { from, to, width } = outage;
  const bars = rows.flatMap((row) =>
    row.stretches
      .filter((s) => s.to > from && s.from < to)
      .map((s) => ({
        x1: Math.max(s.from, from),
        x2: Math.min(s.to, to),
        y: -(row.top + 22),
        ...LOOK[s.state],
      })),
  );
  type Bar = (typeof bars)[number];
  const tiers = rows.filter((row, i) => rows[i - 1]?.tier !== row.tier);
  return minutePanel(outage, {
    height: height + 44,
    top: 4,
    y: { axis: null, domain: [-height, 0] },
    marks: [
      Plot.text(tiers, {
        ...NAME,
        dx: -46,
        y: (r: Row) => -(r.top - 8),
        text: (r: Row) => `Tier ${r.tier}`,
        fontWeight: 650,
      }),
      Plot.text(rows, {
        ...NAME,
        dx: 2,
        y: (r: Row) => -(r.top + 8),
        text: 'title',
        fontSize: 12,
        lineWidth: (width - 70) / 12,
        textOverflow: 'ellipsis',
        stroke: 'var(--paper)',
        strokeWidth: 3,
      }),
      Plot.rect(bars, {
        x1: 'x1',
        x2: 'x2',
        y1: (b: Bar) => b.y - b.half,
        y2: (b: Bar) => b.y + b.half,
        fill: 'colour',
        fillOpacity: 'opacity',
        stroke: (b: Bar) => (b.dash ? b.colour : 'none'),
        strokeWidth: 0.6,
        strokeDasharray: '2 2',
        clip: true,
        opacity: 1,
      }),
    ],
  });
}

const NAME = { frameAnchor: 'left', textAnchor: 'start', fill: 'var(--ink)' } as const;

function stateKey({ colour, opacity, half, dash }: (typeof LOOK)[StretchState]): SVGElement {
  return svg`<svg viewBox="0 0 52 22"><rect x="3" y=${11 - half} width="46" height=${2 * half} fill=${colour} fill-opacity=${opacity} stroke=${dash ? colour : 'none'} stroke-dasharray=${dash}></rect></svg>`;
}

function share(row: Row, state: StretchState, { from, to }: OutageView): string {
  return percent(minutesIn(row.stretches, state, from, to) / (to - from));
}

function finding(rows: readonly Row[], outage: OutageView): string {
  const { from, to } = outage;
  const lost = rows
    .filter((row) => row.tier === 1)
    .map((row) => ({
      row,
      dark: minutesIn(row.stretches, 'dark', from, to) + minutesIn(row.stretches, 'shed', from, to),
    }))
    .sort((a, b) => b.dark - a.dark)[0];
  if (!lost) return 'No circuit is in tier 1';
  if (lost.dark === 0) return 'Every circuit of tier 1 is on throughout the time shown';
  return `Of tier 1, ${lost.row.title} is off longest: ${percent(lost.dark / (to - from))} of the time shown`;
}

function table(rows: readonly Row[], outage: OutageView) {
  const number = true;
  const { from, to } = outage;
  const hours = (row: Row, state: StretchState) => minutesIn(row.stretches, state, from, to) / 60;
  return {
    caption: 'Hours in the time shown.',
    columns: [
      { name: 'Circuit' },
      { name: 'Tier', number },
      { name: 'On', number },
      { name: 'Off by the strategy', number },
      { name: 'Unit down', number },
    ],
    rows: rows.map((row) => [
      row.title,
      String(row.tier),
      ...(['on', 'shed', 'dark'] as const).map((s) => hours(row, s).toFixed(1)),
    ]),
    exact: rows.map((row) => ({
      circuit: row.id,
      tier: row.tier,
      hoursOn: hours(row, 'on'),
      hoursShed: hours(row, 'shed'),
      hoursUnitDown: hours(row, 'dark'),
    })),
  };
}
