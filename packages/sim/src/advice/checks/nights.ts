/** Who would have to wake: what falls due at night under strategies carried out by hand, and trips at night. */
import { minutesInWindows } from '../../clock/clock-windows.ts';
import type { StrategySpec, UnitSpec } from '../../scenario/schema.ts';
import { listed } from '../../trials/listed.ts';
import { ofDraws, tenths } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

export const nights: CheckSubjectSpec = {
  id: 'nights',
  title: 'What somebody would have to wake for',
  look: (context) => {
    const byHand = context.household.strategies.filter((s) => s.carriedOutBy === 'person');
    return joinOutcomes([
      ...byHand.flatMap((strategy) => [levelsAtNight(context, strategy), clockAtNight(context, strategy)]),
      ...context.household.units.map((unit, u) => tripsAtNight(context, unit, u)),
    ]);
  },
};

function levelsAtNight({ observed }: CheckContext, { id, title }: StrategySpec): Partial<CheckOutcome> {
  const seen = observed.nights.find((n) => n.strategyId === id);
  if (seen === undefined) return {};
  if (seen.dueAsleepDraws === 0) return looked();
  const hours = seen.longestWaitMinutes / 60;
  const empty =
    seen.emptyAsleepDraws === 0
      ? ''
      : ` A bank ran empty while everybody slept in ${ofDraws(seen.emptyAsleepDraws, observed.draws)}.`;
  return looked({
    severity: seen.emptyAsleepDraws > 0 ? 'watch' : 'note',
    where: `strategies.${id}`,
    found: `“${title}” is carried out by hand: in ${ofDraws(seen.dueAsleepDraws, observed.draws)} a level was passed at night, and what it should drop stayed on until somebody was up, ${tenths(hours)} h at the longest.${empty}`,
    numbers: [
      { what: 'outages watched with something due at night', value: seen.dueAsleepDraws, unit: '' },
      { what: 'longest wait', value: hours, unit: 'h' },
      { what: 'outages watched with a bank empty at night', value: seen.emptyAsleepDraws, unit: '' },
    ],
    todo: 'Drop more at bedtime, set the levels higher, or have a switch carry it out.',
    rule: CHECK_RULES.night,
  });
}

/** Minutes of the day at which the strategy's own schedule changes. */
function edgesOf({ rules }: StrategySpec): number[] {
  const windows = rules.flatMap((rule) => {
    if (rule.by === 'clock') return [minutesInWindows(rule.onDuring)];
    return rule.by === 'sleep' && rule.during !== undefined ? [minutesInWindows(rule.during)] : [];
  });
  const edges = windows.flatMap((on) => Array.from(on.keys()).filter((m) => on[m] !== on[(m + 1439) % 1440]));
  return [...new Set(edges)].sort((a, b) => a - b);
}

const clock = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

function clockAtNight({ household }: CheckContext, strategy: StrategySpec): Partial<CheckOutcome> {
  const edges = edgesOf(strategy);
  if (edges.length === 0) return {};
  const awake = minutesInWindows([household.person.awake]);
  const asleep = edges.filter((m) => awake[m] === 0);
  if (asleep.length === 0) return looked();
  return looked({
    severity: 'watch',
    where: `strategies.${strategy.id}.rules`,
    found: `“${strategy.title}” is carried out by hand, but switches are due at ${listed(asleep.map(clock))}, when everybody is asleep (awake ${household.person.awake}): they wait until morning.`,
    numbers: [{ what: 'switches due asleep each night', value: asleep.length, unit: '' }],
    todo: 'Move them into waking hours, or have a timer or a switch carry it out.',
    rule: CHECK_RULES.night,
  });
}

/** With everything on; a unit that resets itself needs nobody. */
function tripsAtNight(
  { observed, household }: CheckContext,
  unit: UnitSpec,
  u: number,
): Partial<CheckOutcome> {
  const seen = observed.units[u]!;
  const draws = Math.max(seen.overloadAsleepDraws, seen.surgeAsleepDraws);
  if (draws === 0 || unit.inverter.resetsItselfAfterMinutes !== undefined) return looked();
  const medical = household.circuits
    .filter((c) => c.need === 'medical' && (c.leg === unit.leg || c.leg === 'both' || unit.leg === 'both'))
    .map((c) => c.title ?? c.id);
  const also = medical.length === 0 ? '' : ` ${listed(medical)} would be without until then.`;
  return looked({
    severity: 'watch',
    where: `units.${unit.id}.inverter`,
    found: `With everything on, ${unit.id} would trip at night in ${ofDraws(draws, observed.draws)}, and stay down until somebody resets it.${also}`,
    numbers: [
      { what: 'outages watched with an overload at night', value: seen.overloadAsleepDraws, unit: '' },
      { what: 'outages watched with a start too large at night', value: seen.surgeAsleepDraws, unit: '' },
    ],
    todo: 'Switch large loads off at bedtime; fit an alarm that wakes somebody when the power goes.',
    rule: CHECK_RULES.night,
  });
}
