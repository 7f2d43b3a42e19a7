/** Wires, cords, inlets, voltage, neutrals. */
import { describe, expect, it } from 'vitest';
import {
  always,
  atNoon,
  findingsOf,
  numberOf,
  onlyFinding,
  plainCircuit,
  plainUnit,
  reportOf,
  type PlainHouse,
  type Unit,
} from './plain-house.ts';

const pair = (wiring: Unit['wiring'], more: Partial<Unit> = {}) => [
  plainUnit('east', 'L1', { wiring, ...more }),
  plainUnit('west', 'L2'),
];

describe('the wire behind a breaker', () => {
  const circuit = (wireAwg: number, breakerA: number, terminalC?: 60 | 75) =>
    plainCircuit('garage', 'L1', { wireAwg: wireAwg as 14, breakerA, terminalC });

  it.each([
    [14, 15, undefined, true],
    [14, 20, undefined, false],
    [12, 20, undefined, true],
    [10, 30, undefined, true],
    [10, 35, 75, false], // the small-wire rule stands before the table’s 35 A
    [8, 50, 60, false],
    [8, 50, 75, true],
    [16, 15, undefined, false],
  ] as const)('%i AWG behind %i A at %s °C: in order %s', (awg, amps, terminalC, fits) => {
    const found = findingsOf({ circuits: [circuit(awg, amps, terminalC)] }, 'circuit-wires');
    expect(found.map((f) => f.severity)).toEqual(fits ? [] : ['mend']);
  });
});

describe('the way from a unit to the panel', () => {
  it('of 3,000 W, 25 A, may not be weaker anywhere', () => {
    const findings = findingsOf(
      { units: pair({ inletA: 20, cordAwg: 14, wireAwg: 12, breakerA: 40 }) },
      'unit-output',
    );
    expect(findings.filter((f) => f.severity === 'mend').map((f) => f.where)).toEqual([
      'units.east.wiring.inletA',
      'units.east.wiring.cordAwg',
      'units.east.wiring.wireAwg',
      'units.east.wiring.breakerA',
    ]);
  });

  it('is protected by a breaker that opens before: a 15 A breaker lets 14 AWG stand', () => {
    const findings = findingsOf(
      { units: pair({ breakerA: 15, inletA: 20, cordAwg: 14, wireAwg: 14 }) },
      'unit-output',
    );
    expect(findings.filter((f) => f.severity === 'mend')).toEqual([]);
    expect(findings[0]).toMatchObject({ severity: 'watch', where: 'units.east.wiring.breakerA' });
  });

  it('carries 80 % for hours: told once, as a note while nothing watched came near it', () => {
    const wiring = { breakerA: 30, inletA: 30, cordAwg: 10, wireAwg: 10 } as const;
    const finding = onlyFinding({ units: pair(wiring) }, 'unit-output');
    expect(finding.severity).toBe('note');
    expect(finding.found).toContain('24 A at most');
    expect(numberOf(finding, '125 % of it')).toBe(31.25);
  });

  it('for hours is as weak as its weakest part: a 12 AWG cord carries 25 A (NEC Table 400.5(A)(1)), 20 A of it', () => {
    const wiring = { breakerA: 30, inletA: 30, cordAwg: 12, wireAwg: 10 } as const;
    expect(onlyFinding({ units: pair(wiring) }, 'unit-output').found).toContain(
      'should carry 20 A at most (80 % of the weakest: breaker 30 A, inlet 30 A, cord of 12 AWG 25 A and wire of 10 AWG 30 A)',
    );
  });

  it('of 30 A carries 24 A for hours: a unit of 2,880 W is nothing to tell', () => {
    const wiring = { breakerA: 30, inletA: 30, cordAwg: 10, wireAwg: 10 } as const;
    const inverter = { continuousW: 2880, surgeW: 6000, idleW: 20 };
    expect(findingsOf({ units: pair(wiring, { inverter }) }, 'unit-output')).toEqual([]);
  });

  it('and to be watched once the worst three hours did', () => {
    const wiring = { breakerA: 30, inletA: 30, cordAwg: 10, wireAwg: 10 } as const;
    const circuits = [plainCircuit('heat', 'L1', { appliances: [always(2950)] })];
    expect(onlyFinding({ units: pair(wiring), circuits }, 'unit-output').severity).toBe('watch');
  });

  it('of ample size is nothing to tell, and what is missing is asked for by key', () => {
    const units = pair({ breakerA: 40, inletA: 50, cordAwg: 8, wireAwg: 8 });
    const report = reportOf({ units });
    expect(report.findings.filter((f) => f.check === 'unit-output')).toEqual([]);
    const [missing] = report.unchecked.filter((u) => u.check === 'unit-output');
    expect(missing?.keys).toEqual(
      ['breakerA', 'inletA', 'cordAwg', 'wireAwg'].map((key) => `units.west.wiring.${key}`),
    );
  });
});

describe('voltage lost', () => {
  it('past 3 % on a circuit is good to know, with the volts', () => {
    const circuits = [plainCircuit('shed', 'L1', { wireAwg: 12, runM: 30.48, appliances: [atNoon(1920)] })];
    const finding = onlyFinding({ circuits }, 'voltage-drops');
    expect(finding).toMatchObject({ severity: 'watch' }); // 5.3 % is past 5 % too
    expect(numberOf(finding, 'lost in the circuit')).toBeCloseTo(6.322, 3);
    const shorter = [plainCircuit('shed', 'L1', { wireAwg: 12, runM: 20, appliances: [atNoon(1920)] })];
    expect(onlyFinding({ circuits: shorter }, 'voltage-drops').severity).toBe('note');
    const shortest = [plainCircuit('shed', 'L1', { wireAwg: 12, runM: 15, appliances: [atNoon(1920)] })];
    expect(findingsOf({ circuits: shortest }, 'voltage-drops')).toEqual([]);
  });

  it('is a quarter of the share at 240 V for the same watts', () => {
    const at = (leg: 'L1' | 'both') =>
      numberOf(
        onlyFinding(
          {
            circuits: [
              plainCircuit('pump', leg, {
                wireAwg: 14,
                runM: leg === 'L1' ? 50 : 200,
                appliances: [atNoon(1200)],
              }),
            ],
          },
          'voltage-drops',
        ),
        'share of its voltage',
      );
    expect(at('both')).toBeCloseTo(at('L1'), 9);
  });

  it('at 240 V adds the worse of the two ways from the units to the circuit’s own, and not both', () => {
    const way = (cordRunM: number) => ({ wiring: { cordAwg: 10, cordRunM } as const });
    const units = [plainUnit('east', 'L1', way(10)), plainUnit('west', 'L2', way(5))];
    const circuits = [plainCircuit('pump', 'both', { wireAwg: 12, runM: 30.48, appliances: [atNoon(4800)] })];
    const finding = onlyFinding({ units, circuits }, 'voltage-drops');
    // V = 2 · 12.9 · A · ft / circular mils: 20 A over 100 ft of 12 AWG, and 25 A over 10 m of 10 AWG
    const own = (2 * 12.9 * 20 * 100) / 6530 / 240;
    const before = (2 * 12.9 * 25 * (10 / 0.3048)) / 10380 / 120;
    expect(numberOf(finding, 'with the way from the unit')).toBeCloseTo(100 * (own + before), 9);
    expect(finding.severity).toBe('note'); // 4.99 %
  });

  it('on the way from a unit is told there, not again for every circuit behind it', () => {
    const wiring = { cordAwg: 14, cordRunM: 30 } as const;
    const circuits = [plainCircuit('hall', 'L1', { wireAwg: 12, runM: 5 })];
    const finding = onlyFinding({ units: pair(wiring), circuits }, 'voltage-drops');
    expect(finding).toMatchObject({ severity: 'watch', where: 'units.east.wiring' });
  });
});

describe('a 240 V circuit', () => {
  const pump = plainCircuit('pump', 'both', { title: 'Well pump' });

  it('gets nothing from one unit, and that is to be mended', () => {
    const finding = onlyFinding({ units: [plainUnit('only', 'both')], circuits: [pump] }, 'split-240');
    expect(finding).toMatchObject({ severity: 'mend', rule: { source: 'NEC 710.15(C)' } });
    expect(finding.found).toContain('nothing for Well pump');
  });

  it('goes with the first of two units to stop, which is good to know in the first tiers', () => {
    expect(onlyFinding({ circuits: [pump] }, 'split-240').severity).toBe('note');
    expect(findingsOf({ circuits: [{ ...pump, tier: 4 }] }, 'split-240')).toEqual([]);
  });
});

describe('circuits that share a neutral', () => {
  const shared = (leg: 'L1' | 'L2') => [
    plainCircuit('kitchen', 'L1', { breakerA: 20, sharedNeutralWith: 'dishes', appliances: [atNoon(1500)] }),
    plainCircuit('dishes', leg, { breakerA: 20, appliances: [atNoon(900)] }),
  ];

  it('on one leg add up in it: to be mended', () => {
    const finding = onlyFinding({ circuits: shared('L1') }, 'shared-neutral');
    expect(finding.severity).toBe('mend');
    expect(numberOf(finding, 'worst sum watched')).toBe(20);
    expect(numberOf(finding, 'sum of both breakers')).toBe(40);
  });

  it('on opposite legs leave their difference: good to know', () => {
    const finding = onlyFinding({ circuits: shared('L2') }, 'shared-neutral');
    expect(finding.severity).toBe('note');
    expect(numberOf(finding, 'worst difference watched')).toBe(5);
  });

  it('on one source that joins both legs add up again', () => {
    const units = [plainUnit('only', 'both')];
    const finding = onlyFinding({ units, circuits: shared('L2') }, 'shared-neutral');
    expect(finding).toMatchObject({ severity: 'mend' });
    expect(finding.found).toContain('one 120 V source feeds both');
  });

  it('and while one unit carries the circuits of the other', () => {
    const strategies: PlainHouse['strategies'] = [
      {
        id: 'nap',
        title: 'West naps',
        rules: [{ by: 'sleep', unit: 'west', during: ['10:00-14:00'], circuits: 'moved' }],
      },
    ];
    const finding = onlyFinding({ circuits: shared('L2'), strategies }, 'shared-neutral');
    expect(finding.severity).toBe('mend');
    expect(finding.found).toContain('West naps');
  });

  it('said of either one is said of both, once', () => {
    const both = shared('L1').map((c) => (c.id === 'dishes' ? { ...c, sharedNeutralWith: 'kitchen' } : c));
    expect(findingsOf({ circuits: both }, 'shared-neutral')).toHaveLength(1);
  });

  it('that nobody names are asked for, with a warning where one unit joins both legs', () => {
    const asked = (house: PlainHouse) => reportOf(house).unchecked.map((u) => u.keys.join());
    expect(asked({})).toContain('circuits.*.sharedNeutralWith');
    expect(findingsOf({}, 'shared-neutral')).toEqual([]);
    const bridge = { units: [plainUnit('only', 'both')] };
    expect(asked(bridge)).toContain('circuits.*.sharedNeutralWith');
    expect(onlyFinding(bridge, 'shared-neutral')).toMatchObject({
      severity: 'watch',
      where: 'units.only.leg',
      rule: { source: 'NEC 710.15(C)' },
    });
  });
});

describe('the neutral', () => {
  const circuits = [
    plainCircuit('one', 'L1', { appliances: [atNoon(1800)] }),
    plainCircuit('two', 'L2', { appliances: [atNoon(600)] }),
  ];

  it('carries the difference of the legs: 15 A and 5 A leave 10 A', () => {
    const finding = onlyFinding({ circuits }, 'neutral-current');
    expect(finding.severity).toBe('note');
    expect(numberOf(finding, 'worst minute watched')).toBe(10);
  });

  it('with one leg full and the other empty carries what a unit gives, and no more than that', () => {
    const full = [plainCircuit('one', 'L1', { appliances: [atNoon(3000)] })];
    expect(onlyFinding({ circuits: full }, 'neutral-current').found).toContain(
      '25 A in the worst minute watched; 25 A with one leg full and the other empty.',
    );
  });

  it('carries their sum too while one of two units sleeps and the other has its circuits', () => {
    const strategies: PlainHouse['strategies'] = [
      {
        id: 'nap',
        title: 'West naps',
        rules: [{ by: 'sleep', unit: 'west', during: ['10:00-14:00'], circuits: 'moved' }],
      },
    ];
    const finding = onlyFinding({ circuits, strategies }, 'neutral-current');
    expect(numberOf(finding, 'worst minute watched')).toBe(20);
  });

  it('carries their sum when one unit feeds both, and must be large enough for it', () => {
    const only = (wireAwg: 10 | 14) => [plainUnit('only', 'both', { wiring: { wireAwg } })];
    const fine = onlyFinding({ units: only(10), circuits }, 'neutral-current');
    expect(numberOf(fine, 'worst minute watched')).toBe(20);
    expect(fine.severity).toBe('note');
    expect(onlyFinding({ units: only(14), circuits }, 'neutral-current').severity).toBe('mend');
    const unsaid = onlyFinding({ units: [plainUnit('only', 'both')], circuits }, 'neutral-current');
    expect(unsaid.severity).toBe('watch'); // nobody has said what the neutral carries
  });

  it('is as large as the smallest size on its way: 20 A are too much for a cord of 14 AWG before any wire', () => {
    const units = [plainUnit('only', 'both', { wiring: { cordAwg: 14, wireAwg: 10 } })];
    const finding = onlyFinding({ units, circuits }, 'neutral-current');
    expect(finding.severity).toBe('mend');
    expect(numberOf(finding, 'smallest size given carries')).toBe(18); // NEC Table 400.5(A)(1)
  });
});
