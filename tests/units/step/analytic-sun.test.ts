/** Sunshine, charging, cold and coming back, worked out on paper. */
import { describe, expect, it } from 'vitest';
import { END_CAUSES } from '../../../packages/sim/src/index.ts';
import { live, minutesWhere } from './tiny-house.ts';

function expectClose(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
}

describe('sunshine', () => {
  it('feeds the load first and lengthens the runtime: C ÷ (P - S)', () => {
    const { row } = live({ circuits: { load: { watts: 1000 } }, solarW: () => 400 });
    expectClose(row['runtimeMinutes']!, (6000 * 60) / 600);
  });

  it('fills the bank with what is left, times the charging efficiency: (S - P - loss) η', () => {
    const { trace } = live({
      units: [
        {
          inverter: { idleW: 20, lossPerW: 0.05 },
          battery: { startFraction: 0.25 },
          module: { chargeEfficiency: 0.94 },
        },
      ],
      circuits: { load: { watts: 300 } },
      solarW: () => 1000,
      hours: 3,
    });
    const surplusW = 1000 - 300 - 20 - 0.05 * 300;
    const { storedWh, solarStoredW, batteryW, solarUsedW } = trace.units[0]!;
    expectClose(storedWh[119]!, 1500 + 2 * surplusW * 0.94);
    expectClose(solarStoredW[60]!, surplusW);
    expectClose(batteryW[60]!, surplusW);
    expectClose(solarUsedW[60]!, 1000 - surplusW);
  });

  it('is curtailed once the bank is full: S - P, and not a watt before', () => {
    const { trace, row } = live({
      units: [{ battery: { startFraction: 0.9 } }],
      circuits: { load: { watts: 200 } },
      solarW: () => 500,
      hours: 5,
    });
    const { solarCurtailedW, chargeFraction } = trace.units[0]!;
    const fullAfter = (600 / 300) * 60;
    expect(minutesWhere(solarCurtailedW, (w) => w > 1e-6)[0]).toBe(fullAfter);
    expectClose(solarCurtailedW[200]!, 300);
    expect(chargeFraction[200]).toBe(1);
    expectClose(row['solarCurtailedWh']!, 300 * 3);
  });

  it('is clipped at the unit’s solar input: S - limit', () => {
    const { trace, row } = live({
      units: [{ inputLimitW: 800, battery: { startFraction: 0.1 } }],
      circuits: { load: { watts: 100 } },
      solarW: (_, m) => (m < 60 ? 1250 : 750),
      hours: 2,
    });
    expectClose(trace.units[0]!.solarClippedW[30]!, 450);
    expect(trace.units[0]!.solarClippedW[90]).toBe(0);
    expectClose(row['solarClippedWh']!, 450);
    expectClose(row['solarAvailableWh']!, 1250 + 750);
  });

  it('is curtailed above the modules’ charging limit: S - P - n · limit', () => {
    const { trace } = live({
      units: [{ battery: { modules: 2, startFraction: 0.1 }, module: { maxChargeW: 250 } }],
      circuits: { load: { watts: 100 } },
      solarW: () => 900,
      hours: 2,
    });
    expectClose(trace.units[0]!.solarStoredW[30]!, 500);
    expectClose(trace.units[0]!.solarCurtailedW[30]!, 300);
  });

  it('of one unit is of no use to the other', () => {
    const { row } = live({
      units: [{}, {}],
      circuits: { a: { watts: 600, leg: 'L1' }, b: { watts: 600, leg: 'L2' } },
      solarW: (u) => (u === 0 ? 5000 : 0),
    });
    expectClose(row['runtimeMinutes']!, 600);
    expect(row['endUnit']).toBe(1);
  });
});

describe('coming back after a cut-off', () => {
  it('happens at the first minute’s end above the restart level: C (restart - cut-off) ÷ (S η)', () => {
    const { trace, row } = live({
      units: [
        {
          battery: { startFraction: 0.2, cutOffFraction: 0.1, restartFraction: 0.3 },
          module: { chargeEfficiency: 0.9 },
        },
      ],
      circuits: { load: { watts: 600 } },
      solarW: (_, m) => (m < 120 ? 0 : 1000),
      hours: 6,
    });
    expectClose(row['runtimeMinutes']!, 60);
    const minutesOfSun = (6000 * 0.2 * 60) / (1000 * 0.9); // exactly 80: not yet above
    const back = minutesWhere(trace.units[0]!.loadW, (w) => w > 0).find((m) => m > 60);
    expect(back).toBeGreaterThanOrEqual(120 + minutesOfSun);
    expect(back).toBeLessThanOrEqual(121 + minutesOfSun);
    expectClose(row['minutesUnit0Down']!, back! - 60);
  });

  it('leaves the standby watts to the sun and takes nothing from an empty bank', () => {
    const { trace } = live({
      units: [
        {
          battery: { startFraction: 0.1, cutOffFraction: 0.1, restartFraction: 0.9 },
          inverter: { standbyW: 6 },
        },
      ],
      circuits: { load: { watts: 600 } },
      solarW: (_, m) => (m < 60 ? 0 : 106),
      hours: 3,
    });
    expectClose(trace.units[0]!.storedWh[59]!, 600);
    expect(trace.units[0]!.inverterLossW[30]).toBe(0);
    expectClose(trace.units[0]!.storedWh[119]!, 700);
    expectClose(trace.units[0]!.inverterLossW[90]!, 6);
  });
});

describe('cold', () => {
  const coldCapacity: [number, number][] = [
    [-20, 0.6],
    [-10, 0.75],
    [0, 0.85],
    [25, 1],
  ];

  it('hides its share from below: floor = 1 - d + cut-off · d, d between the given points', () => {
    const drawable = 0.75 + (0.1 * 5) / 10; // at -5 °C
    const { row } = live({
      indoorC: -5,
      units: [{ battery: { coldCapacity, cutOffFraction: 0.1, restartFraction: 0.2 } }],
      circuits: { load: { watts: 400 } },
    });
    expectClose(row['runtimeMinutes']!, (6000 * drawable * 0.9 * 60) / 400);
    expect(END_CAUSES[row['endCause']!]).toBe('battery too cold');
  });

  it('stops charging below the lowest charging temperature: all surplus is curtailed', () => {
    const { trace } = live({
      indoorC: -5,
      units: [{ battery: { minChargeC: 0, startFraction: 0.5 } }],
      circuits: { load: { watts: 400 } },
      solarW: () => 1000,
      hours: 2,
    });
    expect(trace.units[0]!.solarStoredW[30]).toBe(0);
    expectClose(trace.units[0]!.solarCurtailedW[30]!, 600);
    expectClose(trace.units[0]!.storedWh[119]!, 3000);
  });

  it('does not stop charging at that very temperature', () => {
    const { trace } = live({
      indoorC: 0,
      units: [{ battery: { minChargeC: 0, startFraction: 0.5 } }],
      circuits: { load: { watts: 400 } },
      solarW: () => 1000,
      hours: 2,
    });
    expectClose(trace.units[0]!.solarStoredW[30]!, 600);
  });
});
