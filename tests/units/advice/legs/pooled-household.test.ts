/** Both banks and all panels as one unit: the bound of panels too large for one placing after the other. MODEL.md §21.4. */
import { describe, expect, it } from 'vitest';
import { pooledHousehold } from '../../../../packages/sim/src/advice/legs/bare-household.ts';
import { panelOf } from '../../../../packages/sim/src/advice/legs/panel.ts';
import { drawableFraction } from '../../../../packages/sim/src/power/cold.ts';
import { tinySpec, type TinyUnit } from '../../step/tiny-house.ts';
import { scenarioOf } from '../read-written.ts';

const CURVE: [number, number][] = [
  [-20, 0.6],
  [25, 1],
];

const EAST: TinyUnit = {
  capacityWh: 1000,
  inverter: { idleW: 12, standbyW: 4, lossPerW: 0.05, lossPerW2: 8e-6, continuousW: 2000, surgeW: 4000 },
  battery: {
    modules: 2,
    healthFraction: 0.9,
    cutOffFraction: 0.2,
    restartFraction: 0.25,
    startFraction: 0.6,
    place: 'garage',
    coldCapacity: CURVE,
    minChargeC: 0,
  },
  module: {
    maxChargeW: 400,
    maxDischargeW: 900,
    chargeEfficiency: 0.95,
    dischargeEfficiency: 0.98,
    selfDischargePerMonthFraction: 0.02,
  },
  inputLimitW: 1500,
};

const WEST: TinyUnit = {
  capacityWh: 3000,
  inverter: { idleW: 30, standbyW: 2, lossPerW: 0.03, lossPerW2: 6e-6, continuousW: 3000, surgeW: 6000 },
  battery: {
    modules: 1,
    healthFraction: 0.8,
    cutOffFraction: 0.1,
    restartFraction: 0.3,
    startFraction: 0.7,
    place: 'garage',
    coldCapacity: CURVE,
    minChargeC: 0,
  },
  module: {
    maxChargeW: 1000,
    maxDischargeW: 500,
    chargeEfficiency: 0.97,
    dischargeEfficiency: 0.96,
    selfDischargePerMonthFraction: 0.05,
  },
  inputLimitW: 800,
};

function pooled(...units: readonly [TinyUnit, TinyUnit]) {
  const spec = tinySpec({ units, circuits: { fridge: { watts: 60 }, talk: { watts: 25, leg: 'L2' } } });
  const household = pooledHousehold(panelOf(scenarioOf(spec).alternatives[0]!.household));
  expect(household.units).toHaveLength(1);
  return household.units[0]!;
}

describe.each([
  ['as written', EAST, WEST],
  ['the other way round', WEST, EAST],
])('two unlike units as one, %s', (_, first, second) => {
  const { inverter, battery, solar, leg } = pooled(first, second);

  it('add up their capacities, charge limits and inputs', () => {
    // 2 · 1000 · 0.9 + 1 · 3000 · 0.8; 2 · 400 + 1 · 1000; 1500 + 800
    expect(battery.modules * battery.module.capacityWh * battery.healthFraction).toBeCloseTo(4200, 9);
    expect(battery.modules * battery.module.maxChargeW).toBe(1800);
    expect(solar!.inputLimitW).toBe(2300);
    expect(solar!.arrays).toHaveLength(2);
    expect(leg).toBe('both');
  });

  it('have of everything else the better figure, and half of what a square of watts loses', () => {
    expect(inverter).toMatchObject({ idleW: 12, standbyW: 2, lossPerW: 0.03, lossPerW2: 3e-6 });
    expect(battery.module).toMatchObject({
      chargeEfficiency: 0.97,
      dischargeEfficiency: 0.98,
      selfDischargePerMonthFraction: 0.02,
    });
    expect(battery).toMatchObject({ cutOffFraction: 0.1, restartFraction: 0.25, startFraction: 0.7 });
  });

  it('are never tripped', () => {
    for (const limitW of [inverter.continuousW, inverter.surgeW, battery.module.maxDischargeW])
      expect(limitW).toBeGreaterThanOrEqual(1_000_000);
  });

  it('bear the cold as each of them does', () => {
    expect(battery).toMatchObject({ place: 'garage', coldCapacity: CURVE, minChargeC: 0 });
  });
});

describe('two banks that differ in the cold, as one', () => {
  const changes: readonly (readonly [string, Partial<NonNullable<TinyUnit['battery']>>])[] = [
    ['in their place', { place: 'outdoors' }],
    ['in what the cold holds back', { coldCapacity: [[-20, 0.5], CURVE[1]!] }],
    ['in what they charge in', { minChargeC: -10 }],
  ];

  it.each(changes)('%s: lose nothing to it and charge in any', (_, battery) => {
    const unlike = { ...WEST, battery: { ...WEST.battery, ...battery } } as TinyUnit;
    for (const units of [
      [EAST, unlike],
      [unlike, EAST],
    ] as const) {
      const { coldCapacity, minChargeC } = pooled(...units).battery;
      for (const placeC of [-60, -20, 0, 25, 60]) expect(drawableFraction(coldCapacity, placeC)).toBe(1);
      expect(minChargeC).toBeLessThan(-60);
    }
  });
});

describe('a bank that says nothing of its start', () => {
  it('counts as full', () => {
    const cycling = { ...WEST, battery: { ...WEST.battery, startFraction: undefined, reserveFraction: 0.3 } };
    expect(pooled(EAST, cycling).battery.startFraction).toBe(1);
  });
});
