/** What each source gave, minute by minute, adds up to what the run's row and its units say. */
import { describe, expect, it } from 'vitest';
import { live, sumOf, type TinyHouse } from './tiny-house.ts';

const house: TinyHouse = {
  units: [{ charger: { maxW: 1500, efficiency: 0.9 } }],
  circuits: { heater: { watts: 600 } },
  sources: {
    grid: { onHours: 2, offHours: 20, onScatterFraction: 0, offScatterFraction: 0 },
    generator: {
      ratedW: 4000,
      volts: 120,
      tankL: 30,
      fuelUse: { halfLoadLPerHour: 1, fullLoadLPerHour: 1.5 },
      starts: 'automatic',
    },
    vehicle: { unit: 'east', outletW: 300, efficiency: 1, during: ['08:00-20:00'], hoursPerDay: 3 },
  },
  generator: { by: 'charge', startBelowFraction: 0.4, stopAboveFraction: 0.7 },
  hours: 48,
};

describe('the sources of a trace', () => {
  const { row, trace } = live(house);
  const of = (id: string) => trace.sources.find((source) => source.id === id)!;

  it('are those that the household has, the one that comes first for a unit first', () => {
    expect(trace.sources.map(({ id }) => id)).toEqual(['grid', 'generator', 'vehicle']);
    const { units, circuits } = house;
    expect(live({ ...(units && { units }), circuits, hours: 3 }).trace.sources).toEqual([]);
  });

  it('were there for as many minutes, and burnt as much fuel, as the row says', () => {
    expect(sumOf(of('grid').onMinutes)).toBe(row['gridMinutes']);
    expect(sumOf(of('generator').onMinutes)).toBeCloseTo(row['generatorMinutes']!, 9);
    expect(sumOf(of('generator').fuelL!)).toBeCloseTo(row['fuelUsedL']!, 9);
    expect(row['generatorMinutes']).toBeGreaterThan(60);
    expect(of('grid').fuelL).toBeUndefined();
  });

  it('gave together, in every minute, what the units took', () => {
    const inW = trace.units[0]!.sourceInW!;
    for (let m = 0; m < trace.minutes; m++)
      expect(trace.sources.reduce((sum, source) => sum + source.inW[m]!, 0)).toBeCloseTo(inW[m]!, 6);
    for (const { inW: watts } of trace.sources) expect(sumOf(watts)).toBeGreaterThan(0);
  });

  it('have the vehicle plugged in where the events say so', () => {
    const events = trace.events.filter(({ kind, id }) => kind === 'source' && id === 'vehicle');
    expect(events.length).toBeGreaterThan(1);
    const { onMinutes } = of('vehicle');
    events.forEach(({ minute, text }) =>
      expect(onMinutes[minute]).toBe(text === 'the vehicle is plugged in' ? 1 : 0),
    );
    expect(sumOf(onMinutes)).toBeLessThanOrEqual(3 * 3 * 60);
  });

  it('are without anything where the strategy never runs the generator', () => {
    const never = live({ ...house, generator: { by: 'never' } }).trace.sources[1]!;
    expect([sumOf(never.inW), sumOf(never.onMinutes), sumOf(never.fuelL!)]).toEqual([0, 0, 0]);
  });
});
