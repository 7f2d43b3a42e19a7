/** Rules that cannot act, and people who would have to wake. */
import { describe, expect, it } from 'vitest';
import {
  always,
  atNoon,
  findingsOf,
  numberOf,
  onlyFinding,
  plainCircuit,
  plainUnit,
  type PlainHouse,
} from './plain-house.ts';

type Strategy = NonNullable<PlainHouse['strategies']>[number];
type Rule = NonNullable<Strategy['rules']>[number];

const SOLAR = { inputLimitW: 2400, arrays: [{ peakW: 2000, tiltDeg: 0, azimuthDeg: 180 }] };
const sunny = [plainUnit('east', 'L1', { solar: SOLAR }), plainUnit('west', 'L2')];
const chosen = { ids: ['hall'] };

function withRule(rule: Rule, more: PlainHouse = {}): PlainHouse {
  return {
    units: sunny,
    ...more,
    strategies: [{ id: 's', title: 'S', carriedOutBy: 'switch', rules: [rule] }],
  };
}
const charge = (dropBelowFraction: number, restoreAboveFraction: number): Rule => ({
  by: 'charge',
  circuits: chosen,
  dropBelowFraction,
  restoreAboveFraction,
});
const told = (house: PlainHouse) => findingsOf(house, 'strategy-rules').map((f) => [f.severity, f.where]);

describe('a rule', () => {
  it('that acts well above the cut-off and within reach is nothing to tell', () => {
    expect(told(withRule(charge(0.5, 0.7)))).toEqual([]);
  });

  it('that drops at or below the cut-off never acts', () => {
    expect(told(withRule(charge(0.1, 0.3)))).toEqual([['mend', 'strategies.s.rules.0.dropBelowFraction']]);
    expect(told(withRule(charge(0.11, 0.3)))).toEqual([]);
  });

  it('is held to the higher cut-off of two: the first unit to stop takes its reading with it', () => {
    const battery = { ...plainUnit('west', 'L2').battery, cutOffFraction: 0.2, restartFraction: 0.3 };
    const units = [plainUnit('east', 'L1', { solar: SOLAR }), plainUnit('west', 'L2', { battery })];
    expect(told(withRule(charge(0.2, 0.4), { units }))).toEqual([
      ['mend', 'strategies.s.rules.0.dropBelowFraction'],
    ]);
    expect(told(withRule(charge(0.21, 0.4), { units }))).toEqual([]);
  });

  it('never restores where nothing refills the banks', () => {
    const dark = { units: [plainUnit('east', 'L1'), plainUnit('west', 'L2')] };
    expect(told(withRule(charge(0.5, 0.7), dark))).toEqual([
      ['watch', 'strategies.s.rules.0.restoreAboveFraction'],
    ]);
  });

  it('restores where a charger and hours of grid refill them', () => {
    const charger = { maxW: 1000 };
    const units = [plainUnit('east', 'L1', { charger }), plainUnit('west', 'L2', { charger })];
    const sources = { grid: { onHours: 2, offHours: 6 } };
    expect(told(withRule(charge(0.5, 0.7), { units, sources }))).toEqual([]);
    expect(told(withRule(charge(0.5, 0.7), { units }))).toHaveLength(1);
  });

  it('that restores only at the brim is to be watched', () => {
    expect(told(withRule(charge(0.5, 1)))).toEqual([['watch', 'strategies.s.rules.0.restoreAboveFraction']]);
  });

  it('with levels too close is told', () => {
    expect(told(withRule(charge(0.5, 0.54))).map(([severity]) => severity)).toEqual(['note']);
  });

  it.each([
    [0.3, 0.35],
    [0.5, 0.55],
  ])('with levels a twentieth apart, %f and %f, is not', (drop, restore) => {
    expect(told(withRule(charge(drop, restore)))).toEqual([]);
  });

  it('that waits for more sun than there can be never lets its circuits on', () => {
    const sun = (solarAboveW: number): Rule => ({ by: 'sun', circuits: chosen, solarAboveW });
    expect(told(withRule(sun(1999)))).toEqual([]);
    expect(told(withRule(sun(2000)))).toEqual([['mend', 'strategies.s.rules.0.solarAboveW']]);
    const dark = { units: [plainUnit('east', 'L1'), plainUnit('west', 'L2')] };
    const [finding] = findingsOf(withRule(sun(100), dark), 'strategy-rules');
    expect(finding?.found).toContain('where there are no panels');
    const solar = { ...SOLAR, inputLimitW: 1500 }; // the input lets no more in
    const limited = [plainUnit('east', 'L1', { solar }), plainUnit('west', 'L2')];
    expect(told(withRule(sun(1600), { units: limited }))).toHaveLength(1);
  });

  it('that puts a unit to sleep below its cut-off never acts', () => {
    const sleep: Rule = { by: 'sleep', unit: 'west', sleepBelowFraction: 0.08, wakeAboveFraction: 0.3 };
    expect(told(withRule(sleep))).toEqual([['mend', 'strategies.s.rules.0.sleepBelowFraction']]);
    expect(told(withRule({ ...sleep, sleepBelowFraction: 0.1 }))).toHaveLength(1); // it has stopped by then
    expect(told(withRule({ ...sleep, sleepBelowFraction: 0.11 }))).toEqual([]);
  });

  it('that can switch off tier 1 is to be watched', () => {
    const circuits = [
      plainCircuit('hall', 'L1', { tier: 1, title: 'Hall light' }),
      plainCircuit('attic', 'L2'),
    ];
    const finding = onlyFinding(withRule(charge(0.5, 0.7), { circuits }), 'strategy-rules');
    expect(finding.severity).toBe('watch');
    expect(finding.found).toContain('Hall light');
  });
});

describe('at night', () => {
  const rules: Rule[] = [charge(0.5, 0.7)];
  const heavy = [plainCircuit('hall', 'L1', { appliances: [always(400)] }), plainCircuit('attic', 'L2')];
  const house = (more: Partial<Strategy>, rest: PlainHouse = {}): PlainHouse => ({
    circuits: heavy,
    strategies: [{ id: 's', title: 'By hand', rules, ...more }],
    ...rest,
  });

  it('a level that is passed asleep waits until somebody is up: 420 W take 5 kWh to half in 6 hours, 06:30 comes after', () => {
    const finding = onlyFinding(house({}), 'nights');
    // 2,500 Wh at 0.97 one way and 420 W: 5.8 h after midnight
    const due = (2500 * 0.97) / 420;
    expect(numberOf(finding, 'longest wait')).toBeCloseTo(6.5 - due, 1);
    expect(numberOf(finding, 'outages watched with something due at night')).toBe(1);
    expect(finding.severity).toBe('note');
  });

  it('a switch needs nobody', () => {
    expect(findingsOf(house({ carriedOutBy: 'switch' }), 'nights')).toEqual([]);
  });

  it('nor does a household that is up all night', () => {
    expect(findingsOf(house({}, { person: { awake: '00:00-24:00' } }), 'nights')).toEqual([]);
  });

  it('a bank that runs empty meanwhile is to be watched', () => {
    const circuits = [
      plainCircuit('hall', 'L1', { appliances: [always(1500)] }),
      plainCircuit('attic', 'L2'),
    ];
    const finding = onlyFinding(house({}, { circuits }), 'nights');
    expect(finding.severity).toBe('watch');
    expect(numberOf(finding, 'outages watched with a bank empty at night')).toBe(1);
  });

  it('windows that begin or end asleep are told by the clock', () => {
    const clock: Rule = { by: 'clock', circuits: chosen, onDuring: ['05:00-08:00', '12:00-13:00'] };
    const finding = onlyFinding(house({ rules: [clock] }), 'nights');
    expect(finding.found).toContain('switches are due at 05:00, when everybody is asleep');
  });

  it('a trip stays until morning, with what somebody’s health hangs on', () => {
    const late = { windows: ['02:00-03:00'] };
    const circuits = [
      plainCircuit('hall', 'L1', { appliances: [atNoon(3100, late)] }),
      plainCircuit('bed', 'L1', { title: 'Breathing aid', need: 'medical' }),
    ];
    const strategies: PlainHouse['strategies'] = [{ id: 'all', title: 'All' }];
    const finding = onlyFinding({ circuits, strategies }, 'nights');
    expect(finding.severity).toBe('watch');
    expect(finding.found).toContain('Breathing aid would be without until then');
    const inverter = { continuousW: 3000, surgeW: 6000, idleW: 20, resetsItselfAfterMinutes: 5 };
    const units = [plainUnit('east', 'L1', { inverter }), plainUnit('west', 'L2')];
    expect(findingsOf({ circuits, strategies, units }, 'nights')).toEqual([]);
  });

  it('a start too large at night is such a trip, and only those on its leg are named', () => {
    const late = { windows: ['02:00-03:00'], startingW: 6500 };
    const circuits = [
      plainCircuit('pump', 'L1', { appliances: [atNoon(1000, late)] }),
      plainCircuit('bed', 'L2', { title: 'Breathing aid', need: 'medical' }),
    ];
    const finding = onlyFinding({ circuits, strategies: [{ id: 'all', title: 'All' }] }, 'nights');
    expect(finding.where).toBe('units.east.inverter');
    expect(numberOf(finding, 'outages watched with a start too large at night')).toBe(1);
    expect(finding.found).not.toContain('Breathing aid');
  });
});
