/** More to draw on never ends sooner: one thing changed, the same draws. */
import { runShard } from '../../../../packages/sim/src/index.ts';
import { exactly, type Comparison } from '../comparison.ts';
import { LIMITED_CRITICAL } from './backup-household.ts';
import { circuit, pair3kW, studyOf } from './household.ts';
import { column } from './rows.ts';

/** Each alternative against the one before it: draws in which it ends sooner, in the darkest months of the dullest place. */
function endsSooner(
  better: Readonly<Record<string, unknown>>,
  worse: Readonly<Record<string, unknown>>,
): number {
  const study = studyOf({
    place: 'seattle',
    months: [11, 12, 1],
    days: 7,
    units: pair3kW({ solarW: 1600 }),
    circuits: LIMITED_CRITICAL,
    alternatives: [
      { id: 'worse', title: 'worse', change: worse },
      { id: 'better', title: 'better', change: better },
    ],
  });
  const rows = runShard(study, 0, 150);
  // the household as described comes first when both alternatives change it
  const [worseAt, betterAt] = ['worse', 'better'].map((id) =>
    study.alternatives.findIndex((a) => a.id === id),
  );
  const ends = column(rows, 'runtimeMinutes', betterAt);
  return column(rows, 'runtimeMinutes', worseAt).filter((minutes, i) => ends[i]! < minutes).length;
}

const MORE_LOAD = [...LIMITED_CRITICAL, circuit('more', 'L1', 2, { kind: 'steady', runningW: 40 })];

export const oneThingMore: readonly Comparison[] = (
  [
    ['a second module on each unit', { 'units.*.battery.modules': 2 }, {}],
    ['four modules against three', { 'units.*.battery.modules': 4 }, { 'units.*.battery.modules': 3 }],
    [
      'twice the panels',
      { 'units.*.solar': { inputLimitW: 3200, arrays: [{ peakW: 3200, tiltDeg: 35, azimuthDeg: 180 }] } },
      {},
    ],
    [
      'full at the start against half',
      { 'units.*.battery.startFraction': 1 },
      { 'units.*.battery.startFraction': 0.5 },
    ],
    ['40 W less on one leg', {}, { circuits: MORE_LOAD }],
    ['10 W less idle draw', { 'units.*.inverter.idleW': 18 }, {}],
  ] as const
).map(([what, better, worse]) => ({
  claim: `${what} ends sooner in this many of 150 draws`,
  source: 'more to draw on, or less to feed, never ends sooner (logic; exact)',
  unit: 'draws',
  band: exactly(0),
  ours: () => endsSooner(better, worse),
}));
