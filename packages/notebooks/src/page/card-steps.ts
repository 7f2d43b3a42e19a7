/** A strategy as a person at the panel carries it out: what goes off when, in which order, and when it comes back. */
import { listed, type HouseholdSpec } from '@rideout/sim';
import { clockTimesIn, type Look } from '../charts/look.ts';

type Circuit = HouseholdSpec['circuits'][number];
type Strategy = HouseholdSpec['strategies'][number];
type Rule = Strategy['rules'][number];
type Clock = Look['clock'];
type ChargeRule = Extract<Rule, { by: 'charge' }>;

/** Circuits by where their breaker is. */
export interface ByLeg {
  readonly L1: readonly string[];
  readonly L2: readonly string[];
  readonly both: readonly string[];
}

/** One line of the card's table. */
export interface CardStep {
  /** "below 85 %" and the like. */
  readonly when: string;
  readonly off: ByLeg;
  /** "above 95 %"; empty: not until the grid is back. */
  readonly backOn: string;
}

export interface CardPlan {
  /** In the order in which they come: the first moment, then falling charge. */
  readonly steps: readonly CardStep[];
  /** Rules by clock, sun, ration and sleep, each in a sentence. */
  readonly rules: readonly string[];
  /** What no rule ever switches off. */
  readonly staysOn: ByLeg;
}

/** `clock`: how its times are written. */
export function cardPlan(household: HouseholdSpec, strategy: Strategy, clock: Clock = 24): CardPlan {
  const { rules } = strategy;
  const offAtOnce = circuitsOf(
    rules.filter((rule) => rule.by === 'outage'),
    household,
  );
  const charge = rules
    .filter((rule) => rule.by === 'charge')
    .sort((a, b) => b.dropBelowFraction - a.dropBelowFraction);
  const steps = charge
    .map((rule) => chargeStep(rule, household, offAtOnce))
    .filter((step) => named(step.off) > 0);
  const first = { when: 'At once', off: byLeg(offAtOnce), backOn: '' };
  const never = household.circuits.filter(
    (circuit) => !rules.some((rule) => holds(rule, circuit, household)),
  );
  return {
    steps: offAtOnce.length > 0 ? [first, ...steps] : steps,
    rules: rules.flatMap((rule) => ruleWords(rule, household, offAtOnce, clock)),
    staysOn: byLeg(never),
  };
}

function chargeStep(rule: ChargeRule, household: HouseholdSpec, offAtOnce: readonly Circuit[]): CardStep {
  const circuits = circuitsOf([rule], household).filter((circuit) => !offAtOnce.includes(circuit));
  const own = rule.reads === 'own' && household.units.length > 1 ? ' (own leg)' : '';
  return {
    when: `Below ${percentText(rule.dropBelowFraction)}${own}`,
    off: byLeg(circuits),
    backOn: `above ${percentText(rule.restoreAboveFraction)}`,
  };
}

/** Rules that go by something other than the reading; those of the table give nothing here. */
function ruleWords(
  rule: Rule,
  household: HouseholdSpec,
  offAtOnce: readonly Circuit[],
  clock: Clock,
): string[] {
  if (rule.by === 'charge' || rule.by === 'outage') return [];
  if (rule.by === 'sleep') return [sleepWords(rule, household, clock)];
  const circuits = circuitsOf([rule], household).filter((circuit) => !offAtOnce.includes(circuit));
  if (circuits.length === 0) return [];
  const names = listed(circuits.map(nameWithLeg));
  switch (rule.by) {
    case 'clock':
      return [
        `By the clock: ${names} on only ${windowsText(rule.onDuring, clock)}; off the rest of the day.`,
      ];
    case 'sun':
      return [`By the sun: ${names} on only while all panels together give ${rule.solarAboveW} W or more.`];
    case 'ration':
      return [
        `In each hour: ${names} on for the first ${rule.onMinutesPerHour} minutes, off for the rest. Overnight leave ${circuits.length > 1 ? 'them' : 'it'} ${rule.whileAsleep}.`,
      ];
  }
}

function sleepWords(rule: Extract<Rule, { by: 'sleep' }>, { units }: HouseholdSpec, clock: Clock): string {
  const unit = units.find(({ id }) => id === rule.unit);
  const when = rule.during
    ? windowsText(rule.during, clock)
    : `while its battery is below ${percentText(rule.sleepBelowFraction ?? 0)}, until it is above ${percentText(rule.wakeAboveFraction ?? 0)}`;
  const circuits =
    rule.circuits === 'moved'
      ? `Its ${unit?.leg ?? ''} circuits move to the other unit, by listed transfer equipment only`
      : `Its ${unit?.leg ?? ''} circuits are off`;
  return `Sleep: unit “${rule.unit}” (${unit?.leg ?? ''}) sleeps ${when}. ${circuits}; 240 V is off meanwhile.`;
}

function circuitsOf(rules: readonly Rule[], household: HouseholdSpec): Circuit[] {
  return household.circuits.filter((circuit) => rules.some((rule) => holds(rule, circuit, household)));
}

/** Whether the rule can ever switch the circuit off. */
function holds(rule: Rule, circuit: Circuit, { units }: HouseholdSpec): boolean {
  if (rule.by === 'sleep') {
    const leg = units.find(({ id }) => id === rule.unit)?.leg;
    return circuit.leg === 'both' || (circuit.leg === leg && rule.circuits === 'dropped');
  }
  const { ids, tiers, legs } = rule.circuits;
  return (
    (ids?.includes(circuit.id) ?? true) &&
    (tiers?.includes(circuit.tier) ?? true) &&
    (legs?.includes(circuit.leg) ?? true)
  );
}

export function byLeg(circuits: readonly Circuit[]): ByLeg {
  const on = (leg: Circuit['leg']) => circuits.filter((c) => c.leg === leg).map(nameWithBreaker);
  return { L1: on('L1'), L2: on('L2'), both: on('both') };
}

function named({ L1, L2, both }: ByLeg): number {
  return L1.length + L2.length + both.length;
}

/** "Well pump [20 A]", the breaker whole on its line. */
function nameWithBreaker({ id, title, breakerA }: Circuit): string {
  return `${title ?? id}${breakerA === undefined ? '' : ` [${breakerA}\u00a0A]`}`;
}

function nameWithLeg(circuit: Circuit): string {
  return `${nameWithBreaker(circuit)} (${circuit.leg === 'both' ? '240 V' : circuit.leg})`;
}

export function windowsText(windows: readonly string[], clock: Clock): string {
  return listed(windows.map((window) => `from ${clockTimesIn(window.replace('-', ' to '), clock)}`));
}

export function percentText(fraction: number): string {
  return `${Number((fraction * 100).toPrecision(12))}\u00a0%`;
}
