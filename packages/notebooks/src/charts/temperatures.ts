/**
 * What warms up and cools down: refrigerators, rooms, and the air outside.
 *
 * Observable Plot: see unit-charge.ts.
 */
import * as Plot from '@observablehq/plot';
import { signedTenths } from './signed-tenths.ts';
import { chartFrame } from './chart-frame.ts';
import { momentText } from './local-clock.ts';
import { degreesIn, inDegrees } from './look.ts';
import { minuteBuckets } from './minute-buckets.ts';
import { minutePanel, timePx } from './minute-panel.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, type OutageView } from './outage-view.ts';
import { seriesKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';

interface Temperature {
  readonly id: string;
  readonly title: string;
  readonly valuesC: ArrayLike<number>;
  readonly style: SeriesStyle;
  /** What it may not pass, and from which side it must not. */
  readonly limitC?: number | undefined;
  readonly cools?: boolean;
}

export function temperatures(outage: OutageView): HTMLElement {
  const { temperature } = outage;
  const all = temperaturesOf(outage);
  const shown = (c: number) => inDegrees(c, outage);
  const degrees = `°${temperature}`;
  const limits = all.filter((t) => t.limitC !== undefined);
  return chartFrame({
    id: 'temperatures',
    title: finding(all, outage),
    note: `Degrees ${temperature === 'F' ? 'Fahrenheit' : 'Celsius'}. Dotted level lines: limits that should not be passed. ${shownText(outage)}`,
    picture: minutePanel(outage, {
      height: 270,
      y: { label: degrees, grid: true, ticks: 6, nice: true },
      marks: [
        ...limits.map(({ limitC, style }) =>
          Plot.ruleY([shown(limitC!)], { stroke: style.colour, strokeDasharray: '1 3', strokeWidth: 1.5 }),
        ),
        ...all.map(({ valuesC, style }) =>
          Plot.lineY(
            minuteBuckets(valuesC, outage.from, outage.to, timePx(outage)).map((b) => ({
              minute: b.minute,
              degrees: shown(b.mean),
            })),
            {
              x: 'minute',
              y: 'degrees',
              stroke: style.colour,
              strokeWidth: 2,
              strokeDasharray: style.dash.join(' '),
              clip: true,
            },
          ),
        ),
        ...all.map(({ valuesC, style }, i) => markers(valuesC, style, shown, outage, i / all.length)),
      ],
    }),
    key: all.map((t) => ({ sample: seriesKey(t.style), text: rangeWords(t, outage) })),
    table: minutesTable(
      outage,
      'Mean temperatures.',
      all.map(({ title, id, valuesC }) => ({
        name: `${title} (${degrees})`,
        id: `${id}C`,
        values: valuesC,
        take: 'mean',
        show: (c) => signedTenths(shown(c)),
      })),
    ),
    provenance: outage.provenance,
  });
}

/** A thermostat set this warm keeps a room, not food. */
const LEAST_ROOM_C = 12;

function temperaturesOf({ trace, household }: OutageView): Temperature[] {
  const inside = trace.circuits.flatMap(({ id, temperatureC }, c) => {
    if (!temperatureC) return [];
    const circuit = household.circuits[c]!;
    const thermostat = circuit.appliances.find((a) => a.kind === 'thermostat');
    return [
      {
        id,
        title:
          (thermostat?.setC ?? 0) >= LEAST_ROOM_C ? `Room (${circuit.title ?? id})` : (circuit.title ?? id),
        valuesC: temperatureC,
        limitC: thermostat?.limitC,
        cools: thermostat?.does === 'cools',
      },
    ];
  });
  return [...inside, { id: 'outdoors', title: 'Outdoors', valuesC: trace.dryBulbC }].map((t, i) => ({
    ...t,
    style: seriesStyle(i),
  }));
}

/** A few markers along each line, so that lines are told apart without colour. */
function markers(
  valuesC: ArrayLike<number>,
  style: SeriesStyle,
  shown: (c: number) => number,
  { from, to }: OutageView,
  offset: number,
): Plot.Markish {
  const minutes = Array.from({ length: 5 }, (_, i) =>
    Math.floor(from + ((i + 0.2 + 0.6 * offset) / 5) * (to - from)),
  );
  return Plot.dot(minutes, {
    x: (m: number) => m,
    y: (m: number) => shown(valuesC[m]!),
    r: 4.5,
    symbol: style.marker,
    fill: style.colour,
    stroke: 'var(--paper)',
  });
}

function extremes(valuesC: ArrayLike<number>, from: number, to: number): { least: number; most: number } {
  const all = minuteBuckets(valuesC, from, to, 1)[0]!;
  return { least: all.min, most: all.max };
}

function rangeWords({ title, valuesC, limitC }: Temperature, look: OutageView): string {
  const { from, to } = look;
  const shown = (c: number) => inDegrees(c, look);
  const degrees = `°${look.temperature}`;
  const { least, most } = extremes(valuesC, from, to);
  const tenths = (c: number) => signedTenths(shown(c));
  const limit =
    limitC === undefined ? '' : `; limit ${degreesIn(`${String(limitC).replace('-', '−')}\u00a0°C`, look)}`;
  return `${title}: ${tenths(least)} to ${tenths(most)}\u00a0${degrees}${limit}`;
}

/** First minute past its limit, over the whole outage. */
function firstPast({ valuesC, limitC, cools }: Temperature): number | undefined {
  if (limitC === undefined) return undefined;
  for (let m = 0; m < valuesC.length; m++) if (cools ? valuesC[m]! > limitC : valuesC[m]! < limitC) return m;
  return undefined;
}

function finding(all: readonly Temperature[], { trace, clock }: OutageView): string {
  const past = all.flatMap((t) => {
    const minute = firstPast(t);
    return minute === undefined ? [] : [{ t, minute }];
  });
  const first = past.sort((a, b) => a.minute - b.minute)[0];
  if (first)
    return `In the whole outage, ${first.t.title} is the first to pass its limit, on ${momentText(trace, first.minute, clock)}`;
  return all.some((t) => t.limitC !== undefined)
    ? 'Nothing passes its limit in the whole outage'
    : 'Temperatures in the time shown';
}
