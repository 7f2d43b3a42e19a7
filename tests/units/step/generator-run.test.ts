/** A generator's own clockwork, minute by minute, without a house around it. */
import { describe, expect, it } from 'vitest';
import { fuelLineOf } from '../../../packages/sim/src/power/fuel-use.ts';
import { generatorRun, sources } from '../../../packages/sim/src/scenario/schema-sources.ts';
import { scenarioSchema } from '../../../packages/sim/src/scenario/schema.ts';
import { planGenerator } from '../../../packages/sim/src/shedding/generator-plan.ts';
import type { CompiledGenerator } from '../../../packages/sim/src/step/household-sources.ts';
import {
  decideGenerator,
  generatorBreak,
  generatorFuelL,
  generatorMinutes,
  startGenerator,
  tripGenerator,
  type GeneratorRun,
} from '../../../packages/sim/src/step/generator-run.ts';

interface Case {
  readonly spec?: object;
  readonly run: object;
  readonly awake?: string;
  readonly hours: number;
  /** Watts delivered while it runs. */
  readonly watts?: number;
  readonly charge?: (minute: number) => number;
  readonly gridIsOn?: (minute: number) => boolean;
  /** Decide only at the minutes that `generatorBreak` names, as the loop does; every minute otherwise. */
  readonly inBlocks?: boolean;
}

/** Lives through the hours from local midnight; returns the minutes at which it starts and stops, in turn. */
function live(given: Case): {
  readonly switches: number[];
  readonly generator: GeneratorRun;
  readonly fuelL: number;
} {
  const person = scenarioSchema.shape.person.parse({ awake: given.awake ?? '00:00-24:00' });
  const spec = sources.parse({
    generator: {
      ratedW: 3000,
      volts: 240,
      tankL: 1000,
      fuelUse: { halfLoadLPerHour: 1, fullLoadLPerHour: 1.5 },
      starts: 'automatic',
      ...given.spec,
    },
  }).generator!;
  const plan = planGenerator(generatorRun.parse(given.run), spec, person)!;
  const line = fuelLineOf(spec);
  const compiled: CompiledGenerator = {
    spec,
    line,
    mostLPerMinute: 1.5 / 60,
    surgeW: 3000,
    feeds: Uint8Array.of(1),
    plans: [plan],
  };
  const generator = startGenerator(compiled, plan);
  const switches: number[] = [];
  const minutes = given.hours * 60;
  let deliveredWmin = 0;
  for (let minute = 0; minute < minutes;) {
    const looking = minute >= generator.nextThought;
    let nextAwake = minute;
    while (plan.awake[nextAwake % 1440] === 0) nextAwake++;
    const changed = decideGenerator(generator, {
      minute,
      localMinuteOfDay: minute % 1440,
      localDay: Math.floor(minute / 1440),
      lowestCharge: given.charge?.(minute) ?? 0,
      deliveredWmin,
      gridIsOn: given.gridIsOn?.(minute) ?? false,
      looking,
      nextAwake,
    });
    if (looking) generator.nextThought = minute + plan.nextThought[minute % 1440]!;
    if (changed) switches.push(minute);
    const until =
      given.inBlocks === true
        ? Math.min(minutes, generatorBreak(generator, minute, deliveredWmin))
        : minute + 1;
    if (generator.running) deliveredWmin += (until - minute) * (given.watts ?? 0);
    minute = until;
  }
  return { switches, generator, fuelL: generatorFuelL(generator, minutes, deliveredWmin) };
}

describe('by hand', () => {
  it('is not judged by what the bank stood at while everybody slept', () => {
    const { switches } = live({
      spec: { starts: 'hand' },
      run: { by: 'charge', startBelowFraction: 0.3, stopAboveFraction: 0.95 },
      awake: '08:00-23:00',
      charge: (minute) => (minute % 1440 < 480 ? 0.2 : 0.8),
      hours: 48,
    });
    expect(switches).toEqual([]);
  });
});

describe('a pause of no minutes', () => {
  it('ends in the next one, however often it is thought of in this one', () => {
    const given = { tankL: 0.01, cansL: 5, refuelMinutes: 0 };
    const { generator, switches } = live({ spec: given, run: { by: 'hours', hoursPerDay: 24 }, hours: 1 });
    expect(switches).toEqual([]);
    expect(generator.outUntil).toBe(60);
  });
});

describe('by hours', () => {
  it('runs the first allowed hours of each day', () => {
    const { switches } = live({ run: { by: 'hours', hoursPerDay: 2, during: ['07:00-20:00'] }, hours: 48 });
    expect(switches).toEqual([420, 540, 1860, 1980]);
  });

  it('keeps out of the quiet hours and makes the time up after them', () => {
    const { switches } = live({
      spec: { quietHours: ['08:00-10:00'] },
      run: { by: 'hours', hoursPerDay: 3, during: ['07:00-20:00'] },
      hours: 24,
    });
    expect(switches).toEqual([420, 480, 600, 720]);
  });

  it('by hand waits for somebody to be up, and goes off at bedtime', () => {
    const { switches } = live({
      spec: { starts: 'hand' },
      run: { by: 'hours', hoursPerDay: 15.5 },
      awake: '08:00-23:00',
      hours: 24,
    });
    expect(switches).toEqual([480, 1379]);
  });
});

describe('by charge', () => {
  const falling = (minute: number) => 1 - minute / 1000;

  it('starts by itself below the one level and stops at the other', () => {
    const charge = (minute: number) => (minute < 700 ? falling(minute) : 0.3 + (minute - 700) / 100);
    const { switches } = live({
      run: { by: 'charge', startBelowFraction: 0.4, stopAboveFraction: 0.8 },
      charge,
      hours: 20,
    });
    expect(switches).toEqual([601, 750]);
  });

  it('by hand starts at the next look, and runs on until a look sees the bank full', () => {
    const charge = (minute: number) => (minute < 700 ? falling(minute) : 0.3 + (minute - 700) / 100);
    const { switches } = live({
      spec: { starts: 'hand' },
      run: { by: 'charge', startBelowFraction: 0.4, stopAboveFraction: 0.8 },
      charge,
      hours: 20,
    });
    expect(switches).toEqual([660, 780]);
  });

  it('goes on after quiet hours with what they interrupted', () => {
    const { switches } = live({
      spec: { quietHours: ['02:00-03:00'] },
      run: { by: 'charge', startBelowFraction: 0.4, stopAboveFraction: 0.8 },
      charge: (minute) => (minute < 60 ? 0.3 : 0.6),
      hours: 4,
    });
    expect(switches).toEqual([0, 120, 180]);
  });

  it('keeps to its most hours of a day', () => {
    const { switches } = live({ run: { by: 'charge', mostHoursPerDay: 1.5 }, hours: 30 });
    expect(switches).toEqual([0, 90, 1440, 1530]);
  });

  it('is off while the grid is there', () => {
    const { switches } = live({ run: { by: 'charge' }, gridIsOn: (m) => m >= 100 && m < 160, hours: 4 });
    expect(switches).toEqual([0, 100, 160]);
  });
});

describe('fuel', () => {
  it('runs the tank to within a minute at full load of empty', () => {
    // half load: 1 L/h; full load burns 0.025 L a minute
    const { switches, fuelL, generator } = live({
      spec: { tankL: 3 },
      run: { by: 'charge' },
      watts: 1500,
      hours: 6,
    });
    expect(switches).toEqual([0, 179]);
    expect(fuelL).toBeCloseTo(179 / 60, 9);
    expect(generator.fuelGoneAt).toBe(179);
  });

  it('is poured from the cans by somebody awake, the engine off meanwhile', () => {
    const { switches, generator } = live({
      spec: { tankL: 3, cansL: 2, refuelMinutes: 20 },
      run: { by: 'charge' },
      watts: 1500,
      hours: 8,
    });
    // 2 L more, and the half minute's worth left over: 120 minutes
    expect(switches).toEqual([0, 179, 199, 319]);
    expect(generator.cansL).toBe(0);
    expect(generator.fuelGoneAt).toBe(319);
    expect(generator.starts).toBe(2);
  });

  it('waits for morning where it runs dry at night', () => {
    const { switches } = live({
      spec: { tankL: 3, cansL: 30, refuelMinutes: 20 },
      run: { by: 'charge' },
      awake: '06:00-22:00',
      watts: 1500,
      hours: 7,
    });
    expect(switches).toEqual([0, 179, 380]);
  });

  it('never holds more than the tank', () => {
    const { generator } = live({
      spec: { tankL: 3, cansL: 100 },
      run: { by: 'charge' },
      watts: 3000,
      hours: 40,
    });
    // 1.5 L/h: the tank lasts two hours, less a minute, and twenty minutes' pouring
    expect(generator.pouredL - 3).toBeCloseTo(100 - generator.cansL, 9);
    expect(generator.starts).toBe(18);
  });
});

describe('service and breaker', () => {
  it('stands still for its service when somebody is awake, and counts anew', () => {
    const { switches } = live({
      spec: { maintenance: { everyHours: 2, minutes: 30 } },
      run: { by: 'charge' },
      hours: 6,
    });
    expect(switches).toEqual([0, 120, 150, 270, 300]);
  });

  it('runs on over night with a service that is due', () => {
    const { switches } = live({
      spec: { maintenance: { everyHours: 2, minutes: 30 } },
      run: { by: 'charge' },
      awake: '05:00-22:00',
      hours: 7,
    });
    expect(switches).toEqual([0, 300, 330]);
  });

  it('a breaker that opens leaves it off until it is reset', () => {
    const generator = live({ run: { by: 'charge' }, hours: 1 }).generator;
    tripGenerator(generator, 60.25, 71);
    expect([generator.running, generator.trips]).toEqual([false, 1]);
    expect(generatorMinutes(generator, 100)).toBe(60.25);
    expect(generatorBreak(generator, 61, 0)).toBe(71);
  });
});

it('thinking only when something is due is the same as thinking every minute', () => {
  const cases: Case[] = [
    {
      spec: { tankL: 3, cansL: 20, maintenance: { everyHours: 5, minutes: 45 } },
      run: { by: 'charge' },
      awake: '06:00-22:00',
      hours: 60,
      watts: 2100,
    },
    { spec: { quietHours: ['21:00-07:30'] }, run: { by: 'hours', hoursPerDay: 5.5 }, hours: 60 },
    {
      spec: { starts: 'hand', tankL: 2, cansL: 9 },
      run: { by: 'charge', mostHoursPerDay: 3.3 },
      awake: '07:10-22:30',
      hours: 72,
      watts: 900,
    },
  ];
  for (const each of cases) {
    const everyMinute = live(each);
    const inBlocks = live({ ...each, inBlocks: true });
    expect(inBlocks.switches).toEqual(everyMinute.switches);
    expect(inBlocks.fuelL).toBeCloseTo(everyMinute.fuelL, 9);
    expect(everyMinute.switches.length).toBeGreaterThan(4);
  }
});
