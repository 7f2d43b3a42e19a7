/**
 * What ended the outages, alternative beside alternative.
 *
 * Observable Plot: facets again (a strip per cause, a bar per alternative), each bar with its figure, so that small
 * shares can be read and causes compared straight across; stacked bars would hide both.
 */
import * as Plot from '@observablehq/plot';
import { percent, type EndCause, type StrategySummary, type StudySummary } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { seriesKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';

export interface WhatEndedOptions {
  readonly strategyId: string;
  /** The household compared with the first; left out: every one is told of. */
  readonly alternativeId?: string;
  /** Which leg each unit feeds, by the unit's id: L1, L2. */
  readonly legs: Readonly<Record<string, string>>;
  /** Picture width, px. */
  readonly width: number;
}

interface Share {
  readonly cause: string;
  readonly alternative: string;
  readonly title: string;
  readonly style: SeriesStyle;
  readonly fraction: number;
}

const NAME_PX = 28;
const BAR_PX = 24;

const WORDS: Readonly<Record<EndCause, string>> = {
  'still running': 'Still running when the simulation ended',
  'battery empty': 'Battery empty',
  'overload trip': 'Overload: more watts than the inverter gives',
  'starting surge trip': 'Overload when a motor started',
  'battery limit trip': 'Overload: more watts than the battery gives',
  'switched off': 'Switched off',
  'partner stopped': 'Stopped with its partner',
  'battery too cold': 'Battery too cold',
  'source without 240 V': 'No 240 V from the generator',
};

/** "Battery empty on L1 (east)". */
export function endWords(
  { cause, unitId }: { readonly cause: EndCause; readonly unitId: string | null },
  legs: WhatEndedOptions['legs'],
): string {
  if (unitId === null) return WORDS[cause];
  const leg = legs[unitId];
  return `${WORDS[cause]}, ${leg ? `${leg} (${unitId})` : unitId}`;
}

export function whatEnded(study: StudySummary, options: WhatEndedOptions): HTMLElement {
  const { strategyId, legs, width } = options;
  const summaries = study.strategies.filter((s) => s.strategyId === strategyId);
  const shares = sharesOf(summaries, legs);
  return chartFrame({
    id: 'what-ended',
    title: whatEndedTitle(summaries, options),
    note: `Share of simulated outages by what left the essentials without power, with “${summaries[0]?.strategyTitle ?? ''}”.`,
    picture: picture(shares, width),
    key: summaries.map((s, i) => ({ sample: seriesKey(seriesStyle(i)), text: s.alternativeTitle })),
    sentences: summaries.map((s) => `${s.alternativeTitle}: ${sentence(s, legs)}.`),
    table: {
      caption: 'Share of outages by what ended them.',
      columns: [{ name: 'Cause' }, ...summaries.map((s) => ({ name: s.alternativeTitle, number: true }))],
      rows: causesOf(shares).map((cause) => [
        cause,
        ...shares.filter((s) => s.cause === cause).map((s) => percent(s.fraction)),
      ]),
      exact: shares.map((s) => ({
        alternative: s.alternative,
        alternativeTitle: s.title,
        cause: s.cause,
        fraction: s.fraction,
      })),
    },
    provenance: study.provenance,
  });
}

/** Every cause with every alternative; 0 where it did not happen. */
function sharesOf(summaries: readonly StrategySummary[], legs: WhatEndedOptions['legs']): Share[] {
  const causes = [...new Set(summaries.flatMap((s) => s.ends.map((end) => endWords(end, legs))))];
  return causes.flatMap((cause) =>
    summaries.map((s, i) => ({
      cause,
      alternative: s.alternativeId,
      title: s.alternativeTitle,
      style: seriesStyle(i),
      fraction: s.ends.find((end) => endWords(end, legs) === cause)?.fraction ?? 0,
    })),
  );
}

function causesOf(shares: readonly Share[]): string[] {
  return [...new Set(shares.map((share) => share.cause))];
}

function picture(shares: readonly Share[], width: number): SVGSVGElement {
  const causes = causesOf(shares);
  const alternatives = [...new Set(shares.map((s) => s.alternative))];
  const colour = (s: Share) => s.style.colour;
  const onBar = { fy: 'cause', y: 'alternative' } as const;
  return Plot.plot({
    width,
    height: 46 + causes.length * (NAME_PX + BAR_PX * alternatives.length),
    marginLeft: 14,
    marginRight: 56,
    marginTop: 4,
    marginBottom: 40,
    style: STYLE,
    x: {
      domain: [0, 1],
      label: 'Share of outages',
      labelArrow: 'none',
      labelAnchor: 'center',
      tickFormat: '.0%',
      ticks: 4,
      grid: true,
      insetLeft: 4,
    },
    y: { axis: null, domain: alternatives, insetTop: NAME_PX - 4, padding: 0.25 },
    fy: { axis: null, domain: causes, padding: 0 },
    symbol: { type: 'identity' },
    marks: [
      Plot.text(causes, {
        ...NAME,
        fy: (cause: string) => cause,
        text: (cause: string) => cause,
        lineWidth: width / 13,
      }),
      Plot.barX(shares, { ...onBar, x: 'fraction', fill: colour, fillOpacity: 0.35 }),
      Plot.dot(shares, {
        ...onBar,
        x: 'fraction',
        r: 5.5,
        fill: colour,
        stroke: 'var(--paper)',
        symbol: (s: Share) => s.style.marker,
      }),
      Plot.text(shares, {
        ...onBar,
        x: 'fraction',
        text: (s: Share) => percent(s.fraction),
        dx: 10,
        textAnchor: 'start',
      }),
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
    ],
  }) as SVGSVGElement;
}

const STYLE = {
  background: 'transparent',
  color: 'var(--ink)',
  fontFamily: 'system-ui, sans-serif',
  fontSize: '13px',
  overflow: 'visible',
};
const NAME = {
  frameAnchor: 'top-left',
  dx: 10,
  dy: 8,
  textAnchor: 'start',
  fontWeight: 600,
  textOverflow: 'ellipsis',
} as const;

function sentence(s: StrategySummary, legs: WhatEndedOptions['legs']): string {
  return s.ends.map((end) => `${lowerFirst(endWords(end, legs))}, ${percent(end.fraction)}`).join('; ');
}

/** Of the households compared alone: the first, and the one chosen. */
export function whatEndedTitle(
  summaries: readonly StrategySummary[],
  { alternativeId, legs }: Pick<WhatEndedOptions, 'alternativeId' | 'legs'>,
): string {
  const compared = summaries.filter(
    (s, i) => i === 0 || alternativeId === undefined || s.alternativeId === alternativeId,
  );
  return `What ends it. ${compared.map((s) => `“${s.alternativeTitle}”: ${mostly(s, legs)}`).join('. ')}`;
}

/** "battery empty, 61 %"; where most still run: how many, and what ended the others. */
function mostly({ ends }: StrategySummary, legs: WhatEndedOptions['legs']): string {
  const ended = ends.filter(({ cause }) => cause !== 'still running');
  const [top] = ended;
  if (!top) return 'all still run when the simulation ends';
  if (ends[0] === top) return `mostly ${lowerFirst(endWords(top, legs))} (${percent(top.fraction)})`;
  const endedFraction = ended.reduce((sum, { fraction }) => sum + fraction, 0);
  return `${percent(ends[0]!.fraction)} still run at the end; of those that end, mostly ${lowerFirst(endWords(top, legs))} (${percent(top.fraction / endedFraction)})`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
