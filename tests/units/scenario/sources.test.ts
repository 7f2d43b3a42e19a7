/** Generators, rolling outages, vehicles and portable panels in a file: what they take, and one clear message a slip. */
import { describe, expect, it } from 'vitest';
import { HOUSE, onlyFinding, read } from './written.ts';

const CHARGER = HOUSE.replaceAll('startFraction: 0.9', 'startFraction: 0.9\n    charger: { maxW: 1000 }');
const withSources = (sources: string, house = CHARGER) =>
  house.replace('circuits:\n', `sources:\n${sources.replaceAll(/^/gm, '  ')}\ncircuits:\n`);
const generator = (keys: string) =>
  withSources(`generator: { ratedW: 4000, volts: 240, tankL: 15, ${keys} }`);

describe('a generator', () => {
  it('needs its watts, its volts and its tank, and runs by charge unless somebody says otherwise', () => {
    const spec = read(generator('')).scenario.sources!.generator!;
    expect(spec).toMatchObject({
      fuel: 'gasoline',
      cansL: 0,
      starts: 'hand',
      passesThrough: true,
      run: { by: 'charge', startBelowFraction: 0.3, stopAboveFraction: 0.9 },
    });
  });

  it.each([
    ['tankL: 15', 'tankL: -5', 'sources.generator.tankL', 'a number above 0'],
    ['ratedW: 4000', 'ratedW: 0', 'sources.generator.ratedW', 'a number above 0'],
    ['volts: 240', 'volts: 230', 'sources.generator.volts', 'one of 120, 240'],
  ])('that cannot be is told: %s as %s', (part, by, path, expected) => {
    expect(onlyFinding(generator('').replace(part, by))).toMatchObject({ path, expected });
  });

  it.each([
    ['cansL: -1', 'cansL', 'a number of at least 0'],
    ['surgeW: 3000', 'surgeW', 'at least ratedW, 4000'],
    ['fuelUse: { halfLoadLPerHour: 0, fullLoadLPerHour: 1 }', 'fuelUse.halfLoadLPerHour', 'a number above 0'],
    [
      'fuelUse: { halfLoadLPerHour: 2, fullLoadLPerHour: 1 }',
      'fuelUse.fullLoadLPerHour',
      'more than halfLoadLPerHour: a loaded engine burns more',
    ],
    [
      'fuelUse: { halfLoadLPerHour: 1, fullLoadLPerHour: 3 }',
      'fuelUse.fullLoadLPerHour',
      'at most twice halfLoadLPerHour: an engine without load burns fuel too',
    ],
    [
      'run: { by: charge, startBelowFraction: 0.9, stopAboveFraction: 0.5 }',
      'run.stopAboveFraction',
      'a fraction above startBelowFraction',
    ],
    ['run: { by: sunset }', 'run.by', 'one of charge, hours, never'],
    ['maintenance: { everyHours: 0 }', 'maintenance.everyHours', 'a number above 0'],
  ])('with %s is told at its key', (keys, path, expected) => {
    expect(onlyFinding(generator(keys))).toMatchObject({ path: `sources.generator.${path}`, expected });
  });

  it('may start no more than it gives, and run for just as long as its quiet hours leave of the day', () => {
    // 07:30 to 19:00, somebody being awake all the while
    const run = { by: 'hours', hoursPerDay: 11.5 };
    const written = "surgeW: 4000, quietHours: ['19:00-07:30'], run: { by: hours, hoursPerDay: 11.5 }";
    expect(read(generator(written)).scenario.sources!.generator).toMatchObject({ surgeW: 4000, run });
  });

  it('is told when its quiet hours leave too little of the day', () => {
    expect(
      onlyFinding(generator("quietHours: ['19:00-07:30'], run: { by: hours, hoursPerDay: 14 }")),
    ).toMatchObject({
      path: 'sources.generator.run.hoursPerDay',
      found: '14',
      expected:
        'at most 11.5: so many hours are left outside the quiet hours and while somebody is awake to run it',
    });
    expect(
      onlyFinding(generator("quietHours: ['00:00-24:00'], run: { by: hours, hoursPerDay: 2 }")),
    ).toMatchObject({
      path: 'sources.generator.run',
      found: 'a generator that may never run',
    });
  });

  it('is told when no unit has a charger, or one that it feeds has none', () => {
    const none = withSources('generator: { ratedW: 4000, volts: 240, tankL: 15 }', HOUSE);
    expect(onlyFinding(none)).toMatchObject({
      path: 'sources.generator',
      expected: 'a unit with a charger for it to feed',
    });
    expect(onlyFinding(generator('feeds: [east, west]'))).toMatchObject({
      path: 'units.west.charger',
      found: 'nothing',
      expected: 'charger: { maxW: … }, since the generator feeds this unit',
    });
    expect(onlyFinding(generator('feeds: [eats]'))).toMatchObject({ hint: 'Did you mean east?' });
  });
});

describe('a strategy', () => {
  const careful = (keys: string, house: string) =>
    house.replace('    title: Careful\n', `    title: Careful\n    generator: { ${keys} }\n`);

  it('may run the generator in its own way, within the same quiet hours', () => {
    const house = generator("quietHours: ['12:00-24:00']");
    expect(read(careful('by: hours, hoursPerDay: 2', house)).scenario.strategies[1]!.generator).toMatchObject(
      {
        hoursPerDay: 2,
      },
    );
    expect(onlyFinding(careful('by: hours, hoursPerDay: 6', house))).toMatchObject({
      path: 'strategies.careful.generator.hoursPerDay',
      expected: expect.stringContaining('at most 5.5') as string,
    });
  });

  it('that runs a generator nobody has is told; one that an alternative brings is enough', () => {
    expect(onlyFinding(careful('by: charge', CHARGER))).toMatchObject({
      path: 'strategies.careful.generator',
      found: 'no generator',
    });
    const brought = careful('by: charge', CHARGER).replace(
      "change: { 'units.*.battery.modules': 2 }",
      "change: { 'sources.generator': { ratedW: 3000, volts: 120, tankL: 10 } }",
    );
    expect(read(brought).alternatives[1]!.scenario.sources!.generator!.ratedW).toBe(3000);
  });
});

describe('other sources', () => {
  it('a vehicle charges a unit that there is', () => {
    expect(onlyFinding(withSources('vehicle: { unit: wets, outletW: 300 }'))).toMatchObject({
      path: 'sources.vehicle.unit',
      hint: 'Did you mean west?',
    });
  });

  it('rolling outages have lengths', () => {
    expect(read(withSources('grid: { onHours: 4, offHours: 8 }')).scenario.sources!.grid).toMatchObject({
      onScatterFraction: 0.25,
    });
    expect(onlyFinding(withSources('grid: { onHours: 0, offHours: 8 }'))).toMatchObject({
      path: 'sources.grid.onHours',
      expected: 'a number above 0',
    });
  });

  it('portable panels are out while somebody is up to take them in', () => {
    const out = (window: string) =>
      HOUSE.replace(
        '      startFraction: 0.9\n',
        `      startFraction: 0.9\n    solar:\n      inputLimitW: 800\n      arrays: [{ peakW: 400, tiltDeg: 30, azimuthDeg: 180, outDuring: ['${window}'] }]\n`,
      );
    expect(read(out('08:00-17:00')).scenario.units[0]!.solar!.arrays[0]!.outDuring).toEqual(['08:00-17:00']);
    expect(onlyFinding(out('05:00-17:00'))).toMatchObject({
      path: 'units.east.solar.arrays.0.outDuring',
      expected: 'windows within person.awake, 06:30-22:30: somebody has to put them out and take them in',
    });
  });
});
