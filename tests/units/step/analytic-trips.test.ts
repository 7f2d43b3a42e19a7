/** What trips a unit, when, and how it comes back. Minutes count from the outage's start, at midnight. */
import { describe, expect, it } from 'vitest';
import { END_CAUSES } from '../../../packages/sim/src/index.ts';
import type { Trace } from '../../../packages/sim/src/step/trace.ts';
import { liveToEnd } from '../../../packages/sim/src/step/live-to-end.ts';
import {
  live,
  minutesWhere,
  startTinyRun,
  tinyDraw,
  type ApplianceInput,
  type TinyCircuit,
  type TinyHouse,
} from './tiny-house.ts';

const causeOf = (row: Readonly<Record<string, number>>) => END_CAUSES[row['endCause']!];

/** Minutes in which the unit delivers nothing. */
const darkMinutes = (trace: Trace, unit = 0) => minutesWhere(trace.units[unit]!.loadW, (w) => w === 0);
const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);

describe('an overload', () => {
  const overloaded = (overloadMinutes: number, watts: (m: number) => number): TinyHouse => ({
    units: [{ inverter: { continuousW: 1000, surgeW: 5000, overloadMinutes } }],
    circuits: { load: { watts } },
    hours: 3,
  });

  it('trips at once where the unit bears none', () => {
    const { row } = live(overloaded(0, (m) => (m < 20 ? 900 : 1001)));
    expect(row['runtimeMinutes']).toBe(20);
    expect(causeOf(row)).toBe('overload trip');
    expect(row['endUnit']).toBe(0);
  });

  it('is borne for the allowed minutes and trips with the next one', () => {
    expect(live(overloaded(3, (m) => (m < 20 ? 900 : 1001))).row['runtimeMinutes']).toBe(23);
  });

  it('counts minutes in a row: one minute at the rating starts the count anew', () => {
    const { row } = live(overloaded(3, (m) => (m % 4 === 3 ? 1000 : 1500)));
    expect(row['trips']).toBe(0);
    expect(row['censored']).toBe(1);
  });

  it('starts the count anew after a quiet hour, though nobody looks into it', () => {
    // two minutes above the rating, an hour below it, two above
    const { row } = live(overloaded(3, (m) => ([58, 59, 120, 121].includes(m) ? 1500 : 400)));
    expect(row['trips']).toBe(0);
  });

  it('is found the same while a source charges the bank: borne for the allowed minutes, not one more', () => {
    for (const bears of [0, 3]) {
      const { row } = live({
        ...overloaded(bears, (m) => (m < 20 ? 900 : 1001)),
        sources: { vehicle: { unit: 'east', outletW: 300, efficiency: 1 } },
      });
      expect(row['runtimeMinutes']).toBe(20 + bears);
      expect(causeOf(row)).toBe('overload trip');
    }
  });

  it('is forgotten once the circuits have run off the grid', () => {
    const { row } = live({
      ...overloaded(3, (m) => (m >= 58 && m < 122 ? 1500 : 400)),
      sources: {
        grid: { onHours: 1, offHours: 4, firstOffHours: 1, onScatterFraction: 0, offScatterFraction: 0 },
      },
    });
    expect(row['gridMinutes']).toBe(60);
    expect(row['trips']).toBe(0);
  });

  it('that empties the bank before the allowed minutes are over is paid for by the bank to the last watt-hour', () => {
    const { row } = live({
      units: [{ capacityWh: 11, inverter: { continuousW: 1000, surgeW: 5000, overloadMinutes: 1 } }],
      circuits: { load: { watts: 1100 } },
      hours: 1,
    });
    expect(row['runtimeMinutes']).toBeCloseTo(0.6, 9);
    expect(causeOf(row)).toBe('battery empty');
    expect(row['servedTier1Wh']).toBeCloseTo(11, 7);
    expect(row['storedEndWh']).toBeCloseTo(0, 7);
  });

  it('is no overload at exactly the continuous rating', () => {
    expect(live(overloaded(0, () => 1000)).row['trips']).toBe(0);
  });
});

describe('a start', () => {
  const starting = (surgeW: number): TinyHouse => ({
    units: [{ inverter: { continuousW: 2000, surgeW } }],
    circuits: {
      base: { watts: 100 },
      pump: {
        tier: 2,
        appliances: [{ kind: 'scheduled', runningW: 500, startingW: 3000, windows: ['00:30-00:40'] }],
      },
    },
    hours: 1,
  });

  it('trips where running plus starting watts exceed the surge rating: 100 + 3000 > 3099', () => {
    const { row } = live(starting(3099));
    expect(row['runtimeMinutes']).toBe(30);
    expect(causeOf(row)).toBe('starting surge trip');
  });

  it('is borne at exactly the surge rating', () => {
    expect(live(starting(3100)).row['trips']).toBe(0);
  });

  it('is borne at exactly the surge rating by a unit that bears an overload of so many watts as well', () => {
    const { circuits } = starting(3100);
    const trips = (surgeW: number) =>
      live({
        units: [{ inverter: { continuousW: 1000, surgeW, overloadMinutes: 5 } }],
        // with the base 3,100 W in minutes 5 and 6; the start asks for as many in minute 30
        circuits: { ...circuits, kettle: { watts: (m) => (m === 5 || m === 6 ? 3000 : 0), tier: 2 } },
        hours: 1,
      }).row['trips'];
    expect(trips(3100)).toBe(0);
    expect(trips(3099)).toBeGreaterThan(0);
  });

  it('of a thermostat trips the unit in the minute in which it begins to run', () => {
    const cold = (surgeW: number) =>
      live({
        units: [{ inverter: { continuousW: 300, surgeW } }],
        circuits: {
          cold: {
            appliances: [
              {
                kind: 'thermostat',
                does: 'cools',
                runningW: 150,
                startingW: 900,
                setC: 4,
                bandC: 1,
                timeConstantHours: 20,
                dutyFraction: 0.4,
                dutySurroundingsC: 21,
              },
            ],
          },
        },
        hours: 6,
      });
    const { row, trace } = cold(899);
    expect(causeOf(row)).toBe('starting surge trip');
    // borne, it runs from that very minute on
    const { servedW } = cold(900).trace.circuits[0]!;
    const begins = servedW.findIndex((w, m) => m > 0 && w > 0 && servedW[m - 1] === 0);
    expect(trace.events.find(({ kind }) => kind === 'unit')?.minute).toBe(begins);
    expect(cold(900).row['trips']).toBe(0);
  });

  it('of a 240 V motor asks half of each unit', () => {
    const pump: TinyCircuit = {
      leg: 'both',
      tier: 2,
      appliances: [{ kind: 'scheduled', runningW: 1000, startingW: 6000, windows: ['00:30-00:40'] }],
    };
    const trips = (surgeW: number) =>
      live({
        units: [
          { inverter: { continuousW: 2000, surgeW } },
          { inverter: { continuousW: 2000, surgeW: 9000 } },
        ],
        circuits: { base: { watts: 100 }, pump },
        hours: 1,
      }).row['trips'];
    expect(trips(3100)).toBe(0);
    expect(trips(3099)).toBe(1);
  });

  it('takes the largest of those in one minute, not their sum', () => {
    const motor: ApplianceInput = {
      kind: 'scheduled',
      runningW: 500,
      startingW: 3000,
      windows: ['00:30-00:40'],
    };
    const { row } = live({
      units: [{ inverter: { continuousW: 2000, surgeW: 3500 } }],
      circuits: { a: { appliances: [motor] }, b: { appliances: [motor] } },
      hours: 1,
    });
    expect(row['trips']).toBe(0); // 500 + 3000 = 3500
  });
});

describe('the modules’ discharge limit', () => {
  const limited = (watts: number, solarW: number): TinyHouse => ({
    units: [{ inverter: { idleW: 30 }, battery: { modules: 2 }, module: { maxDischargeW: 500 } }],
    circuits: { load: { watts } },
    solarW: () => solarW,
    hours: 1,
  });

  it('trips the unit when load and loss ask for more than n · limit', () => {
    const { row } = live(limited(971, 0));
    expect(row['runtimeMinutes']).toBe(0);
    expect(causeOf(row)).toBe('battery limit trip');
  });

  it('is not reached at exactly the limit, nor with sun to help', () => {
    expect(live(limited(970, 0)).row['trips']).toBe(0);
    expect(live(limited(1170, 200)).row['trips']).toBe(0);
  });
});

/** An essential 500 W and 600 W that nobody needs, from minute 20 on, on a unit for 1,000 W. */
const tooMuch: TinyHouse = {
  units: [{ inverter: { continuousW: 1000, surgeW: 5000 } }],
  circuits: {
    essential: { watts: 500, tier: 1, graceMinutes: 600 },
    extra: { watts: (m) => (m < 20 ? 0 : 600), tier: 5 },
  },
  hours: 3,
};

describe('a person after a trip', () => {
  it('resets the unit after the reaction time, with the least essential tier left off for the hold', () => {
    const { trace, row } = live({
      ...tooMuch,
      person: { tripReactionMinutes: 10, afterTripHoldMinutes: 60 },
    });
    // off 20…29, held back 30…89, then the same again
    expect(darkMinutes(trace)).toEqual([...range(20, 30), ...range(90, 100), ...range(160, 170)]);
    expect(minutesWhere(trace.circuits[1]!.servedW, (w) => w > 0)).toEqual([]);
    expect(minutesWhere(trace.circuits[1]!.allowed, (a) => a === 0)).toEqual([
      ...range(30, 90),
      ...range(100, 160),
      ...range(170, 180),
    ]);
    expect(row['trips']).toBe(3);
    expect(row['minutesUnit0Down']).toBe(30);
  });

  it('notices it only on waking', () => {
    const { trace } = live({ ...tooMuch, person: { awake: '02:00-23:00', tripReactionMinutes: 5 } });
    expect(darkMinutes(trace)).toEqual(range(20, 125));
  });

  it('resets it a minute later at the earliest', () => {
    const { trace } = live({ ...tooMuch, person: { tripReactionMinutes: 0, afterTripHoldMinutes: 30 } });
    expect(darkMinutes(trace)).toEqual([20, 51, 82, 113, 144, 175]);
  });

  it('sheds once what one event calls for, though it tripped both units', () => {
    const { trace } = live({
      units: [
        { inverter: { continuousW: 1000, surgeW: 5000 } },
        { inverter: { continuousW: 1000, surgeW: 5000 } },
      ],
      circuits: {
        a: { watts: 400, leg: 'L1' },
        b: { watts: 400, leg: 'L2' },
        c: { watts: 50, leg: 'L1', tier: 4 },
        pump: { watts: (m) => (m === 30 ? 1800 : 0), leg: 'both', tier: 5 },
      },
      person: { tripReactionMinutes: 10, afterTripHoldMinutes: 60 },
      hours: 2,
    });
    expect(trace.units.map((u) => u.mode[30])).toEqual(['tripped', 'tripped']);
    expect(minutesWhere(trace.circuits[3]!.allowed, (a) => a === 0)).toEqual(range(40, 100));
    expect(minutesWhere(trace.circuits[2]!.allowed, (a) => a === 0)).toEqual([]);
  });

  it('sheds more tiers each time it trips again within the hold', () => {
    const { trace } = live({
      ...tooMuch,
      circuits: {
        a: { watts: 900, tier: 1, graceMinutes: 600 },
        b: { watts: 50, tier: 3 },
        c: { watts: (m) => (m < 20 ? 0 : 600), tier: 3 },
        d: { watts: 100, tier: 4 },
      },
      person: { tripReactionMinutes: 10, afterTripHoldMinutes: 100 },
    });
    // at minute 0 the sum is 1,050 W; tier 4 off from 10; at 20 tier 3 takes it above again; tiers 3 and 4 off from 30
    expect(minutesWhere(trace.circuits[3]!.allowed, (a) => a === 0)[0]).toBe(10);
    expect(minutesWhere(trace.circuits[1]!.allowed, (a) => a === 0).filter((m) => m < 150)).toEqual(
      range(30, 130),
    );
    expect(darkMinutes(trace).filter((m) => m < 130)).toEqual([...range(0, 10), ...range(20, 30)]);
  });
});

describe('a unit that is reset and trips again in the same instant', () => {
  /** 1,200 W on a unit for 1,000 W; reset every ten minutes, which carries nothing; the bank would hold for days. */
  const neverCarried: TinyHouse = {
    units: [{ capacityWh: 60_000, inverter: { continuousW: 1000, surgeW: 5000 } }],
    circuits: { essential: { watts: 1200, graceMinutes: 60, need: 'medical' } },
    person: { tripReactionMinutes: 10 },
    hours: 24,
  };

  it('goes without all along: the grace is not counted anew', () => {
    const { row } = live(neverCarried);
    expect(row['trips']).toBe(144);
    expect(row['servedTier1Wh']).toBe(0);
    expect(row['runtimeMinutes']).toBe(60);
    expect(causeOf(row)).toBe('overload trip');
    expect(row['need:medical:firstMinute']).toBe(60);
    expect(row['need:medical:minutes']).toBe(24 * 60 - 60);
  });

  it('is known to have ended as soon as its grace is over, however often it is reset', () => {
    const tiny = tinyDraw(neverCarried);
    const run = startTinyRun(tiny);
    liveToEnd(run);
    expect(run.end.minute).toBe(60);
    expect(run.minute).toBe(720);
  });

  it('is told by the cause in whose time the grace ran out', () => {
    // empty at 30, brought back by sun at 180 into an overload that nobody could carry
    const { row } = live({
      units: [{ capacityWh: 250, inverter: { continuousW: 1000, surgeW: 5000 } }],
      circuits: { essential: { watts: (m) => (m < 100 ? 500 : 1200), graceMinutes: 60 } },
      solarW: (_, m) => (m < 170 ? 0 : 6000),
      hours: 12,
    });
    expect(row['trips']).toBeGreaterThan(1);
    expect(row['runtimeMinutes']).toBe(90);
    expect(causeOf(row)).toBe('battery empty');
  });

  it('starts the grace anew where a single minute was carried', () => {
    const { row } = live({
      ...neverCarried,
      units: [{ capacityWh: 60_000, inverter: { continuousW: 1000, surgeW: 5000, overloadMinutes: 1 } }],
    });
    expect(row['censored']).toBe(1);
    expect(row['servedTier1Wh']).toBeCloseTo(20 * row['trips']!, 6);
  });
});

describe('a unit that resets itself', () => {
  it('tries so many times in a row, then waits for a person', () => {
    const { trace, row } = live({
      ...tooMuch,
      units: [{ inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 5, resetTries: 3 } }],
      person: { tripReactionMinutes: 12, afterTripHoldMinutes: 1440 },
    });
    // trips at 20, 25, 30 and 35; the fourth is left to the person, who comes at 47
    expect(row['trips']).toBe(4);
    expect(darkMinutes(trace)).toEqual(range(20, 47));
  });

  it('counts its tries anew after a steady hour', () => {
    const { row, trace } = live({
      units: [{ inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 5, resetTries: 1 } }],
      // one minute too much every 70 minutes
      circuits: { load: { watts: (m) => (m % 70 === 69 ? 1100 : 500), graceMinutes: 600 } },
      person: { awake: '12:00-13:00' },
      hours: 8,
    });
    expect(row['trips']).toBe(6);
    expect(darkMinutes(trace)).toEqual([69, 139, 209, 279, 349, 419].flatMap((m) => range(m, m + 5)));
  });
});

describe('tries of its own', () => {
  const trying = (tooMuch: (m: number) => boolean): TinyHouse => ({
    units: [{ inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 5, resetTries: 1 } }],
    circuits: { load: { watts: (m) => (tooMuch(m) ? 1100 : 500), graceMinutes: 600 } },
    person: { awake: '12:00-13:00' },
    hours: 4,
  });

  it.each([
    ['are spent 59 minutes after it came back', 108, range(108, 240)],
    ['count anew 60 minutes after it came back', 109, range(109, 114)],
  ])('%s', (_, again, dark) => {
    // trips at 44 and comes back at 49
    const { trace } = live(trying((m) => m === 44 || m === again));
    expect(darkMinutes(trace)).toEqual([...range(44, 49), ...dark]);
  });

  it('count anew after a person has reset it', () => {
    const { trace } = live({
      ...tooMuch,
      units: [{ inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 5, resetTries: 1 } }],
      person: { tripReactionMinutes: 12, afterTripHoldMinutes: 30 },
      hours: 1.5,
    });
    // at 20, in vain at 25, reset by hand at 37; at 67 the extra is back: in vain at 72, by hand at 84
    expect(darkMinutes(trace)).toEqual([...range(20, 37), ...range(67, 84)]);
  });
});

describe('an empty bank in the cold', () => {
  it.each([
    [0.84, 'battery empty'],
    [0.83, 'battery too cold'],
  ])('that leaves %d to be drawn is told as %s: the line is 0.15 above the cut-off', (drawable, cause) => {
    const { row } = live({
      units: [
        {
          battery: {
            cutOffFraction: 0.1,
            restartFraction: 0.2,
            coldCapacity: [
              [-20, drawable],
              [25, drawable],
            ],
          },
        },
      ],
      circuits: { load: { watts: 1000 } },
      hours: 12,
    });
    expect(causeOf(row)).toBe(cause);
  });
});

describe('a pair that stops together', () => {
  it('goes down and comes back together', () => {
    const { trace } = live({
      units: [{ inverter: { continuousW: 1000, surgeW: 5000 } }, {}],
      pair: { stopsTogether: true },
      circuits: {
        a: { watts: (m) => (m === 30 ? 1200 : 400), leg: 'L1' },
        b: { watts: 300, leg: 'L2' },
        pump: { watts: 200, leg: 'both' },
      },
      person: { tripReactionMinutes: 10 },
      hours: 2,
    });
    expect(darkMinutes(trace, 0)).toEqual(range(30, 40));
    expect(darkMinutes(trace, 1)).toEqual(range(30, 40));
    expect(minutesWhere(trace.circuits[2]!.servedW, (w) => w === 0)).toEqual(range(30, 40));
    expect(trace.units.map((u) => u.mode[35])).toEqual(['tripped', 'partner stopped']);
  });

  it('that does not leaves the other leg on, and only 240 V goes', () => {
    const { trace } = live({
      units: [{ inverter: { continuousW: 1000, surgeW: 5000 } }, {}],
      circuits: {
        a: { watts: (m) => (m === 30 ? 1200 : 400), leg: 'L1' },
        b: { watts: 300, leg: 'L2' },
        pump: { watts: 200, leg: 'both' },
      },
      person: { tripReactionMinutes: 10 },
      hours: 2,
    });
    expect(minutesWhere(trace.circuits[1]!.servedW, (w) => w === 0)).toEqual([]);
    expect(minutesWhere(trace.circuits[2]!.servedW, (w) => w === 0)).toEqual(range(30, 40));
  });
});
