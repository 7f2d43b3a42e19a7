import { describe, expect, it } from 'vitest';
import { createClock, fillClock } from '../../../packages/sim/src/clock/fill-clock.ts';
import { sources } from '../../../packages/sim/src/scenario/schema-sources.ts';
import { fillVehicleHours, planVehicle } from '../../../packages/sim/src/step/vehicle-hours.ts';

const clock = createClock('UTC', 3 * 1440);
fillClock(clock, Date.UTC(2026, 2, 10, 18) / 60_000);

function plugged(given: object, gridSwitches: number[] = []): number[] {
  const { vehicle } = sources.parse({ vehicle: { unit: 'east', outletW: 300, ...given } });
  const switches: number[] = [];
  fillVehicleHours(planVehicle(vehicle!), clock, gridSwitches, switches);
  return switches;
}

describe('a vehicle’s outlet', () => {
  it('is plugged in all the time unless something says otherwise', () => {
    expect(plugged({})).toEqual([0]);
  });

  it('keeps to its windows, and to so many hours of each day', () => {
    // the outage begins at 18:00; midnight is minute 360
    expect(plugged({ during: ['08:00-12:00'], hoursPerDay: 3 })).toEqual([840, 1020, 2280, 2460, 3720, 3900]);
  });

  it('keeps to its energy of a day and of the whole outage, at its full watts', () => {
    expect(plugged({ mostWhPerDay: 600 })).toEqual([0, 120, 360, 480, 1800, 1920, 3240, 3360]);
    expect(plugged({ mostWhPerDay: 600, mostWh: 1500 })).toEqual([0, 120, 360, 480, 1800, 1860]);
  });

  it('is unplugged before a minute that would go past its energy', () => {
    // at 300 W a minute is 5 Wh: 604 Wh hold 120.8 minutes, 903 Wh hold 180.6
    expect(plugged({ mostWhPerDay: 604 }).slice(0, 4)).toEqual([0, 120, 360, 480]);
    expect(plugged({ mostWh: 903 })).toEqual([0, 180]);
  });

  it('has every minute of an energy that is a whole number of them', () => {
    // watt-hours times 60 over watts: 245 · 60 / 60, 205 · 60 / 50, 410 · 60 / 50
    expect(plugged({ outletW: 60, mostWh: 245 })).toEqual([0, 245]);
    expect(plugged({ outletW: 50, mostWh: 205 })).toEqual([0, 246]);
    expect(plugged({ outletW: 50, mostWhPerDay: 410 }).slice(2, 4)).toEqual([1800, 1800 + 492]);
  });

  it('rests while the grid is there', () => {
    expect(plugged({ hoursPerDay: 3 }, [60, 120])).toEqual([
      0, 60, 120, 240, 360, 540, 1800, 1980, 3240, 3420,
    ]);
  });
});
