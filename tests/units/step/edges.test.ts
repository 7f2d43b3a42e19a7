/** Moments at which two things happen at once, or a level is exactly met. */
import { describe, expect, it } from 'vitest';
import {
  END_CAUSES,
  prepareStudy,
  readScenario,
  resolveScenario,
  runShard,
} from '../../../packages/sim/src/index.ts';
import { live, minutesWhere, tinySpec, type RuleInput, type TinyHouse } from './tiny-house.ts';

const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);
const on = (watts: ArrayLike<unknown>) => minutesWhere(watts, (w) => w > 0);
const extra = { watts: 1, tier: 3 };
const dropExtra = (dropBelowFraction: number, restoreAboveFraction: number): RuleInput => ({
  by: 'charge',
  circuits: { ids: ['extra'] },
  dropBelowFraction,
  restoreAboveFraction,
});

describe('a switch', () => {
  it('sees a level that the hourly self-discharge has carried the bank across', () => {
    const { trace } = live({
      units: [{ battery: { startFraction: 0.7005 }, module: { selfDischargePerMonthFraction: 1 } }],
      circuits: { base: { watts: 1 }, extra },
      rules: [dropExtra(0.7, 0.8)],
      hours: 4,
    });
    expect(trace.units[0]!.chargeFraction[59]).toBeGreaterThan(0.7);
    expect(trace.units[0]!.chargeFraction[60]).toBeLessThan(0.7);
    expect(on(trace.circuits[1]!.servedW)).toEqual(expect.arrayContaining([0, 59]));
    expect(on(trace.circuits[1]!.servedW).filter((m) => m > 61)).toEqual([]);
  });

  it('restores what waits for a full bank once the bank is full', () => {
    const { trace } = live({
      units: [{ capacityWh: 1000 }],
      circuits: { base: { watts: 100 }, extra },
      rules: [dropExtra(0.7, 1)],
      solarW: (_, m) => (m >= 240 ? 1000 : 0),
      hours: 8,
    });
    expect(trace.units[0]!.chargeFraction[300]).toBe(1);
    expect(on(trace.circuits[1]!.servedW)).toContain(400);
  });

  it('does not lose a decision to clocks that jump shortly before the horizon', () => {
    const extraOn = (hours: number) => {
      const { trace } = live({
        timeZone: 'America/New_York',
        startLocal: '2026-03-07T14:30',
        circuits: { base: { watts: 1 }, extra },
        rules: [{ by: 'clock', circuits: { ids: ['extra'] }, onDuring: ['07:00-14:30'] }],
        hours,
      });
      return on(trace.circuits[1]!.servedW);
    };
    // the night is an hour short: 07:00 comes after 930 minutes
    expect(extraOn(24)).toEqual(range(930, 1380));
    expect(extraOn(16)).toEqual(range(930, 960));
  });
});

describe('a unit', () => {
  it('that comes back only when its bank is full comes back when it is', () => {
    const { trace } = live({
      units: [{ capacityWh: 1000, battery: { restartFraction: 1 } }],
      circuits: { load: { watts: 600 } },
      solarW: (_, m) => (m > 200 ? 1000 : 0),
      hours: 8,
    });
    expect(trace.units[0]!.chargeFraction[300]).toBe(1);
    expect(on(trace.units[0]!.loadW)).toContain(300);
  });

  it('comes back at a full bank however cold it is', () => {
    // at 0 °C the floor is 0.15 + 0.1 · 0.85, and as far above it as 0.95 lies above 0.1 would be more than full
    const { trace } = live({
      indoorC: 0,
      units: [
        {
          capacityWh: 1000,
          battery: {
            cutOffFraction: 0.1,
            restartFraction: 0.95,
            coldCapacity: [
              [0, 0.85],
              [25, 1],
            ],
          },
        },
      ],
      circuits: { load: { watts: 600 } },
      solarW: (_, m) => (m > 200 ? 1000 : 0),
      hours: 8,
    });
    expect(trace.units[0]!.chargeFraction[300]).toBe(1);
    expect(on(trace.units[0]!.loadW)).toContain(300);
  });

  it('that is off takes nothing from an empty bank for its standby while its partner runs dry within a minute', () => {
    const { trace } = live({
      units: [
        { capacityWh: 100, inverter: { standbyW: 50 } },
        { capacityWh: 1007, inverter: { standbyW: 50 } },
      ],
      circuits: { a: { watts: 600, leg: 'L1' }, b: { watts: 600, leg: 'L2' } },
      hours: 4,
    });
    expect(Math.min(...trace.units[0]!.storedWh)).toBeGreaterThanOrEqual(-1e-9);
    expect(Math.min(...trace.units[1]!.storedWh)).toBeGreaterThanOrEqual(-1e-9);
  });
});

describe('a unit that should be asleep', () => {
  const sleepsFromOneToFour: RuleInput = {
    by: 'sleep',
    unit: 'west',
    during: ['01:00-04:00'],
    circuits: 'moved',
  };
  const asleep = (house: TinyHouse) =>
    minutesWhere(live(house).trace.units[1]!.mode, (mode) => String(mode) === 'asleep');

  it('goes to sleep when it is brought back from a trip', () => {
    const house: TinyHouse = {
      units: [{}, { inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 60 } }],
      circuits: { a: { watts: 100 }, b: { watts: (m) => (m === 40 ? 1200 : 50), leg: 'L2' } },
      rules: [sleepsFromOneToFour],
      hours: 6,
    };
    const minutes = asleep(house);
    expect(minutes.at(-1)).toBe(239);
    expect(minutes[0]).toBeLessThanOrEqual(101);
  });

  it('goes back to sleep when its partner, which stopped it, is up again', () => {
    const house: TinyHouse = {
      units: [{ inverter: { continuousW: 1000, surgeW: 5000, resetsItselfAfterMinutes: 10 } }, {}],
      pair: { stopsTogether: true },
      circuits: { a: { watts: (m) => (m === 90 ? 1200 : 100) }, b: { watts: 50, leg: 'L2' } },
      rules: [sleepsFromOneToFour],
      hours: 6,
    };
    const minutes = asleep(house);
    expect(minutes.slice(0, 30)).toEqual(range(60, 90));
    expect(minutes.at(-1)).toBe(239);
  });

  it('goes back to sleep by its charge when its partner, for which it was woken, is up again', () => {
    const minutes = asleep({
      units: [
        { inverter: { continuousW: 350, surgeW: 5000, resetsItselfAfterMinutes: 5 } },
        { battery: { startFraction: 0.5 } },
      ],
      circuits: { a: { watts: (m) => (m === 90 ? 400 : 200) }, b: { watts: 20, leg: 'L2' } },
      rules: [
        { by: 'sleep', unit: 'west', sleepBelowFraction: 0.6, wakeAboveFraction: 0.9, circuits: 'moved' },
      ],
      hours: 6,
    });
    expect(minutes.slice(0, 90)).toEqual(range(0, 90));
    expect(minutes.at(-1)).toBe(359);
  });

  it('is the only one asleep where two rules want a unit each: its partner keeps its circuits on', () => {
    const { trace } = live({
      units: [{}, {}],
      circuits: { a: { watts: 100, leg: 'L1' }, b: { watts: 100, leg: 'L2' } },
      rules: [
        { by: 'sleep', unit: 'east', during: ['00:10-00:20'], circuits: 'dropped' },
        { by: 'sleep', unit: 'west', during: ['00:15-00:25'], circuits: 'dropped' },
      ],
      hours: 1,
    });
    expect(minutesWhere(trace.neutralA, (a) => a === 0).filter((m) => m >= 10 && m < 25)).toEqual([]);
  });
});

describe('the neutral', () => {
  it('carries the sum of both legs while one unit feeds them both: (P1 + P2) ÷ 120 V', () => {
    const { trace } = live({
      units: [{}, {}],
      circuits: { a: { watts: 1200, leg: 'L1' }, b: { watts: 900, leg: 'L2' } },
      rules: [{ by: 'sleep', unit: 'west', during: ['00:00-24:00'], circuits: 'moved' }],
      hours: 1,
    });
    expect(trace.neutralA[30]).toBeCloseTo(2100 / 120, 9);
  });
});

describe('the cause of a lost 240 V circuit', () => {
  it.each([
    ['the first', [1000, 6000]],
    ['the second', [6000, 1000]],
  ] as const)('is the bank that ran empty, not the partner it took with it: %s unit', (_, [a, b]) => {
    const { row } = live({
      units: [{ capacityWh: a }, { capacityWh: b }],
      pair: { stopsTogether: true },
      circuits: { pump: { watts: 1200, leg: 'both' } },
      hours: 5,
    });
    expect(row['runtimeMinutes']).toBeCloseTo(100, 9);
    expect(END_CAUSES[row['endCause']!]).toBe('battery empty');
    expect(row['endUnit']).toBe(a < b ? 0 : 1);
  });
});

describe('the end of a run at which several circuits go without in one moment', () => {
  it('is told alike whatever other strategies are tried beside it: by the unit that failed, not by its partner', () => {
    const spec = tinySpec({
      units: [{}, { inverter: { continuousW: 1000, surgeW: 5000 } }],
      pair: { stopsTogether: true },
      circuits: {
        idle: { watts: 0, leg: 'L1' },
        failing: { watts: 1200, leg: 'L2' },
        lamp: { watts: 50, leg: 'L1' },
      },
      hours: 2,
    });
    const beside = {
      id: 'beside',
      title: 'Beside',
      rules: [{ by: 'outage' as const, circuits: { ids: ['lamp'] } }],
    };
    const causeWith = (strategies: typeof spec.strategies) => {
      const read = readScenario(JSON.stringify({ ...spec, strategies }), 'tiny.json', new Map());
      const scenario = resolveScenario(read, { normals: new Map(), years: new Map(), profiles: new Map() });
      const { columns } = runShard(prepareStudy(scenario, { seed: 'x' }), 0, 1);
      return [END_CAUSES[columns['endCause']![0]!], columns['endUnit']![0]];
    };
    expect(causeWith(spec.strategies)).toEqual(['overload trip', 1]);
    expect(causeWith([...spec.strategies, beside])).toEqual(['overload trip', 1]);
  });
});

describe('of circuits that go without in one moment', () => {
  const endOf = (house: TinyHouse) => {
    const { row } = live({ hours: 24, ...house });
    return [END_CAUSES[row['endCause']!], row['endUnit']];
  };

  it.each([
    [{ west: { watts: 200, leg: 'L2' }, east: { watts: 200, leg: 'L1' } }, 1],
    [{ east: { watts: 200, leg: 'L1' }, west: { watts: 200, leg: 'L2' } }, 0],
  ] as const)('the first written is told where their units fail alike', (circuits, unit) => {
    const bank = { capacityWh: 1000 };
    expect(endOf({ units: [bank, bank], circuits })).toEqual(['battery empty', unit]);
  });

  it.each([
    { cold: { watts: 100, leg: 'L1' }, beside: { watts: 100, leg: 'L2' } },
    { beside: { watts: 100, leg: 'L2' }, cold: { watts: 100, leg: 'L1' } },
  ] as const)('the one whose bank is too cold is told, not the one whose partner stopped', (circuits) => {
    const coldCapacity: [number, number][] = [
      [-20, 0.5],
      [25, 0.5],
    ];
    const units = [{ capacityWh: 2000, battery: { coldCapacity } }, { capacityWh: 9000 }];
    expect(endOf({ units, circuits, pair: { stopsTogether: true } })).toEqual(['battery too cold', 0]);
  });
});

describe('a person asleep', () => {
  const byPerson = {
    carriedOutBy: 'person',
    person: { awake: '06:30-22:30', tripReactionMinutes: 10, afterTripHoldMinutes: 60 },
  } as const;
  /** 500 W and, for one minute, too much; the outage starts at 21:00. */
  const tripAt = (minute: number): TinyHouse => ({
    ...byPerson,
    startLocal: '2026-03-10T21:00',
    units: [{ inverter: { continuousW: 1000, surgeW: 5000 } }],
    circuits: { base: { watts: 300 }, extra: { watts: (m) => (m === 21 * 60 + minute ? 900 : 50), tier: 5 } },
    hours: 12,
  });

  it('does not switch back on at 23:10 what was held back from 22:10', () => {
    const { trace } = live(tripAt(60));
    expect(on(trace.circuits[1]!.servedW)).toEqual([...range(0, 60), ...range(570, 720)]);
  });

  it('does not reset at 22:35 what tripped at 22:25', () => {
    const { trace } = live(tripAt(85));
    expect(minutesWhere(trace.units[0]!.loadW, (w) => w === 0).at(-1)).toBeGreaterThanOrEqual(569);
  });

  it('throws nothing when the clocks jump', () => {
    const { trace } = live({
      ...byPerson,
      timeZone: 'America/New_York',
      startLocal: '2026-03-07T20:00',
      circuits: { base: { watts: 1 }, extra },
      rules: [{ by: 'clock', circuits: { ids: ['extra'] }, onDuring: ['02:00-05:00'] }],
      hours: 14,
    });
    expect(on(trace.circuits[1]!.servedW)).toEqual([]);
  });

  it('who finds the outage on waking has not switched anything off for the night', () => {
    // 02:40, forty minutes into the hour: on a ration, but left on while asleep
    const { trace } = live({
      ...byPerson,
      startLocal: '2026-03-10T02:40',
      circuits: { base: { watts: 1 }, extra },
      rules: [{ by: 'ration', circuits: { ids: ['extra'] }, onMinutesPerHour: 20, whileAsleep: 'on' }],
      hours: 6,
    });
    expect(on(trace.circuits[1]!.servedW).filter((m) => m < 230)).toEqual(range(0, 230));
  });
});

describe('why a thermostat went without', () => {
  it('stays what it was when its grace ran out, though the unit comes back and trips at once', () => {
    const { row, trace } = live({
      units: [{ capacityWh: 200, inverter: { continuousW: 500, overloadMinutes: 0 } }],
      circuits: {
        cold: {
          graceMinutes: 60,
          appliances: [
            {
              kind: 'thermostat',
              does: 'cools',
              runningW: 100,
              setC: 4,
              bandC: 1,
              timeConstantHours: 2,
              dutyFraction: 0.9,
              dutySurroundingsC: 21,
            },
          ],
        },
        heavy: { watts: (m) => (m >= 300 ? 900 : 0), tier: 2 },
      },
      solarW: (_, m) => (m >= 320 ? 1000 : 0),
      hours: 8,
    });
    const text = trace.events.filter((e) => e.kind === 'unit').map((e) => e.text);
    expect(text[0]).toContain('battery empty');
    expect(text.some((t) => t.includes('trip'))).toBe(true);
    expect(row['runtimeMinutes']).toBeLessThan(300);
    expect(END_CAUSES[row['endCause']!]).toBe('battery empty');
  });
});

describe('a need that several circuits serve', () => {
  it.each([
    ['the first', 30, 600],
    ['the last', 600, 30],
  ])('is unmet as long as the worst of them, %s written', (_, firstGrace, lastGrace) => {
    const { row } = live({
      circuits: {
        base: { watts: 10 },
        first: { watts: 10, need: 'talk', tier: 2, graceMinutes: firstGrace },
        last: { watts: 10, need: 'talk', tier: 2, graceMinutes: lastGrace },
      },
      rules: [{ by: 'outage', circuits: { tiers: [2] } }],
      hours: 24,
    });
    expect(row['need:talk:minutes']).toBeCloseTo(1440 - 30, 6);
    expect(row['need:talk:firstMinute']).toBeCloseTo(30, 6);
  });
});

describe('a need that a thermostat serves', () => {
  const unmet = (limitC: number | undefined) =>
    live({
      circuits: {
        cold: {
          need: 'food',
          graceMinutes: 60,
          appliances: [
            {
              kind: 'thermostat',
              does: 'cools',
              runningW: 100,
              setC: 4,
              bandC: 0.02,
              timeConstantHours: 20,
              dutyFraction: 0.5,
              dutySurroundingsC: 21,
              ...(limitC === undefined ? {} : { limitC }),
            },
          ],
        },
      },
      rules: [{ by: 'outage', circuits: { ids: ['cold'] } }],
      hours: 24,
    }).row['need:food:minutes']!;

  it('is unmet past its limit, however long it waited: 21 − 17 e^(−t/1200) passes 10 °C after 522 minutes', () => {
    expect(Math.abs(unmet(10) - (1440 - 1200 * Math.log(17 / 11)))).toBeLessThan(2.5);
  });

  it('without a limit is unmet once it has waited for longer than its grace', () => {
    expect(Math.abs(unmet(undefined) - (1440 - 60))).toBeLessThan(4);
  });
});
