/**
 * Every strategy against every need: how long nine outages in ten keep it met.
 *
 * Observable Plot, because this is a table of boxes laid out for the width at hand, with a few marks and no scales.
 */
import * as Plot from '@observablehq/plot';
import { atLeastThisLong, reachText, type StrategySummary, type StudySummary } from '@rideout/sim';
import { svg } from '../elements.ts';
import { chartFrame } from './chart-frame.ts';
import {
  allNeedsDays,
  bestForNeeds,
  enduranceOf,
  ESSENTIALS,
  firstToGo,
  keepsEachLongest,
  type NeedEndurance,
} from './need-endurance.ts';
import { needsTable } from './needs-table.ts';
import { alternativeShown, shownStrategies, type Shown } from './nine-in-ten-words.ts';
import { tooFewEnding } from './outage-count.ts';
import { markerShape } from './series-key.ts';
import type { Marker } from './series-style.ts';
import { PLOT_STYLE } from './what-changes.ts';

export interface NeedsMatrixOptions extends Shown {
  /** Picture width, px. */
  readonly width: number;
}

interface Level {
  readonly text: string;
  readonly fill: string;
  readonly opacity: number;
  readonly marker: Marker;
}
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly endurance: NeedEndurance;
  readonly level: Level;
}

const BOX_PX = 50;
const NARROWEST_PX = 104; // fits “≥ 14 days” with its sign
const WIDEST_PX = 120;
const NAMES_PX = 190; // a column of names, where there is room for one
const STRIP_PX = 30; // otherwise a name above its boxes

export function needsMatrix(study: StudySummary, options: NeedsMatrixOptions): HTMLElement {
  const strategies = shownStrategies(study, options);
  const levels = levelsOf(study.horizonDays);
  return chartFrame({
    id: 'needs-matrix',
    title: matrixFinding(strategies, study.horizonDays),
    note: `How long each need is met in nine outages in ten. “${ESSENTIALS}”: until any circuit of tier 1 goes without; food keeps longer than its refrigerator has power. The stronger the colour, the longer; the shape says the same.`,
    picture: matrix(strategies, study.horizonDays, options.width),
    key: levels.map((level) => ({ sample: levelKey(level), text: level.text })),
    sentences: strategies.map((s) => strategySentence(s, study.horizonDays)),
    table: needsTable(strategies, study.horizonDays),
    provenance: study.provenance,
    alternative: alternativeShown(study.strategies, options),
  });
}

/** From the shortest. One hue, stronger for longer (darker on white, lighter in the dark), and a shape each; the shortest stands out. */
function levelsOf(horizonDays: number): readonly [Level, Level, Level, Level] {
  const throughout = `all ${atLeastThisLong(horizonDays)} that were simulated, or more`;
  return [
    { text: 'less than a day', fill: 'var(--caution)', opacity: 0.16, marker: 'triangle' },
    { text: 'one day to three', fill: 'var(--accent)', opacity: 0.08, marker: 'diamond' },
    { text: 'three days or more', fill: 'var(--accent)', opacity: 0.2, marker: 'square' },
    { text: throughout, fill: 'var(--accent)', opacity: 0.36, marker: 'circle' },
  ];
}

function levelOf(days: number | null, horizonDays: number): Level {
  const levels = levelsOf(horizonDays);
  if (days === null) return levels[3];
  return days < 1 ? levels[0] : days < 3 ? levels[1] : levels[2];
}

function matrix(strategies: readonly StrategySummary[], horizonDays: number, width: number): SVGSVGElement {
  const beside = width >= 700;
  const room = width - (beside ? NAMES_PX : 0);
  const columns = strategies[0] ? enduranceOf(strategies[0]).length : 1;
  const perLine = Math.max(1, Math.min(columns, Math.floor(room / NARROWEST_PX)));
  const boxWidth = Math.min(WIDEST_PX, room / perLine);
  const stripHeight = (beside ? 8 : STRIP_PX) + Math.ceil(columns / perLine) * BOX_PX;
  const top = (i: number) => i * stripHeight + (beside ? 0 : STRIP_PX);
  const boxes = strategies.flatMap((strategy, i) =>
    enduranceOf(strategy).map((endurance, c): Box => ({
      x: (beside ? NAMES_PX : 0) + (c % perLine) * boxWidth,
      y: top(i) + Math.floor(c / perLine) * BOX_PX,
      width: boxWidth - 4,
      endurance,
      level: levelOf(endurance.nineInTenDays.value, horizonDays),
    })),
  );
  const names = strategies.map(({ strategyTitle }, i) => ({
    text: strategyTitle,
    y: top(i) + (beside ? BOX_PX / 2 - 2 : -12),
  }));
  return Plot.plot({
    width,
    height: Math.max(strategies.length * stripHeight, BOX_PX),
    margin: 0,
    style: PLOT_STYLE,
    x: { type: 'identity', axis: null },
    y: { type: 'identity', axis: null },
    symbol: { type: 'identity' },
    marks: [
      Plot.text(names, {
        ...NAME,
        text: 'text',
        y: 'y',
        ...(beside ? { lineWidth: 10 } : { lineWidth: width / 14, textOverflow: 'ellipsis' as const }),
      }),
      Plot.rect(boxes, {
        ...BOX,
        x1: 'x',
        x2: (b: Box) => b.x + b.width,
        y1: 'y',
        y2: (b: Box) => b.y + BOX_PX - 4,
        fill: (b: Box) => b.level.fill,
        fillOpacity: (b: Box) => b.level.opacity,
      }),
      Plot.text(boxes, {
        ...TEXT,
        x: (b: Box) => b.x + 8,
        y: (b: Box) => b.y + 14,
        text: (b: Box) => b.endurance.need,
        fontSize: 12,
        lineWidth: (boxWidth - 16) / 12,
      }),
      Plot.dot(boxes, {
        x: (b: Box) => b.x + 13,
        y: (b: Box) => b.y + 33,
        r: 4.5,
        symbol: (b: Box) => b.level.marker,
        fill: 'var(--ink)',
      }),
      Plot.text(boxes, {
        ...TEXT,
        x: (b: Box) => b.x + 22,
        y: (b: Box) => b.y + 33,
        text: (b: Box) => boxText(b.endurance.nineInTenDays.value, horizonDays),
        fontWeight: 650,
        lineWidth: 20,
      }),
    ],
  }) as SVGSVGElement;
}

const BOX = { rx: 4, stroke: 'var(--edge)', strokeWidth: 0.75 } as const;
const TEXT = { textAnchor: 'start', fill: 'var(--ink)', textOverflow: 'ellipsis' } as const;
const NAME = {
  x: 0,
  textAnchor: 'start',
  fontWeight: 650,
  fill: 'var(--ink)',
} as const;

/** "11 hours", "1.3 days", "≥ 14 days". */
function boxText(days: number | null, horizonDays: number): string {
  return days === null ? `≥\u00a0${atLeastThisLong(horizonDays)}` : atLeastThisLong(days);
}

function levelKey({ fill, opacity, marker }: Level): SVGElement {
  return svg`<svg viewBox="0 0 52 22">
    <rect x="2" y="1" width="48" height="20" rx="4" fill=${fill} fill-opacity=${opacity} stroke="var(--edge)" stroke-width="0.75"></rect>
    ${markerShape(marker, 'var(--ink)', 'translate(26 11)')}
  </svg>`;
}

/** What the chart shows, in a sentence without its full stop. */
export function matrixFinding(strategies: readonly StrategySummary[], horizonDays: number): string {
  const best = bestForNeeds(strategies);
  if (!best) return 'No strategy is chosen';
  return `${finding(best, strategies, horizonDays)}${tooFewEnding(best.draws)}`;
}

function finding(best: StrategySummary, strategies: readonly StrategySummary[], horizonDays: number): string {
  const worst = [...strategies].sort((a, b) => allNeedsDays(a) - allNeedsDays(b))[0]!;
  const kept = keeps(best, strategies, horizonDays);
  if (allNeedsDays(worst) === allNeedsDays(best)) return kept;
  const gone = firstToGo(worst);
  return `${kept}; with “${worst.strategyTitle}” ${gone ? gone.need : 'the essentials'} can fail after ${reachText((gone ?? worst).nineInTenDays.value, horizonDays)}`;
}

function keeps(best: StrategySummary, strategies: readonly StrategySummary[], horizonDays: number): string {
  const days = allNeedsDays(best);
  const what = best.needs.length > 0 ? 'every need' : 'the essentials';
  if (days === Infinity)
    return `“${best.strategyTitle}” keeps ${what} met all ${atLeastThisLong(horizonDays)} in nine outages in ten`;
  const weakest = firstToGo(best);
  if (weakest && !keepsEachLongest(best, strategies))
    return `With “${best.strategyTitle}” it takes longest until any need goes unmet: ${atLeastThisLong(days)} in nine outages in ten, ${weakest.need} first`;
  return `“${best.strategyTitle}” keeps ${what} met longest: ${atLeastThisLong(days)} in nine outages in ten`;
}

function strategySentence(s: StrategySummary, horizonDays: number): string {
  const each = enduranceOf(s).map(
    ({ need, nineInTenDays: n }) => `${need} ${reachText(n.value, horizonDays)}`,
  );
  const first = firstToGo(s);
  const going = first && first.nineInTenDays.value !== null ? ` First to go: ${first.need}.` : '';
  return `${s.strategyTitle}: ${each.join(', ')}.${going}`;
}
