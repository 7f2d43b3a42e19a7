/** Generators, hours of grid and a vehicle in a whole house, worked out on paper. */
import { describe, expect, it } from 'vitest';
import { rechargeHours } from '../../../packages/sim/src/power/recharge-time.ts';
import { live, minutesWhere, sumOf, type TinyHouse } from './tiny-house.ts';

const NO_SCATTER = { onScatterFraction: 0, offScatterFraction: 0 };
const CHARGER = { maxW: 3000, efficiency: 1 };

/** A unit of 6 kWh that carries 1,000 W. */
const kilowatt = (changes: Partial<TinyHouse>): TinyHouse => ({
  units: [{ charger: CHARGER }],
  circuits: { heater: { watts: 1000 } },
  ...changes,
});

const AUTOMATIC = {
  ratedW: 4000,
  volts: 120 as const,
  tankL: 100,
  fuelUse: { halfLoadLPerHour: 1, fullLoadLPerHour: 1.5 },
  starts: 'automatic' as const,
};
const BY_CHARGE = { by: 'charge' as const, startBelowFraction: 0.5, stopAboveFraction: 0.9 };

const eventsOf = ({ trace }: ReturnType<typeof live>) =>
  trace.events.filter(({ kind }) => kind === 'source').map(({ minute, text }) => `${minute} ${text}`);

describe('hours of grid', () => {
  const sources = { grid: { onHours: 2, offHours: 4, ...NO_SCATTER } };

  it('carry the circuits and fill the bank', () => {
    const lived = live(kilowatt({ sources, hours: 24 }));
    expect(lived.row['censored']).toBe(1);
    // 4 kWh out in four hours, back in 80 of the 120 minutes
    expect(lived.row['gridMinutes']).toBe(4 * 120);
    expect(lived.row['sourceInWh']).toBeCloseTo(4 * (2000 + 4000), 6);
    const { storedWh } = lived.trace.units[0]!;
    expect(storedWh[239]).toBeCloseTo(2000, 6);
    expect(storedWh[240 + 79]).toBeCloseTo(6000, 6);
    expect(eventsOf(lived).slice(0, 2)).toEqual(['240 the grid is back', '360 the grid goes again']);
  });

  it('only put off the end where no unit has a charger', () => {
    const { row } = live(kilowatt({ units: [{}], sources, hours: 24 }));
    expect(row['runtimeMinutes']).toBeCloseTo(480, 6);
  });

  it('power an empty unit again at once, and break off its wait', () => {
    const small = { units: [{ capacityWh: 2000 }], sources, hours: 24 };
    const { row, trace } = live(
      kilowatt({ ...small, circuits: { heater: { watts: 1000, graceMinutes: 150 } } }),
    );
    // empty at 120; back at 240; gone again at 360 with nothing in the bank; 150 minutes of grace
    expect(row['runtimeMinutes']).toBeCloseTo(510, 6);
    expect(minutesWhere(trace.circuits[0]!.servedW, (w) => w > 0)).toContain(240);
    expect(trace.units[0]!.mode[239]).toBe('empty');
    expect(trace.units[0]!.mode[240]).toBe('on');
  });

  it('serve what the strategy holds off', () => {
    const { trace } = live(
      kilowatt({
        circuits: { talk: { watts: 10 }, comfort: { watts: 100, tier: 5 } },
        rules: [{ by: 'outage', circuits: { tiers: [5] } }],
        sources,
        hours: 7,
      }),
    );
    const served = minutesWhere(trace.circuits[1]!.servedW, (w) => w > 0);
    expect([served[0], served.at(-1), served.length]).toEqual([240, 359, 120]);
  });

  it('fill a bank in the time that the closed formula says', () => {
    const unit = {
      capacityWh: 4800,
      battery: { startFraction: 0.1, cutOffFraction: 0.1, restartFraction: 0.2 },
      module: { maxChargeW: 2400, chargeEfficiency: 0.97 },
      charger: { maxW: 1500, efficiency: 0.93 },
    };
    const { trace } = live({
      units: [unit],
      circuits: { lamp: { watts: 0 } },
      sources: { grid: { onHours: 48, offHours: 1, firstOffHours: 1, ...NO_SCATTER } },
      hours: 12,
    });
    const hours = rechargeHours({
      capacityWh: 4800,
      storedWh: 480,
      chargerW: 1500,
      chargerEfficiency: 0.93,
      maxChargeW: 2400,
      chargeEfficiency: 0.97,
    });
    const full = minutesWhere(trace.units[0]!.storedWh, (wh) => wh === 4800)[0]!;
    expect(full).toBe(60 + Math.ceil(hours * 60) - 1);
  });
});

describe('a generator that starts by itself', () => {
  it('charges with what the circuits leave, between its two levels', () => {
    const lived = live(kilowatt({ sources: { generator: AUTOMATIC }, generator: BY_CHARGE, hours: 8 }));
    const { storedWh } = lived.trace.units[0]!;
    // below 3,000 Wh for the first time after 181 minutes; then 3 kW until 5,400 Wh are there: 49 minutes
    expect(eventsOf(lived).slice(0, 2)).toEqual(['181 the generator starts', '230 the generator stops']);
    expect(storedWh[180]).toBeCloseTo(6000 - (181 / 60) * 1000, 6);
    expect(storedWh[229]).toBeCloseTo(6000 - (181 / 60) * 1000 + (49 / 60) * 3000, 6);
    expect(lived.row['runtimeMinutes']).toBe(480);
  });

  it('burns its line: litres for hours, litres for kilowatt-hours', () => {
    const { row } = live(kilowatt({ sources: { generator: AUTOMATIC }, generator: BY_CHARGE, hours: 8 }));
    const hours = row['generatorMinutes']! / 60;
    expect(row['fuelUsedL']).toBeCloseTo(0.5 * hours + 0.25 * (row['sourceInWh']! / 1000), 9);
    expect(row['generatorStarts']).toBe(2);
  });

  it('loses in the charger what its efficiency says', () => {
    const { row } = live(
      kilowatt({
        units: [{ charger: { maxW: 3000, efficiency: 0.8 } }],
        sources: { generator: AUTOMATIC },
        generator: BY_CHARGE,
        hours: 8,
      }),
    );
    const load = (row['generatorMinutes']! / 60) * 1000;
    expect(row['chargerLossWh']).toBeCloseTo((row['sourceInWh']! - load) * 0.2, 6);
  });

  it('that cannot carry what the unit cannot either leaves it as overloaded as it was', () => {
    const charger = { maxW: 300, efficiency: 1 };
    const inverter = { continuousW: 1000, surgeW: 9000, overloadMinutes: 3 };
    const lived = (generator?: object) =>
      live({
        units: [{ capacityWh: 20_000, inverter, charger }],
        circuits: { heater: { watts: 1500 } },
        hours: 5,
        person: { tripReactionMinutes: 2, afterTripShedTiers: 0 },
        ...(generator === undefined
          ? {}
          : { sources: { generator: { ...AUTOMATIC, ratedW: 300, ...generator } } }),
      });
    const without = lived();
    expect(without.row['trips']).toBe(60);
    expect(without.row['runtimeMinutes']).toBe(3);
    const beside = lived({ run: { by: 'hours', hoursPerDay: 24 } });
    expect(beside.row['generatorTrips']).toBeGreaterThan(10);
    expect([beside.row['trips'], beside.row['runtimeMinutes']]).toEqual([60, 3]);
  });

  it('stops when its tank is empty; the rest is the bank’s', () => {
    const tank = { ...AUTOMATIC, tankL: 1 };
    const lived = live(kilowatt({ sources: { generator: tank }, generator: BY_CHARGE, hours: 24 }));
    // 1.5 L/h at full load: the last 0.025 L stay, 39 minutes
    expect(eventsOf(lived)).toEqual(['181 the generator starts', '220 the generator stops: no fuel left']);
    expect(lived.row['fuelGoneMinute']).toBe(220);
    const atStop = 6000 - (181 / 60) * 1000 + (39 / 60) * 3000;
    expect(lived.row['runtimeMinutes']).toBeCloseTo(220 + (atStop / 1000) * 60, 6);
  });

  it('is left off by a strategy that says never', () => {
    const { row } = live(
      kilowatt({ sources: { generator: AUTOMATIC }, generator: { by: 'never' }, hours: 24 }),
    );
    expect([row['runtimeMinutes'], row['generatorStarts'], row['fuelUsedL']]).toEqual([360, 0, 0]);
  });

  it('gives less in thin air', () => {
    const high = (elevationM: number) =>
      live(kilowatt({ sources: { generator: AUTOMATIC }, generator: BY_CHARGE, hours: 8, elevationM })).row;
    // 3 % for each 1,000 ft above 500 ft: at 5,500 ft 15 % of 4,000 W, so 2,400 W charge instead of 3,000
    expect(high(5500 * 0.3048)['generatorMinutes']! / high(0)['generatorMinutes']!).toBeGreaterThan(1.15);
  });

  it('starts less in thin air', () => {
    const tripsAt = (elevationM: number, startingW: number) => {
      const motor = { kind: 'scheduled' as const, runningW: 500, startingW, windows: ['04:00-04:10'] };
      const circuits = { heater: { watts: 1000 }, pump: { appliances: [motor] } };
      const generator = { ...AUTOMATIC, surgeW: 6000 };
      return live(kilowatt({ circuits, sources: { generator }, generator: BY_CHARGE, hours: 5, elevationM }))
        .row['generatorTrips'];
    };
    // 85 % of 6,000 W at 5,500 ft are 5,100 W: 1,000 W and a start at 4,100 W, but not at 4,200
    expect(tripsAt(0, 4200)).toBe(0);
    expect(tripsAt(5500 * 0.3048, 4090)).toBe(0);
    expect(tripsAt(5500 * 0.3048, 4200)).toBe(1);
  });

  it('opens its breaker when circuits alone are too much; the unit carries on until it is reset', () => {
    const lived = live({
      units: [{ charger: CHARGER }],
      circuits: { heater: { watts: (m) => (m >= 200 && m < 205 ? 4500 : 1000) } },
      sources: { generator: AUTOMATIC },
      generator: BY_CHARGE,
      person: { tripReactionMinutes: 10 },
      hours: 6,
    });
    expect(eventsOf(lived).slice(0, 3)).toEqual([
      '181 the generator starts',
      '200 the generator’s breaker opens',
      '210 the generator starts',
    ]);
    expect(lived.row['generatorTrips']).toBe(1);
    expect(lived.row['runtimeMinutes']).toBe(360);
  });

  it.each([
    [3001, 0],
    [2999, 1],
  ])(
    'starts what its surge rating of %d W lets it, the idling inverter included: %d trips',
    (surgeW, trips) => {
      const { row } = live({
        units: [{ inverter: { idleW: 50 }, charger: CHARGER }],
        circuits: {
          base: { watts: 50 },
          pump: {
            appliances: [{ kind: 'scheduled', runningW: 400, startingW: 2900, windows: ['00:30-00:40'] }],
          },
        },
        sources: { generator: { ...AUTOMATIC, ratedW: 2000, surgeW } },
        generator: { by: 'hours', hoursPerDay: 1 },
        hours: 2,
      });
      expect(row['generatorTrips']).toBe(trips);
    },
  );

  it('passes an empty unit’s circuits on at once', () => {
    const lived = live(
      kilowatt({
        units: [{ capacityWh: 1000, charger: CHARGER }],
        sources: { generator: { ...AUTOMATIC, quietHours: ['00:00-03:00'] } },
        generator: BY_CHARGE,
        circuits: { heater: { watts: 1000, graceMinutes: 150 } },
        hours: 5,
      }),
    );
    // empty at 60, allowed at 180
    expect(lived.row['censored']).toBe(1);
    expect(minutesWhere(lived.trace.circuits[0]!.servedW, (w) => w === 0).length).toBe(120);
  });
});

describe('one generator for two units', () => {
  const pair = (volts: 120 | 240, changes: object = {}): TinyHouse => ({
    units: [
      { capacityWh: 2000, charger: CHARGER },
      { capacityWh: 2000, charger: CHARGER },
    ],
    circuits: {
      left: { watts: 500, leg: 'L1' },
      right: { watts: 1500, leg: 'L2', graceMinutes: 600 },
      pump: { watts: 100, leg: 'both', tier: 2 },
    },
    sources: { generator: { ...AUTOMATIC, volts, ...changes } },
    generator: { by: 'hours', hoursPerDay: 1 },
    hours: 2,
  });

  it('of 240 V gives half to each leg and keeps 240 V going', () => {
    const { trace } = live(pair(240));
    expect(trace.circuits[2]!.servedW[30]).toBeCloseTo(100, 9);
    expect(trace.units[0]!.sourceInW![0]).toBeCloseTo(550, 9);
    const drained = live({
      ...pair(240),
      units: pair(240).units!.map((u) => ({ ...u, battery: { startFraction: 0.2 } })),
    });
    // 2,000 W a leg: 1,450 and 450 W are left for the chargers
    expect(drained.trace.units[0]!.batteryW[10]).toBeCloseTo(1450, 6);
    expect(drained.trace.units[1]!.batteryW[10]).toBeCloseTo(450, 6);
  });

  it('of 120 V shares what is left, and there is no 240 V while it runs', () => {
    const house = pair(120);
    const { trace, row } = live({
      ...house,
      units: house.units!.map((u) => ({ ...u, battery: { startFraction: 0.2 } })),
    });
    // 4,000 W less 2,000 W of circuits, a thousand to each charger
    expect(trace.units[0]!.batteryW[10]).toBeCloseTo(1000, 6);
    expect(trace.units[1]!.batteryW[10]).toBeCloseTo(1000, 6);
    expect(sumOf(trace.circuits[2]!.servedW.slice(0, 60))).toBe(0);
    expect(trace.circuits[2]!.servedW[60]).toBeCloseTo(100, 9);
    expect(row['first240LossMinute']).toBe(0);
  });

  it.each([
    [4501, 0],
    [4499, 1],
  ])('of 120 V that can start %d W has for one unit what the other leaves: %d trips', (surgeW, trips) => {
    const pump = { kind: 'scheduled' as const, runningW: 500, startingW: 3000, windows: ['00:30-00:40'] };
    for (const leg of ['L1', 'L2'] as const) {
      const { row } = live({
        ...pair(120, { surgeW }),
        circuits: {
          other: { watts: 1500, leg: leg === 'L1' ? 'L2' : 'L1', graceMinutes: 600 },
          pump: { leg, tier: 2, appliances: [pump] },
        },
      });
      expect(row['generatorTrips']).toBe(trips);
    }
  });

  it('that feeds one of them leaves the other to its bank', () => {
    const { trace } = live(pair(120, { feeds: ['west'] }));
    expect(trace.units[0]!.sourceInW![10]).toBe(0);
    expect(trace.units[0]!.batteryW[10]).toBeCloseTo(-500, 6);
    expect(trace.units[1]!.sourceInW![10]).toBeCloseTo(1500, 6);
  });

  it('of 240 V that feeds one of them makes no 240 V with the other’s inverter', () => {
    const { trace } = live(pair(240, { feeds: ['west'] }));
    expect(sumOf(trace.circuits[2]!.servedW.slice(0, 60))).toBe(0);
    expect(trace.circuits[2]!.servedW[60]).toBeCloseTo(100, 9);
  });

  it('that only charges leaves 240 V to the inverters', () => {
    const { trace } = live(pair(120, { passesThrough: false }));
    expect(trace.circuits[2]!.servedW[30]).toBeCloseTo(100, 9);
    // full banks: the source carries the circuits through the charger, 550 and 1,550 W
    expect(trace.units[1]!.sourceInW![30]).toBeCloseTo(1550, 6);
  });
});

describe('a vehicle', () => {
  it('adds its watts, less what its efficiency takes', () => {
    const { row } = live(
      kilowatt({
        units: [{}],
        sources: { vehicle: { unit: 'east', outletW: 300, efficiency: 0.8 } },
        hours: 24,
      }),
    );
    // 1,000 − 240 W out of 6,000 Wh
    expect(row['runtimeMinutes']).toBeCloseTo((6000 / 760) * 60, 6);
    expect(row['chargerLossWh']! / row['sourceInWh']!).toBeCloseTo(0.2, 9);
  });

  it('brings back a unit that has stopped, at its restart level', () => {
    const { trace } = live({
      units: [{ capacityWh: 1000, battery: { startFraction: 0, restartFraction: 0.3 } }],
      circuits: { heater: { watts: 1000 } },
      sources: { vehicle: { unit: 'east', outletW: 300, efficiency: 1, during: ['00:00-03:00'] } },
      hours: 4,
    });
    // 300 Wh after an hour; 700 W a minute net: back for 25.7 minutes
    const served = minutesWhere(trace.circuits[0]!.servedW, (w) => w > 0);
    expect(served[0]).toBe(60);
    expect(served[25]).toBe(85);
    expect(served[26]).not.toBe(86);
  });
});

describe('without a source', () => {
  it('the columns say so', () => {
    const { row, trace } = live(kilowatt({ hours: 2 }));
    expect([row['sourceInWh'], row['gridMinutes'], row['generatorMinutes'], row['fuelUsedL']]).toEqual([
      0, 0, 0, 0,
    ]);
    expect(row['fuelGoneMinute']).toBeNaN();
    expect(trace.units[0]!.sourceInW).toBeUndefined();
  });
});
