/** What falls due at night under strategies that somebody carries out by hand. */
import { minutesInWindows } from '../../clock/clock-windows.ts';
import type { AlternativeSpec, Scenario } from '../../scenario/scenario.ts';
import { compileStrategy, LOWEST_BANK, type ChargeRule } from '../../shedding/compile-rules.ts';
import { prepareStudy } from '../../trials/study.ts';
import { traceDraw, type DrawTrace } from '../../trials/trace-draw.ts';
import type { ObservedNights } from './observed.ts';

/** Hand-carried strategies with a level to watch, lived as they are written, over the same draws. */
export function observeNights(
  scenario: Scenario,
  alternative: AlternativeSpec,
  { seed, draws, days }: { readonly seed: string; readonly draws: number; readonly days: number },
): ObservedNights[] {
  const { household } = alternative;
  const strategies = household.strategies.filter(
    (s) => s.carriedOutBy === 'person' && s.rules.some((r) => r.by === 'charge'),
  );
  if (strategies.length === 0) return [];
  const study = prepareStudy(
    {
      ...scenario,
      outage: { ...scenario.outage, horizonDays: Math.min(days, scenario.outage.horizonDays) },
      alternatives: [{ ...alternative, household: { ...household, strategies } }],
    },
    { seed },
  );
  const awake = minutesInWindows([household.person.awake]);
  return strategies.map((strategy, s) => {
    const { rules } = compileStrategy(strategy, household.circuits, household.units);
    const charge = rules.filter((r): r is ChargeRule => r.by === 'charge');
    const nights = Array.from({ length: draws }, (_, draw) => {
      const trace = traceDraw(study, { draw, alternative: 0, strategy: s });
      return nightsOfDraw(trace, charge, awake);
    });
    return {
      strategyId: strategy.id,
      dueAsleepDraws: nights.filter((n) => n.waitMinutes > 0).length,
      longestWaitMinutes: Math.max(0, ...nights.map((n) => n.waitMinutes)),
      emptyAsleepDraws: nights.filter((n) => n.empty).length,
    };
  });
}

/** The longest wait for somebody to get up, and whether a bank ran empty meanwhile. */
function nightsOfDraw(trace: DrawTrace, rules: readonly ChargeRule[], awake: Uint8Array) {
  let waitMinutes = 0;
  let empty = false;
  for (let m = 1; m < trace.minutes; m++) {
    if (awake[trace.localMinuteOfDay[m]!] === 1) continue;
    if (trace.units.some(({ mode }) => mode[m] === 'empty' && mode[m - 1] !== 'empty')) empty = true;
    if (rules.some((rule) => fallsDue(trace, rule, m)))
      waitMinutes = Math.max(waitMinutes, minutesUntilAwake(trace, awake, m));
  }
  return { waitMinutes, empty };
}

function fallsDue(trace: DrawTrace, rule: ChargeRule, m: number): boolean {
  const passes =
    bankCharge(trace, rule, m - 1) >= rule.dropBelow && bankCharge(trace, rule, m) < rule.dropBelow;
  return passes && trace.circuits.some(({ allowed }, c) => rule.holds[c] === 1 && allowed[m] === 1);
}

function bankCharge({ units }: DrawTrace, { reads }: ChargeRule, m: number): number {
  if (reads !== LOWEST_BANK) return units[reads]!.chargeFraction[m]!;
  return Math.min(...units.map((u) => u.chargeFraction[m]!));
}

function minutesUntilAwake({ localMinuteOfDay }: DrawTrace, awake: Uint8Array, from: number): number {
  for (let wait = 1; wait <= 1440; wait++)
    if (awake[(localMinuteOfDay[from]! + wait) % 1440] === 1) return wait;
  return 1440;
}
