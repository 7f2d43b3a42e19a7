/**
 * How full each unit's bank is, minute by minute.
 *
 * Observable Plot, as for every chart over minutes: the part looked at changes at a touch, and Plot draws a few
 * hundred buckets at once, without compiling a specification first.
 */
import { percent } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { cutOffs } from './cold-cut-off.ts';
import { momentText } from './local-clock.ts';
import { degreesText } from './look.ts';
import { banded, minutePanel } from './minute-panel.ts';
import { minutesTable } from './minutes-table.ts';
import { shownText, unitTitle, type OutageView } from './outage-view.ts';
import { bandKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';

export function unitCharge(outage: OutageView): HTMLElement {
  const { trace, household } = outage;
  const units = trace.units.map((unit, i) => ({
    unit,
    style: seriesStyle(i),
    title: unitTitle(household, unit.id),
  }));
  return chartFrame({
    id: 'unit-charge',
    title: finding(outage),
    note: `State of charge, % of what the bank holds. Shaded: no sun. Dashed upright line: the essentials go without. ${cutOffNote(outage)} ${shownText(outage)}`,
    picture: minutePanel(outage, {
      height: 230,
      y: { domain: [0, 100], label: '% of the bank', grid: true, ticks: 5 },
      marks: units.flatMap(({ unit, style }) => banded(outage, unit.chargeFraction, style, (f) => f * 100)),
    }),
    key: units.map(({ unit, style, title }) => ({
      sample: bandKey(style),
      text: `${title}: ${chargeWords(unit.chargeFraction, outage)}`,
    })),
    sentences: units.map(({ unit, title }) => `${title}: ${emptyWords(unit.mode, outage)}.`),
    table: minutesTable(
      outage,
      'State of charge: lowest.',
      units.map(({ unit, title }) => ({
        name: `${title} (%)`,
        id: `${unit.id}LowestChargeFraction`,
        values: unit.chargeFraction,
        take: 'min',
        show: (f) => (f * 100).toFixed(0),
      })),
    ),
    provenance: outage.provenance,
  });
}

/** Why a cold bank runs empty well above the cut-off. */
function cutOffNote(outage: OutageView): string {
  const { units } = outage.household;
  const coldestC = outage.trace.dryBulbC.reduce((least, c) => Math.min(least, c), Infinity);
  const stops = units.map(({ battery }) => {
    const [warm, ...colder] = cutOffs(battery, coldestC);
    const cold = colder.map((c) => `${percent(c.stopsFraction)} at ${degreesText(c.moduleC, outage)}`);
    const sooner = cold.length > 0 ? `, sooner where its modules are cold (${cold.join(', ')})` : '';
    return `stops itself at ${percent(warm!.stopsFraction)}${sooner}`;
  });
  if (new Set(stops).size === 1) return `${units.length > 1 ? 'Each unit' : 'The unit'} ${stops[0]!}.`;
  return units.map(({ id }, u) => `${unitTitle(outage.household, id)} ${stops[u]!}.`).join(' ');
}

function chargeWords(fraction: Float64Array, { from, to }: OutageView): string {
  let [least, most] = [Infinity, -Infinity];
  for (let m = from; m < to; m++) {
    least = Math.min(least, fraction[m]!);
    most = Math.max(most, fraction[m]!);
  }
  return `between ${percent(least)} and ${percent(most)} in the time shown`;
}

/** Starts of stretches in which a unit is empty, over the whole outage. */
export function emptyStarts(mode: readonly string[]): number[] {
  return [...mode.keys()].filter((m) => mode[m] === 'empty' && mode[m - 1] !== 'empty');
}

function emptyWords(mode: readonly string[], { trace, clock }: OutageView): string {
  const starts = emptyStarts(mode);
  if (starts.length === 0) return 'never runs empty in the whole outage';
  const first = momentText(trace, starts[0]!, clock);
  if (starts.length === 1) return `runs empty once in the whole outage, on ${first}`;
  return `runs empty ${starts.length} times in the whole outage, first on ${first}`;
}

function finding(outage: OutageView): string {
  const { trace, household } = outage;
  const units = trace.units.map((unit) => ({ unit, starts: emptyStarts(unit.mode) }));
  const first = units.filter((u) => u.starts.length > 0).sort((a, b) => a.starts[0]! - b.starts[0]!)[0];
  if (!first)
    return units.length === 1
      ? 'The bank never runs empty in the whole outage'
      : 'Neither bank runs empty in the whole outage';
  const others = units.filter((u) => u !== first);
  const spared =
    others.length > 0 && others.every((u) => u.starts.length === 0) ? '; the other never does' : '';
  return `${unitTitle(household, first.unit.id)} ${emptyWords(first.unit.mode, outage)}${spared}`;
}
