/** Modules, cold, chargers, strings of panels. */
import { describe, expect, it } from 'vitest';
import {
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

const MODULE = { capacityWh: 5000, maxChargeW: 5000, maxDischargeW: 7000 };
const withModule = (module: Partial<typeof MODULE>, more: Partial<Unit['battery']> = {}) => ({
  battery: { module: { ...MODULE, ...module }, startFraction: 1, ...more },
});
const SOLAR = { inputLimitW: 2400, arrays: [{ peakW: 2400, tiltDeg: 0, azimuthDeg: 180 }] };

describe('the number of modules', () => {
  const modules = (unit: Partial<Unit>, circuits = [plainCircuit('hall', 'L1')]) =>
    findingsOf({ units: [plainUnit('only', 'L1', { solar: SOLAR, ...unit })], circuits }, 'module-count');

  it('is too small where a minute watched asked for more than they deliver', () => {
    const circuits = [plainCircuit('oven', 'L1', { appliances: [atNoon(2900)] })];
    const [finding] = findingsOf(
      { units: [plainUnit('only', 'L1', withModule({ maxDischargeW: 2000 }))], circuits },
      'module-count',
    );
    expect(finding?.severity).toBe('watch');
    expect(numberOf(finding!, 'worst minute watched')).toBe(2920); // with the idle watts
    expect(numberOf(finding!, 'modules deliver')).toBe(2000);
    expect(numberOf(finding!, 'outages watched with that minute above it')).toBe(1);
  });

  it('is asked for the load, the idle watts and what the inverter loses: 3,000 + 20 + 90 W at its rating', () => {
    const inverter = { continuousW: 3000, surgeW: 3000, idleW: 20, lossPerW: 0.02, lossPerW2: 1e-2 / 3000 };
    const [finding] = modules({ ...withModule({ maxDischargeW: 3100 }), inverter });
    expect(numberOf(finding!, 'asked at the continuous rating')).toBeCloseTo(3110, 9); // MODEL.md §6.1
    expect(modules({ ...withModule({ maxDischargeW: 3111 }), inverter })).toEqual([]);
  });

  it('is good to know where only the rating asks for more, or only a start', () => {
    expect(modules(withModule({ maxDischargeW: 2000 })).map((f) => f.severity)).toEqual(['note']);
    const [start] = modules(withModule({ maxDischargeW: 4000 }));
    expect(start?.found).toContain('for seconds');
    expect(modules(withModule({ maxDischargeW: 6100 }))).toEqual([]);
  });

  it('may take less than the panels bring', () => {
    const [finding] = modules(withModule({ maxChargeW: 1000 }));
    expect(finding).toMatchObject({ severity: 'note', where: 'units.only.battery.modules' });
    expect(finding?.found).toContain('take 1000 W; its panels can bring 2400 W');
  });

  it('may take less than the charger brings, which is less than it draws: 1,200 W at 90 % are 1,080 W', () => {
    const charged = (maxW: number) =>
      findingsOf(
        {
          units: [
            plainUnit('only', 'L1', {
              ...withModule({ maxChargeW: 1000 }),
              charger: { maxW, efficiency: 0.9 },
            }),
          ],
          circuits: [plainCircuit('hall', 'L1')],
          sources: { grid: { onHours: 2, offHours: 6 } },
        },
        'module-count',
      ).map((f) => f.found);
    expect(charged(1200)).toEqual(['only’s modules take 1000 W; its charger can bring 1080 W.']);
    expect(charged(1100)).toEqual([]);
  });

  it('may be more than the panels can fill', () => {
    const [finding] = modules(withModule({ capacityWh: 100_000 }));
    expect(finding?.found).toMatch(/takes \d+(\.\d)? such days to fill/);
  });

  it('is held to what its own unit’s panels bring, and to no more than its input lets in', () => {
    const solar = (peakW: number) => ({ ...SOLAR, arrays: [{ ...SOLAR.arrays[0]!, peakW }] });
    const large = withModule({ capacityWh: 1_000_000 });
    const broughtWh = (east: number, west: number) =>
      findingsOf(
        {
          units: [
            plainUnit('east', 'L1', { ...large, solar: solar(east) }),
            plainUnit('west', 'L2', { ...large, solar: solar(west) }),
          ],
        },
        'module-count',
      ).map((f) => numberOf(f, 'panels, mean day watched'));
    const [whole, half] = broughtWh(1200, 600);
    expect(half! / whole!).toBeCloseTo(0.5, 9);
    const [clipped] = broughtWh(24_000, 600);
    expect(clipped).toBeLessThan(SOLAR.inputLimitW * 12.2); // from sunrise to sunset on the equator, 12 h 7 min
  });

  it('is all there is where nothing refills it', () => {
    const [finding] = findingsOf(
      { units: [plainUnit('only', 'L1')], circuits: [plainCircuit('hall', 'L1')] },
      'module-count',
    );
    expect(finding?.found).toBe(
      'Nothing refills only: what its bank holds at the start is all there is (5 kWh when full).',
    );
  });
});

describe('a unit that nothing refills', () => {
  const charger = { maxW: 1000 };
  const units = [plainUnit('east', 'L1', { charger }), plainUnit('west', 'L2', { charger })];
  it.each([
    [
      'a generator that feeds the other one',
      { generator: { ratedW: 5000, volts: 120, tankL: 20, feeds: ['west'] } },
    ],
    ['a vehicle plugged into the other one', { vehicle: { unit: 'west', outletW: 1500 } }],
  ] as const)('is told beside %s', (_, sources) => {
    const found = findingsOf({ units, sources: sources as never }, 'module-count').map((f) => f.found);
    expect(found).toEqual([expect.stringContaining('Nothing refills east')]);
  });
});

describe('banks that differ', () => {
  const two = (second: Partial<Unit>) => [plainUnit('east', 'L1'), plainUnit('west', 'L2', second)];

  it('in kind, number or health are told', () => {
    const kind = onlyFinding({ units: two(withModule({ capacityWh: 4000 })) }, 'module-mix');
    expect(kind.found).toContain('differ in kind of module: east holds 5 kWh, west 4 kWh');
    const number = onlyFinding({ units: two(withModule({}, { modules: 2 })) }, 'module-mix');
    expect(number.found).toContain('differ in number of modules');
    const health = onlyFinding({ units: two(withModule({}, { healthFraction: 0.8 })) }, 'module-mix');
    expect(health.found).toContain('100 % of their nameplate, west’s at 80 %');
  });

  it('by less than a meter tells are not', () => {
    expect(findingsOf({ units: two(withModule({}, { healthFraction: 0.98 })) }, 'module-mix')).toEqual([]);
  });

  it.each([
    [1, 0.97],
    [0.95, 0.92],
  ])('by three hundredths of their nameplate are told: at %f and %f', (east, west) => {
    const units = two(withModule({}, { healthFraction: west }));
    units[0] = plainUnit('east', 'L1', withModule({}, { healthFraction: east }));
    expect(findingsOf({ units }, 'module-mix')).toHaveLength(1);
  });
});

describe('cold modules', () => {
  const outdoors = {
    units: [plainUnit('only', 'L1', withModule({}, { place: 'outdoors' }))],
    circuits: [plainCircuit('hall', 'L1')],
  };

  it('take no charge below their limit: the share of the time is told', () => {
    const finding = onlyFinding({ ...outdoors, dryBulbC: -5 }, 'cold-modules');
    expect(finding.severity).toBe('watch');
    expect(numberOf(finding, 'time below it')).toBe(100);
    expect(numberOf(finding, 'share that can be drawn')).toBeCloseTo(80, 0);
  });

  it('in a cool place hold some back', () => {
    expect(onlyFinding({ ...outdoors, dryBulbC: 5 }, 'cold-modules').severity).toBe('note');
    expect(findingsOf({ ...outdoors, dryBulbC: 20 }, 'cold-modules')).toEqual([]);
  });

  it('are looked at in the site’s record low too, which is asked for', () => {
    expect(onlyFinding({ ...outdoors, site: { recordLowC: -10 } }, 'cold-modules').found).toContain(
      'near -10 °C',
    );
    const units = [plainUnit('only', 'L1', withModule({}, { place: 'garage' }))];
    const garage = onlyFinding(
      { ...outdoors, units, site: { recordLowC: -30, indoorC: 20, indoorFollowsFraction: 0.3 } },
      'cold-modules',
    );
    expect(garage.found).toContain('near -12.5 °C'); // rooms follow to 20 − 0.3 · 50 = 5 °C; halfway to -30 °C: MODEL.md U11
    expect(findingsOf({ ...outdoors, site: { recordLowC: 0 } }, 'cold-modules')).toEqual([]); // charged down to 0 °C
    const asked = reportOf(outdoors).unchecked.find((u) => u.check === 'cold-modules');
    expect(asked?.keys).toEqual(['site.recordLowC']);
  });
});

describe('modules in one cold place', () => {
  const two = (west: Partial<Unit['battery']>): PlainHouse => ({
    units: [
      plainUnit('east', 'L1', withModule({}, { place: 'outdoors' })),
      plainUnit('west', 'L2', withModule({}, { place: 'outdoors', ...west })),
    ],
    dryBulbC: -5,
  });

  it('are told together where they bear the same cold, apart where one gives more of its energy then', () => {
    expect(findingsOf(two({}), 'cold-modules')).toHaveLength(1);
    const hardy = two({ coldCapacity: [[-20, 0.9], [25, 1]] }); // prettier-ignore
    expect(findingsOf(hardy, 'cold-modules').map((f) => f.where)).toEqual([
      'units.east.battery.place',
      'units.west.battery.place',
    ]);
  });
});

describe('a charger', () => {
  const charged = (maxW: number, breakerA: number, volts: 120 | 240 = 120, modules = 1) => [
    plainUnit('only', 'L1', {
      battery: { module: MODULE, modules },
      charger: { maxW, efficiency: 1, feed: { breakerA, volts } },
    }),
  ];
  const circuits = [plainCircuit('hall', 'L1')];

  it('that runs three hours and more needs 125 % of what it draws', () => {
    expect(findingsOf({ units: charged(1440, 15), circuits }, 'charger-feeds')).toEqual([]);
    const finding = onlyFinding({ units: charged(1500, 15), circuits }, 'charger-feeds');
    expect(finding.severity).toBe('mend');
    expect(numberOf(finding, 'feed must be rated')).toBe(15.625);
  });

  it('draws the watts that it may, loses some, and takes no more than the bank does', () => {
    const lossy = (maxW: number, module: typeof MODULE) => [
      plainUnit('only', 'L1', {
        battery: { module },
        charger: { maxW, efficiency: 0.9, feed: { breakerA: 15, volts: 120 } },
      }),
    ];
    expect(findingsOf({ units: lossy(1440, MODULE), circuits }, 'charger-feeds')).toEqual([]);
    const finding = onlyFinding({ units: lossy(1500, MODULE), circuits }, 'charger-feeds');
    expect(numberOf(finding, 'charger draws')).toBe(12.5);
    expect(numberOf(finding, 'hours from empty')).toBeCloseTo(MODULE.capacityWh / (1500 * 0.9), 9);
    const gentle = { ...MODULE, maxChargeW: 900 };
    expect(findingsOf({ units: lossy(3000, gentle), circuits }, 'charger-feeds')).toEqual([]);
  });

  it('that is done sooner needs what it draws', () => {
    expect(findingsOf({ units: charged(1800, 15), circuits }, 'charger-feeds')).toEqual([]);
    expect(findingsOf({ units: charged(1800, 15, 120, 2), circuits }, 'charger-feeds')).toHaveLength(1);
  });

  it('at 240 V draws half the current', () => {
    expect(findingsOf({ units: charged(2880, 15, 240, 4), circuits }, 'charger-feeds')).toEqual([]);
  });
});

describe('a string of panels', () => {
  const panel = { openCircuitV: 45, maximumPowerV: 37, openCircuitPerC: -0.0028, maximumPowerPerC: -0.0035 };
  const house = (string: object = {}, window: object = {}, site: object = {}): PlainHouse => ({
    units: [
      plainUnit('only', 'L1', {
        solar: {
          inputLimitW: 2400,
          window: { minV: 90, maxV: 210, startV: 100, ...window },
          arrays: [
            { peakW: 2400, tiltDeg: 0, azimuthDeg: 180, string: { ...panel, inSeries: 4, ...string } },
          ],
        },
      }),
    ],
    circuits: [plainCircuit('hall', 'L1')],
    site: { recordLowC: -20, recordHighC: 40, ...site },
  });

  it('within its window in cold and heat is nothing to tell', () => {
    expect(findingsOf(house(), 'string-voltages')).toEqual([]);
  });

  it('past the input’s limit at the record low is to be mended: 4 × 45 V at -20 °C are 202.68 V', () => {
    const finding = onlyFinding(house({}, { maxV: 202 }), 'string-voltages');
    expect(finding).toMatchObject({ severity: 'mend', rule: { source: 'NEC 690.7, Table 690.7(A)' } });
    expect(numberOf(finding, 'open circuit in the cold')).toBeCloseTo(202.68, 9);
    expect(numberOf(finding, 'most panels in series')).toBe(3);
    expect(findingsOf(house({}, { maxV: 203 }), 'string-voltages')).toEqual([]);
  });

  it('is looked at in the coldest air known, be that the record low or what the draws met', () => {
    const spelt = { ...house({}, { maxV: 202 }, { recordLowC: 0 }), dryBulbC: -25 };
    const finding = onlyFinding(spelt, 'string-voltages');
    expect(numberOf(finding, 'temperature')).toBeCloseTo(-25, 0);
    expect(numberOf(finding, 'temperature')).toBeLessThan(-24);
  });

  it('below -40 °C, where the code’s table ends, is taken by its last row: 4 × 45 V × 1.25', () => {
    const colder = house({ openCircuitPerC: undefined }, { maxV: 224 }, { recordLowC: -45 });
    expect(numberOf(onlyFinding(colder, 'string-voltages'), 'open circuit in the cold')).toBe(225);
  });

  it('without a coefficient is taken by the code’s table: 4 × 45 V × 1.18', () => {
    const finding = onlyFinding(house({ openCircuitPerC: undefined }, { maxV: 212 }), 'string-voltages');
    expect(numberOf(finding, 'open circuit in the cold')).toBeCloseTo(212.4, 9);
  });

  it('may not pass 600 V on a house whatever the input bears', () => {
    const finding = onlyFinding(house({ inSeries: 12 }, { maxV: 1000 }), 'string-voltages');
    expect(finding.found).toContain('a house may have 600 V');
  });

  it('below the window in the heat is to be watched', () => {
    const finding = onlyFinding(house({ inSeries: 2 }, { minV: 70, startV: 60 }), 'string-voltages');
    expect(finding.severity).toBe('watch');
    const cellC = 40 + 1000 / (25 + 6.84);
    expect(numberOf(finding, 'working voltage in heat')).toBeCloseTo(74 * (1 - 0.0035 * (cellC - 25)), 9);
    expect(findingsOf(house({ inSeries: 2 }, { minV: 60, startV: 60 }), 'string-voltages')).toEqual([]);
  });

  it('that never wakes the input in the heat is to be watched', () => {
    const finding = onlyFinding(house({ inSeries: 2 }, { minV: 50, startV: 85 }), 'string-voltages');
    expect(finding.found).toContain('at which the input wakes');
  });

  it('without records or window is told as unchecked, with their keys', () => {
    const keysOf = (spelt: PlainHouse) =>
      reportOf(spelt)
        .unchecked.filter((u) => u.check === 'string-voltages')
        .flatMap((u) => u.keys);
    expect(keysOf(house({}, {}, { recordLowC: undefined, recordHighC: undefined }))).toEqual([
      'site.recordLowC',
      'site.recordHighC',
    ]);
    const units = house().units!.map((u) => ({ ...u, solar: { ...u.solar!, window: undefined } }));
    expect(keysOf({ ...house(), units })).toEqual(['units.only.solar.window']);
    const untold = {
      units: [plainUnit('only', 'L1', { solar: SOLAR })],
      circuits: [plainCircuit('hall', 'L1')],
    };
    expect(keysOf(untold)).toEqual(['units.only.solar.arrays.0.string']);
  });
});

describe('the power of the panels', () => {
  const panels = (peakW: number) =>
    findingsOf(
      {
        units: [plainUnit('only', 'L1', { solar: { ...SOLAR, arrays: [{ ...SOLAR.arrays[0]!, peakW }] } })],
        circuits: [plainCircuit('hall', 'L1')],
      },
      'array-power',
    );

  it('up to the input is nothing to tell, above it good to know, far above it to be watched', () => {
    expect(panels(2400)).toEqual([]);
    expect(panels(3000).map((f) => f.severity)).toEqual(['note']);
    expect(panels(3600).map((f) => f.severity)).toEqual(['note']); // half as much again
    expect(panels(6000).map((f) => f.severity)).toEqual(['watch']);
  });

  it('is told with the share that was clipped, which grows with it', () => {
    const clipped = (peakW: number) => numberOf(panels(peakW)[0]!, 'clipped');
    expect(clipped(2500)).toBeLessThan(clipped(24_000));
    expect(clipped(24_000)).toBeGreaterThan(20);
  });
});
