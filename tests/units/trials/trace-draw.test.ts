import { describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '../../../packages/sim/src/index.ts';
import { traceDraw } from '../../../packages/sim/src/trials/trace-draw.ts';
import { localTimes, traceTable } from '../../../packages/sim/src/trials/trace-table.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const scenario = tinyScenario({
  units: [{ capacityWh: 900 }, { capacityWh: 2000 }],
  circuits: {
    fridge: {
      appliances: [
        {
          kind: 'thermostat',
          does: 'cools',
          runningW: 130,
          setC: 3,
          bandC: 1,
          timeConstantHours: 20,
          dutyFraction: 0.35,
          dutySurroundingsC: 21,
        },
      ],
    },
    lamp: { watts: 60, leg: 'L2', tier: 2 },
    pump: { watts: 100, leg: 'both', tier: 3 },
  },
  rules: [{ by: 'charge', circuits: { tiers: [3] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.8 }],
  timeZone: 'America/New_York',
  startLocal: '2026-10-31T18:00',
  hours: 20,
});
const study = prepareStudy(scenario, { seed: 'trace' });

describe('traceDraw', () => {
  it('is the same run as the draw’s row', () => {
    const { columns } = runShard(study, 3, 4);
    const trace = traceDraw(study, { draw: 3, alternative: 0, strategy: 0 });
    const wh = (of: (u: number) => Float64Array) =>
      trace.units.reduce((sum, _, u) => sum + of(u).reduce((a, b) => a + b, 0) / 60, 0);
    expect(trace.runtimeMinutes ?? study.minutes).toBe(columns['runtimeMinutes']![0]);
    expect(trace.startEpochMinute).toBe(columns['startEpochMinute']![0]);
    expect(wh((u) => trace.units[u]!.inverterLossW)).toBeCloseTo(columns['inverterLossWh']![0]!, 6);
    expect(wh((u) => trace.units[u]!.solarStoredW)).toBeCloseTo(columns['solarStoredWh']![0]!, 6);
    expect(trace.units.reduce((sum, u) => sum + u.storedWh.at(-1)!, 0)).toBeCloseTo(
      columns['storedEndWh']![0]!,
      9,
    );
  });

  it('has a value for every minute in every column', () => {
    const trace = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 });
    expect(trace.minutes).toBe(1200);
    for (const unit of trace.units)
      for (const [name, column] of Object.entries(unit)) if (name !== 'id') expect(column).toHaveLength(1200);
    for (const circuit of trace.circuits)
      expect([circuit.wantedW.length, circuit.servedW.length, circuit.allowed.length]).toEqual([
        1200, 1200, 1200,
      ]);
    expect(trace.circuits.map((c) => c.temperatureC?.length)).toEqual([1200, undefined, undefined]);
  });

  it('refuses an alternative or strategy that is not there', () => {
    expect(() => traceDraw(study, { draw: 0, alternative: 1, strategy: 0 })).toThrow(
      new RangeError('no alternative 1 with strategy 0 in this study'),
    );
    expect(() => traceDraw(study, { draw: 0, alternative: 0, strategy: -1 })).toThrow(RangeError);
  });

  it('is not changed by what is drawn afterwards', () => {
    const trace = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 });
    const before = structuredClone(trace);
    runShard(study, 5, 7);
    expect(trace).toEqual(before);
  });
});

describe('the trace of a household with sources', () => {
  const charger = { maxW: 900 };
  const traceOf = (sources: object) => {
    const scenario = tinyScenario({
      units: [{ capacityWh: 1500, charger }],
      circuits: { lamp: { watts: 200 } },
      sources,
      hours: 48,
    });
    const study = prepareStudy(scenario, { seed: 'sources' });
    const { columns } = runShard(study, 0, 1);
    return { columns, trace: traceDraw(study, { draw: 0, alternative: 0, strategy: 0 }) };
  };
  const sumOf = (column: Float64Array) => column.reduce((a, b) => a + b, 0);

  it('tells when each was on and what it gave, the same as the draw’s row', () => {
    const { columns, trace } = traceOf({
      generator: { ratedW: 3000, volts: 120, tankL: 12, starts: 'automatic' },
      grid: { onHours: 2, offHours: 9 },
    });
    const of = (id: string) => trace.sources.find((source) => source.id === id)!;
    const [grid, generator] = [of('grid'), of('generator')];
    expect(sumOf(grid.onMinutes)).toBeCloseTo(columns['gridMinutes']![0]!, 9);
    expect(sumOf(generator.onMinutes)).toBeCloseTo(columns['generatorMinutes']![0]!, 9);
    expect(sumOf(generator.onMinutes)).toBeGreaterThan(0);
    expect(sumOf(generator.fuelL!)).toBeCloseTo(columns['fuelUsedL']![0]!, 9);
    const taken = trace.units[0]!.sourceInW!;
    expect(taken.every((w, m) => Math.abs(w - grid.inW[m]! - generator.inW[m]!) < 1e-6)).toBe(true);
    expect(generator.inW.every((w, m) => w > 0 === generator.onMinutes[m]! > 0)).toBe(true);
    const names = traceTable(trace).columnNames();
    expect(names.filter((name) => name.startsWith('source.'))).toEqual([
      'source.grid.inW',
      'source.grid.onMinutes',
      'source.generator.inW',
      'source.generator.onMinutes',
      'source.generator.fuelL',
    ]);
  });

  it('tells what a vehicle gave, and nothing of sources that are not there', () => {
    const { trace } = traceOf({ vehicle: { unit: 'east', outletW: 1000 } });
    expect(trace.sources.map(({ id }) => id)).toEqual(['vehicle']);
    expect(sumOf(trace.sources[0]!.inW)).toBeCloseTo(sumOf(trace.units[0]!.sourceInW!), 6);
    expect(sumOf(trace.sources[0]!.inW)).toBeGreaterThan(0);
  });
});

describe('the trace as a table', () => {
  const trace = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 });
  const table = traceTable(trace);

  it('has a row a minute and a column for everything, named by unit and circuit', () => {
    expect(table.numRows()).toBe(1200);
    expect(table.columnNames()).toEqual([
      'minute',
      'localTime',
      'ghiWm2',
      'dryBulbC',
      ...['east', 'west'].flatMap((id) => UNIT_COLUMNS.map((name) => `unit.${id}.${name}`)),
      'neutralA',
      'circuit.fridge.wantedW',
      'circuit.fridge.servedW',
      'circuit.fridge.allowed',
      'circuit.fridge.temperatureC',
      ...['lamp', 'pump'].flatMap((id) =>
        ['wantedW', 'servedW', 'allowed'].map((name) => `circuit.${id}.${name}`),
      ),
      'events',
    ]);
  });

  it('tells local time through the hour that comes twice', () => {
    const times = localTimes(trace);
    expect([times[0], times[359], times[360], times[479], times[480], times[540]]).toEqual([
      '2026-10-31 18:00',
      '2026-10-31 23:59',
      '2026-11-01 00:00',
      '2026-11-01 01:59',
      '2026-11-01 01:00',
      '2026-11-01 02:00',
    ]);
  });

  it.each([-1, 0.5, NaN])('of draw %d, which there is not, is refused', (draw) => {
    expect(() => traceDraw(study, { draw, alternative: 0, strategy: 0 })).toThrow(
      new RangeError(`draw: found ${draw}; expected a whole number of at least 0`),
    );
  });

  it('tells what happened in the minute it happened', () => {
    const events = table.array('events') as string[];
    for (const { minute, text } of trace.events) expect(events[minute]).toContain(text);
    expect(trace.events.length).toBeGreaterThan(1);
  });
});

const UNIT_COLUMNS = [
  'solarAvailableW',
  'solarUsedW',
  'solarStoredW',
  'solarClippedW',
  'solarCurtailedW',
  'loadW',
  'inverterLossW',
  'batteryW',
  'batteryLossW',
  'storedWh',
  'chargeFraction',
  'mode',
];
