/**
 * What each tier wanted and what it got, strategy by strategy.
 *
 * Observable Plot, because this is a small table laid out as facets: two bars and a number on each line.
 */
import * as Plot from '@observablehq/plot';
import { percent, type StrategySummary, type StudySummary } from '@rideout/sim';
import { svg } from '../elements.ts';
import { cellColumns } from './cell-columns.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { bestForNeeds } from './need-endurance.ts';
import { alternativeShown, shownStrategies, type Shown } from './nine-in-ten-words.ts';
import { PLOT_STYLE, STRIP_NAME } from './what-changes.ts';

export interface EnergyByTierOptions extends Shown {
  /** Picture width, px. */
  readonly width: number;
}

interface TierEnergy {
  readonly summary: StrategySummary;
  readonly strategy: string;
  readonly tier: number;
  /** kWh, mean over outages, to the horizon. */
  readonly served: number;
  readonly wanted: number;
}

const NAME_PX = 30;
const LINE_PX = 38;

export function energyByTier(study: StudySummary, options: EnergyByTierOptions): HTMLElement {
  const strategies = shownStrategies(study, options);
  const lines = strategies.flatMap(tiersOf);
  return chartFrame({
    id: 'energy-by-tier',
    title: finding(strategies),
    note: `Energy that each tier wanted in a mean outage of ${study.horizonDays} days, and how much of it came. Tier 1 is kept longest. What a refrigerator missed and drew later is counted when it drew it.`,
    picture: bars(lines, options.width),
    key: [
      { sample: barKey(false), text: 'energy served' },
      { sample: barKey(true), text: 'wanted, but the circuit was off' },
    ],
    sentences: strategies.map((s) => `${s.strategyTitle}: ${tiersOf(s).map(tierWords).join('; ')}.`),
    table: tiersTable(lines),
    provenance: study.provenance,
    alternative: alternativeShown(study.strategies, options),
  });
}

/** Tiers that want anything. */
function tiersOf(summary: StrategySummary): TierEnergy[] {
  const { servedKWhByTier, unservedKWhByTier, strategyId } = summary;
  return servedKWhByTier
    .map((served, i) => ({
      summary,
      strategy: strategyId,
      tier: i + 1,
      served,
      wanted: served + unservedKWhByTier[i]!,
    }))
    .filter(({ wanted }) => wanted > 0);
}

function bars(lines: readonly TierEnergy[], width: number): SVGSVGElement {
  const strategies = lines.filter((line, i) => lines.findIndex((l) => l.strategy === line.strategy) === i);
  const tiers = [...new Set(lines.map((line) => line.tier))].sort();
  const onLine = { fy: 'strategy', y: 'tier' } as const;
  return Plot.plot({
    width,
    height: 46 + strategies.length * (NAME_PX + LINE_PX * tiers.length),
    marginLeft: 2,
    marginRight: 8,
    marginTop: 6,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [0, Math.max(...lines.map((l) => l.wanted), 1)],
      label: 'kWh',
      labelArrow: 'none',
      labelAnchor: 'center',
      ticks: Math.max(2, width / 90),
      nice: true,
    },
    y: { axis: null, domain: tiers, insetTop: NAME_PX, padding: 0 },
    fy: { axis: null, domain: strategies.map((l) => l.strategy), padding: 0 },
    marks: [
      Plot.text(strategies, {
        ...STRIP_NAME,
        dx: 2,
        lineWidth: width / 13,
        text: (l: TierEnergy) => l.summary.strategyTitle,
      }),
      Plot.text(lines, {
        ...onLine,
        x: 0,
        dx: 2,
        dy: -8,
        textAnchor: 'start',
        text: tierWords,
        fill: 'var(--ink)',
      }),
      Plot.barX(lines, { ...onLine, x1: 'served', x2: 'wanted', ...UNSERVED, insetTop: 20, insetBottom: 6 }),
      Plot.barX(lines, { ...onLine, x1: 0, x2: 'served', ...SERVED, insetTop: 20, insetBottom: 6 }),
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
    ],
  }) as SVGSVGElement;
}

const SERVED = { fill: 'var(--series-1)' } as const;
const UNSERVED = {
  fill: 'var(--series-2)',
  fillOpacity: 0.18,
  stroke: 'var(--series-2)',
  strokeDasharray: '3 2',
} as const;

function barKey(unserved: boolean): SVGElement {
  return unserved
    ? svg`<svg viewBox="0 0 52 22"><rect x="3" y="5" width="46" height="12" fill="var(--series-2)" fill-opacity="0.18" stroke="var(--series-2)" stroke-dasharray="3 2"></rect></svg>`
    : svg`<svg viewBox="0 0 52 22"><rect x="3" y="5" width="46" height="12" fill="var(--series-1)"></rect></svg>`;
}

function tierWords({ tier, served, wanted }: TierEnergy): string {
  return `Tier ${tier}: ${served.toFixed(1)} of ${wanted.toFixed(1)}\u00a0kWh (${percent(served / wanted)})`;
}

function finding(strategies: readonly StrategySummary[]): string {
  const best = bestForNeeds(strategies);
  if (!best) return 'No strategy is chosen';
  const tiers = tiersOf(best);
  const [first, last] = [tiers[0], tiers[tiers.length - 1]];
  if (!first || !last) return 'Nothing in this household wants energy';
  const share = ({ served, wanted }: TierEnergy) => percent(served / wanted);
  const rest = first === last ? '' : ` and ${share(last)} of what tier ${last.tier} wants`;
  return `“${best.strategyTitle}” serves ${share(first)} of what tier ${first.tier} wants${rest}`;
}

function tiersTable(lines: readonly TierEnergy[]): DataTable {
  const number = true;
  return {
    caption: 'Energy in a mean outage, to the end of the simulation.',
    columns: [
      { name: 'Strategy' },
      { name: 'Tier', number },
      { name: 'Served (kWh)', number },
      { name: 'Unserved (kWh)', number },
      { name: 'Share served', number },
    ],
    rows: lines.map(({ summary, tier, served, wanted }) => [
      summary.strategyTitle,
      String(tier),
      served.toFixed(1),
      (wanted - served).toFixed(1),
      percent(served / wanted),
    ]),
    exact: lines.map(({ summary: s, tier, served }) => ({
      ...cellColumns(s),
      tier,
      servedKWh: served,
      unservedKWh: s.unservedKWhByTier[tier - 1]!,
    })),
  };
}
