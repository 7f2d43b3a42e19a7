/** Legs, starts and breakers. */
import { describe, expect, it } from 'vitest';
import { circuitContinuousW } from '../../../../packages/sim/src/advice/checks/household-loads.ts';
import {
  always,
  atNoon,
  findingsOf,
  numberOf,
  onlyFinding,
  plainCircuit,
  plainUnit,
  reportOf,
  type Circuit,
  type PlainHouse,
} from './plain-house.ts';

describe('the load of a leg', () => {
  const kitchen = (...watts: number[]) =>
    plainCircuit('kitchen', 'L1', { appliances: watts.map((w, i) => atNoon(w, { id: `a${i}` })) });

  it('is told by its worst minute, to the watt, with what made it and the trips it makes', () => {
    const finding = onlyFinding({ circuits: [kitchen(2000, 1500), plainCircuit('hall', 'L1')] }, 'leg-load');
    expect(finding).toMatchObject({ severity: 'watch', where: 'units.east.inverter.continuousW' });
    expect(finding.found).toContain('2026-03-01 12:00: kitchen 3500 W and hall 50 W');
    expect(numberOf(finding, 'worst minute watched')).toBe(3550);
    expect(numberOf(finding, 'sum of nameplates')).toBe(3550);
    expect(numberOf(finding, 'outages watched with an overload trip')).toBe(1);
    expect(numberOf(finding, 'worst three hours, mean')).toBeCloseTo(3500 / 3 + 50, 6);
  });

  it('is only good to know when the unit bears the excess for as long as it lasts', () => {
    const inverter = { continuousW: 3000, surgeW: 6000, idleW: 20, overloadMinutes: 60 };
    const units = [plainUnit('east', 'L1', { inverter }), plainUnit('west', 'L2')];
    expect(onlyFinding({ units, circuits: [kitchen(2000, 1500)] }, 'leg-load')).toMatchObject({
      severity: 'note',
      found: expect.stringContaining('It bears that') as string,
    });
  });

  it('by nameplates alone is good to know: never together in what was watched', () => {
    const later = atNoon(2000, { windows: ['15:00-16:00'], id: 'later' });
    const circuits = [plainCircuit('kitchen', 'L1', { appliances: [atNoon(2000), later] })];
    const finding = onlyFinding({ circuits }, 'leg-load');
    expect(finding.severity).toBe('note');
    expect(numberOf(finding, 'sum of nameplates')).toBe(4000);
    expect(numberOf(finding, 'worst minute watched')).toBe(2000);
  });

  it('counts half of a 240 V circuit on each leg', () => {
    const circuits = [plainCircuit('oven', 'both', { appliances: [atNoon(6400)] })];
    const both = findingsOf({ circuits }, 'leg-load').filter((f) => f.severity === 'watch');
    expect(both.map((f) => numberOf(f, 'worst minute watched'))).toEqual([3200, 3200]);
    expect(both.every((f) => f.found.includes('12:00: oven 3200 W)'))).toBe(true);
  });

  it('is to be mended when a single appliance is more than the unit', () => {
    const [first] = findingsOf({ circuits: [kitchen(3200)] }, 'leg-load');
    expect(first).toMatchObject({ severity: 'mend', rule: { source: 'NEC 710.15(A)' } });
  });

  it('of several alike is held to each of them: four of 1,000 W are no single appliance of 4,000 W', () => {
    const four = plainCircuit('kitchen', 'L1', { appliances: [atNoon(1000, { count: 4 })] });
    expect(findingsOf({ circuits: [four] }, 'leg-load').map((f) => f.severity)).toEqual(['watch']);
  });

  it('at the rating exactly is nothing to tell', () => {
    expect(findingsOf({ circuits: [kitchen(3000)] }, 'leg-load')).toEqual([]);
  });
});

describe('a start', () => {
  const pump = (startingW: number, leg: 'L1' | 'both' = 'L1') =>
    plainCircuit('pump', leg, { appliances: [atNoon(1000, { startingW })] });
  const oven = plainCircuit('oven', 'L1', {
    appliances: [{ kind: 'scheduled', runningW: 1500, windows: ['11:00-14:00'] }],
  });

  it('that the unit cannot make even alone is to be mended', () => {
    expect(onlyFinding({ circuits: [pump(6100)] }, 'starts').severity).toBe('mend');
    expect(findingsOf({ circuits: [pump(5000)] }, 'starts')).toEqual([]);
  });

  it('of several that one clock starts counts for all of them', () => {
    const four = { runningW: 250, startingW: 1500, count: 4 };
    const pumps = (kind: object) =>
      plainCircuit('pumps', 'L1', { appliances: [{ ...atNoon(250), ...four, ...kind }] });
    expect(onlyFinding({ circuits: [pumps({})] }, 'starts').found).toContain('6000 W');
    const more = onlyFinding({ circuits: [pumps({ startingW: 1600 })] }, 'starts');
    expect([more.severity, more.found.includes('needs 6400 W to start')]).toEqual(['mend', true]);
  });

  it('is added to everything else that is on', () => {
    const finding = onlyFinding({ circuits: [pump(4800), oven] }, 'starts');
    expect(finding.severity).toBe('watch');
    expect(numberOf(finding, 'worst start watched, with everything else on')).toBe(6300);
    expect(numberOf(finding, 'outages watched with a start above it')).toBe(1);
  });

  it('of a 240 V circuit asks each unit for half', () => {
    expect(findingsOf({ circuits: [pump(9000, 'both')] }, 'starts')).toEqual([]);
    const finding = onlyFinding({ circuits: [pump(9200, 'both'), oven] }, 'starts');
    expect(finding.found).toContain('east to 6100 W');
  });

  it('close to the rating is good to know, up to the rating itself; 85 % of it is not close', () => {
    expect(onlyFinding({ circuits: [pump(5500)] }, 'starts').severity).toBe('note');
    expect(onlyFinding({ circuits: [pump(6000)] }, 'starts').severity).toBe('note');
    expect(findingsOf({ circuits: [pump(5100)] }, 'starts')).toEqual([]);
  });
});

describe('a generator', () => {
  const oven = plainCircuit('oven', 'L1', { appliances: [atNoon(2000)] });
  const pump = plainCircuit('pump', 'both', { appliances: [atNoon(1000, { startingW: 5000 })] });
  const house = (circuits: Circuit[], set: object = {}, site: PlainHouse['site'] = {}): PlainHouse => ({
    units: ['L1', 'L2'].map((leg, u) =>
      plainUnit(['east', 'west'][u]!, leg as 'L1', { charger: { maxW: 1000, efficiency: 1 } }),
    ),
    circuits,
    site,
    sources: { generator: { ratedW: 5000, volts: 240, tankL: 20, ...set } },
  });

  it('of 240 V must carry on each leg, with half its watts, what is on there', () => {
    expect(findingsOf(house([oven]), 'generator-loads')).toEqual([]);
    const finding = onlyFinding(house([oven], { ratedW: 4000 }), 'generator-loads');
    expect(finding.found).toContain('east was asked for 2020 W');
    expect(numberOf(finding, 'the generator gives it')).toBe(2000);
    // 3 % less for each 1,000 ft above the first 500 ft: 5,000 W at 10,500 ft are 3,500 W
    const high = onlyFinding(house([oven], {}, { elevationM: 3200.4 }), 'generator-loads');
    expect(numberOf(high, 'the generator gives it')).toBeCloseTo(1750, 6);
  });

  it('must make the starts on each leg, and is not asked where it only charges', () => {
    expect(findingsOf(house([pump], { surgeW: 6000 }), 'generator-loads')).toEqual([]);
    const small = findingsOf(house([pump], { surgeW: 5000 }), 'generator-loads');
    expect(small.map(({ found }) => found)).toEqual([
      expect.stringContaining('pump starting (its half) with everything else on took east to 2520 W'),
      expect.stringContaining('west to 2520 W'),
    ]);
    expect(
      findingsOf(house([oven, pump], { ratedW: 1000, passesThrough: false }), 'generator-loads'),
    ).toEqual([]);
  });
});

describe('a breaker', () => {
  const heater = (watts: number, more: object = {}) =>
    plainCircuit('heater', 'L1', {
      breakerA: 15,
      appliances: [always(watts)],
      ...more,
    });

  it('carries 80 % of its rating for hours: 12 A of 15 A, and no more', () => {
    expect(findingsOf({ circuits: [heater(1440)] }, 'continuous-loads')).toEqual([]);
    const finding = onlyFinding({ circuits: [heater(1446)] }, 'continuous-loads');
    expect(finding).toMatchObject({
      severity: 'mend',
      rule: { source: 'NEC 210.19(A), 210.20(A), 215.2(A), 215.3', standing: 'published' },
    });
    expect(numberOf(finding, '125 % of it')).toBeCloseTo(15.0625, 9);
  });

  it('is held to the rule by the circuit’s own word, either way', () => {
    expect(findingsOf({ circuits: [heater(1700, { continuous: false })] }, 'continuous-loads')).toEqual([]);
    const kettle = { appliances: [atNoon(1600)] };
    expect(findingsOf({ circuits: [heater(0, kettle)] }, 'continuous-loads')).toEqual([]);
    const told = findingsOf({ circuits: [heater(0, { ...kettle, continuous: true })] }, 'continuous-loads');
    expect(told.map((f) => f.severity)).toEqual(['mend']);
  });

  it.each([
    ['lights', { kind: 'lights', runningW: 1500 }, true],
    ['a schedule of three hours', { kind: 'scheduled', runningW: 1500, windows: ['12:00-15:00'] }, true],
    ['a schedule of less', { kind: 'scheduled', runningW: 1500, windows: ['12:00-14:59'] }, false],
    ['three hours across midnight', { kind: 'scheduled', runningW: 1500, windows: ['23:00-02:00'] }, true],
    [
      'two windows of two hours',
      { kind: 'scheduled', runningW: 1500, windows: ['08:00-10:00', '12:00-14:00'] },
      false,
    ],
    ['a run of four hours', { kind: 'duty-cycled', runningW: 1500, onMinutes: 240, dutyFraction: 0.5 }, true],
    ['short runs', { kind: 'duty-cycled', runningW: 1500, onMinutes: 20, dutyFraction: 0.5 }, false],
    [
      'short runs without a rest',
      { kind: 'duty-cycled', runningW: 1500, onMinutes: 20, dutyFraction: 1 },
      true,
    ],
    ['long uses', { kind: 'events', runningW: 1500, usesPerDay: 1, minutesPerUse: 200 }, true],
  ] as const)('counts %s as lasting: %s', (_, appliance, lasts) => {
    const circuits = [plainCircuit('room', 'L1', { breakerA: 15, appliances: [appliance as never] })];
    expect(findingsOf({ circuits }, 'continuous-loads').some((f) => f.severity === 'mend')).toBe(lasts);
  });

  it('is held to what a meter saw for three hours on end: one reading of two hours is not that, two are', () => {
    const metered = (...watts: number[]) =>
      circuitContinuousW({
        continuous: undefined,
        appliances: [{ kind: 'measured', count: 2, scale: 1, profile: { intervalMinutes: 120, watts } }],
      } as never);
    expect(metered(0, 1500, 0, 700)).toBe(0);
    expect(metered(0, 1500, 1200, 0)).toBe(2 * 1200);
  });

  it('that would open in the worst minute watched is to be watched', () => {
    const circuits = [
      plainCircuit('kitchen', 'L1', { breakerA: 20, appliances: [atNoon(1500), atNoon(1100, { id: 'b' })] }),
    ];
    const finding = onlyFinding({ circuits }, 'continuous-loads');
    expect(finding.severity).toBe('watch');
    expect(numberOf(finding, 'worst minute watched')).toBeCloseTo(2600 / 120, 9);
  });

  it('carries for an hour what it is rated for: 2,400 W are the 20 A of a 20 A breaker', () => {
    const circuits = [
      plainCircuit('kitchen', 'L1', { breakerA: 20, appliances: [atNoon(1500), atNoon(900, { id: 'b' })] }),
    ];
    expect(findingsOf({ circuits }, 'continuous-loads')).toEqual([]);
  });

  it('that is not given is told as unchecked, with the key that would let it be', () => {
    const { unchecked } = reportOf({});
    expect(unchecked).toContainEqual({
      check: 'continuous-loads',
      where: 'circuits',
      why: 'no breaker given for hall and attic',
      keys: ['circuits.*.breakerA'],
    });
  });
});
