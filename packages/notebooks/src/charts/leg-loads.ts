/**
 * What each leg carries, and what flows back in the neutral.
 *
 * Observable Plot: see unit-charge.ts. Two panels, because watts and amperes share no scale.
 */
import * as Plot from '@observablehq/plot';
import { chartFrame } from './chart-frame.ts';
import { momentText } from './local-clock.ts';
import { greatestAt, meanOf } from './minute-buckets.ts';
import { banded, minutePanel } from './minute-panel.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, unitTitle, type OutageView } from './outage-view.ts';
import { bandKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import { stackedPanels } from './stacked-panels.ts';

const NEUTRAL = { colour: 'var(--series-6)', dash: [], marker: 'cross', letter: '' } as const;

export function legLoads(outage: OutageView): HTMLElement {
  const { trace, household, from, to } = outage;
  const units = trace.units.map((unit, i) => ({
    unit,
    style: seriesStyle(i),
    title: unitTitle(household, unit.id),
    continuousW: household.units[i]!.inverter.continuousW,
  }));
  const pair = units.length === 2;
  const ratings = [...new Set(units.map((u) => u.continuousW))];
  const most = Math.max(...units.map(({ unit }) => unit.loadW[greatestAt(unit.loadW, from, to)]!), 1);
  const legs = minutePanel(outage, {
    height: pair ? 190 : 220,
    bare: pair,
    y: { domain: [0, Math.max(most * 1.05, 100)], label: 'watts on the leg', grid: true, ticks: 4 },
    marks: [
      ...units.flatMap(({ unit, style }) => banded(outage, unit.loadW, style)),
      Plot.ruleY(
        ratings.filter((w) => w <= most * 1.05),
        { stroke: 'var(--caution)', strokeDasharray: '1 3' },
      ),
    ],
  });
  const neutral = () =>
    minutePanel(outage, {
      height: 150,
      y: { label: 'amperes in the neutral', grid: true, ticks: 3, zero: true },
      marks: banded(outage, trace.neutralA, NEUTRAL),
    });
  return chartFrame({
    id: 'leg-loads',
    title: finding(outage, units),
    note: `Line: mean; band: least to greatest minute. ${pair ? 'The neutral carries the difference of the legs (120\u00a0V, unity power factor). ' : ''}Starting currents are shorter than a minute and not drawn. Dotted line, where it is in reach: continuous watts of a unit. ${shownText(outage)}`,
    picture: pair ? stackedPanels([legs, neutral()]) : legs,
    key: [
      ...units.map(({ unit, style, title, continuousW }) => ({
        sample: bandKey(style),
        text: `${title}: ${watts(meanOf(unit.loadW, from, to))} on average, ${peakWords(unit.loadW, outage)}; good for ${watts(continuousW)}`,
      })),
      ...(pair
        ? [
            {
              sample: bandKey(NEUTRAL),
              text: `Neutral: up to ${trace.neutralA[greatestAt(trace.neutralA, from, to)]!.toFixed(1)}\u00a0A`,
            },
          ]
        : []),
    ],
    table: minutesTable(outage, 'Leg loads: mean and greatest minute.', [
      ...units.flatMap(({ unit, title }) => [
        {
          name: `${title}, mean (W)`,
          id: `${unit.id}MeanW`,
          values: unit.loadW,
          take: 'mean' as const,
          show: whole,
        },
        {
          name: `${title}, greatest (W)`,
          id: `${unit.id}GreatestW`,
          values: unit.loadW,
          take: 'max' as const,
          show: whole,
        },
      ]),
      ...(pair
        ? [
            {
              name: 'Neutral, greatest (A)',
              id: 'neutralGreatestA',
              values: trace.neutralA,
              take: 'max' as const,
              show: (a: number) => a.toFixed(1),
            },
          ]
        : []),
    ]),
    provenance: outage.provenance,
  });
}

const whole = (value: number) => value.toFixed(0);

function watts(value: number): string {
  return value < 1000 ? `${Math.round(value)}\u00a0W` : `${(value / 1000).toFixed(1)}\u00a0kW`;
}

function peakWords(loadW: Float64Array, { from, to, trace, clock }: OutageView): string {
  const at = greatestAt(loadW, from, to);
  return `at most ${watts(loadW[at]!)}, on ${momentText(trace, at, clock)}`;
}

function finding(
  outage: OutageView,
  units: readonly { title: string; unit: { loadW: Float64Array } }[],
): string {
  const { from, to } = outage;
  const mean = units
    .map(({ title, unit }) => ({ title, meanW: meanOf(unit.loadW, from, to) }))
    .sort((a, b) => b.meanW - a.meanW);
  const [heavy, light] = mean;
  if (!heavy) return 'There is no unit';
  if (!light) return `The house draws ${watts(heavy.meanW)} on average in the time shown`;
  if (heavy.meanW < 1.25 * light.meanW)
    return `The legs are loaded about alike: ${watts(heavy.meanW)} and ${watts(light.meanW)} on average`;
  return `${heavy.title} carries more: ${watts(heavy.meanW)} on average against ${watts(light.meanW)}`;
}
