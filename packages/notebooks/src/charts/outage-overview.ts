/**
 * The whole outage as a strip, on which the part to look at is dragged.
 *
 * Vega-Lite, because its interval selection is this very thing: a window that is drawn, moved and resized by mouse
 * or finger. Buttons for the days do the same by keyboard: page/outage-range.ts.
 */
import type { TopLevelSpec } from 'vega-lite';
import { localDayStarts, dateInTwoLines } from './local-clock.ts';
import { minuteBuckets } from './minute-buckets.ts';
import type { OutageRange, OutageView } from './outage-view.ts';
import { seriesStyle } from './series-style.ts';
import { drawn } from './survival-curves.ts';

const LEFT = 48;
const RIGHT = 14;
const LEAST_MINUTES = 30;

/** The strip; `choose` is told once the reader lets go of a window. */
export async function outageOverview(
  outage: OutageView,
  choose: (range: Pick<OutageRange, 'from' | 'to'>) => void,
): Promise<HTMLElement> {
  let window: readonly number[] | undefined;
  const picture = await drawn(overviewSpec(outage), (view) => {
    view.addSignalListener('looked', (_, value: unknown) => {
      window = (value as { minute?: readonly number[] }).minute;
    });
  });
  const strip = document.createElement('div');
  strip.className = 'outage-strip screen-only';
  picture.setAttribute('aria-hidden', 'true');
  picture.style.touchAction = 'pan-y';
  strip.append(picture);
  const letGo = () => {
    if (!window) return;
    const [from, to] = [Math.round(window[0]!), Math.round(window[1]!)];
    window = undefined;
    if (to - from >= LEAST_MINUTES)
      choose({ from: Math.max(0, from), to: Math.min(outage.trace.minutes, to) });
  };
  picture.addEventListener('pointerdown', () =>
    addEventListener('pointerup', () => setTimeout(letGo), { once: true }),
  );
  return strip;
}

export function overviewSpec(outage: OutageView): TopLevelSpec {
  const { trace, width, from, to } = outage;
  const plotWidth = width - LEFT - RIGHT;
  const lines = trace.units.flatMap((unit, u) =>
    minuteBuckets(unit.chargeFraction, 0, trace.minutes, plotWidth / 2).map((b) => ({
      unit: String(u),
      minute: b.minute,
      percent: b.min * 100,
    })),
  );
  const labels = dayLabels(outage, plotWidth);
  const looks = trace.units.map((_, u) => seriesStyle(u));
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    width: plotWidth,
    height: 70,
    padding: { left: LEFT, right: RIGHT, top: 6, bottom: 40 },
    autosize: { type: 'none' },
    background: 'transparent',
    config: {
      font: 'system-ui, sans-serif',
      aria: false,
      view: { stroke: 'var(--rule)' },
      axis: {
        labelColor: 'var(--ink)',
        titleColor: 'var(--ink)',
        domainColor: 'var(--edge)',
        tickColor: 'var(--edge)',
        labelFontSize: 13,
      },
    },
    data: { values: lines },
    params: [
      {
        name: 'looked',
        select: {
          type: 'interval',
          encodings: ['x'],
          zoom: false,
          mark: { fill: 'var(--accent)', fillOpacity: 0.15, stroke: 'var(--accent)', strokeWidth: 2 },
        },
        value: { x: [from, to] },
      },
    ],
    mark: { type: 'line', strokeWidth: 1.5 },
    encoding: {
      x: {
        field: 'minute',
        type: 'quantitative',
        title: null,
        scale: { domain: [0, trace.minutes], nice: false },
        axis: {
          grid: false,
          values: labels.map((l) => l.minute),
          labelExpr: `${JSON.stringify(Object.fromEntries(labels.map((l) => [l.minute, l.lines])))}[datum.value]`,
        },
      },
      y: {
        field: 'percent',
        type: 'quantitative',
        title: null,
        scale: { domain: [0, 100] },
        axis: { values: [0, 50, 100], labelExpr: "datum.value + ' %'", grid: false },
      },
      color: {
        field: 'unit',
        type: 'nominal',
        legend: null,
        scale: { domain: looks.map((_, u) => String(u)), range: looks.map((l) => l.colour) },
      },
      strokeDash: {
        field: 'unit',
        type: 'nominal',
        legend: null,
        scale: {
          domain: looks.map((_, u) => String(u)),
          range: looks.map((l) => (l.dash.length ? l.dash : [1, 0])),
        },
      },
    },
  } as unknown as TopLevelSpec;
}

/** Local midnights, as many as there is room for. */
function dayLabels({ trace }: OutageView, plotWidth: number): { minute: number; lines: string[] }[] {
  const midnights = localDayStarts(trace).slice(1, -1);
  const each = Math.max(1, Math.ceil((midnights.length * 46) / plotWidth));
  return midnights
    .filter((_, i) => i % each === 0)
    .map((minute) => ({ minute, lines: dateInTwoLines(trace, minute).split('\n') }));
}
