/** What a constant load must do, worked out on paper. Units: W, Wh, minutes; η = efficiency, C = capacity. */
import { describe, expect, it } from 'vitest';
import { END_CAUSES } from '../../../packages/sim/src/index.ts';
import { live, sumOf } from './tiny-house.ts';

const RELATIVE = 1e-9;

function expectClose(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(RELATIVE * Math.abs(expected));
}

const causeOf = (row: Readonly<Record<string, number>>) => END_CAUSES[row['endCause']!];

describe('a constant load without sun', () => {
  it('runs for usable energy ÷ drain: C (1 - cut-off) 60 ÷ P', () => {
    const { row } = live({
      units: [{ battery: { cutOffFraction: 0.1, restartFraction: 0.2 } }],
      circuits: { load: { watts: 750 } },
    });
    expectClose(row['runtimeMinutes']!, (6000 * 0.9 * 60) / 750);
    expect(causeOf(row)).toBe('battery empty');
    expect(row['endUnit']).toBe(0);
    expect(row['censored']).toBe(0);
  });

  it('pays the inverter’s p0 + k1·P + k2·P² and the one-way efficiency: C h (1 - cut-off) η 60 ÷ (P + p0 + k1·P + k2·P²)', () => {
    const { row } = live({
      units: [
        {
          capacityWh: 3200,
          inverter: { idleW: 28, lossPerW: 0.035, lossPerW2: 8e-6 },
          battery: { modules: 2, healthFraction: 0.95, cutOffFraction: 0.12, restartFraction: 0.2 },
          module: { dischargeEfficiency: 0.96 },
        },
      ],
      circuits: { load: { watts: 617.25 } },
    });
    const usableWh = 2 * 3200 * 0.95 * (1 - 0.12);
    const drainW = (617.25 + 28 + 0.035 * 617.25 + 8e-6 * 617.25 * 617.25) / 0.96;
    expectClose(row['runtimeMinutes']!, (usableWh / drainW) * 60);
    expectClose(row['inverterLossWh']!, (row['runtimeMinutes']! / 60) * (drainW * 0.96 - 617.25));
    expectClose(row['batteryLossWh']!, usableWh * (1 - 0.96));
  });

  it('starts from its starting charge: C (start - cut-off)', () => {
    const { row } = live({
      units: [{ battery: { startFraction: 0.6, cutOffFraction: 0.1, restartFraction: 0.2 } }],
      circuits: { load: { watts: 500 } },
    });
    expectClose(row['runtimeMinutes']!, (6000 * 0.5 * 60) / 500);
  });

  it('is over only after the grace: runtime + grace', () => {
    const { row } = live({ circuits: { load: { watts: 900, graceMinutes: 125 } } });
    expectClose(row['runtimeMinutes']!, (6000 * 60) / 900 + 125);
    expectClose(row['firstBlackoutMinute']!, (6000 * 60) / 900);
  });

  it('is not over where nothing is wanted: the grace counts minutes wanted, not minutes passed', () => {
    // wanted in the first half of every hour; empty after 6 h 20 min of wanting, at 12:20; 25 minutes of grace are
    // 10 wanted until 12:30 and 15 from 13:00
    const { row } = live({
      units: [{ capacityWh: 3800 }],
      circuits: { load: { watts: (m) => (m % 60 < 30 ? 600 : 0), graceMinutes: 25 } },
    });
    expectClose(row['runtimeMinutes']!, 13 * 60 + 15);
  });

  it('loses self-discharge at every full hour: stored is multiplied by 1 - s ÷ 730.5', () => {
    const hours = 6;
    const { trace } = live({
      units: [{ battery: { startFraction: 0.5 }, module: { selfDischargePerMonthFraction: 0.3 } }],
      circuits: { load: { watts: 0 } },
      hours: hours + 1,
    });
    const kept = 1 - 0.3 / 730.5;
    expectClose(trace.units[0]!.storedWh[hours * 60]!, 3000 * kept ** hours);
  });

  it('is censored at the horizon when the bank outlives it', () => {
    const { row } = live({ circuits: { load: { watts: 100 } }, hours: 30 });
    expect(row['censored']).toBe(1);
    expect(row['runtimeMinutes']).toBe(30 * 60);
    expect(causeOf(row)).toBe('still running');
    expect(row['endUnit']).toBeNaN();
    expectClose(row['storedEndWh']!, 6000 - 100 * 30);
  });
});

describe('a pair of units', () => {
  it('empties the leg with the smaller C ÷ P first, and names it', () => {
    const { row, trace } = live({
      units: [{ capacityWh: 6000 }, { capacityWh: 4000 }],
      circuits: { a: { watts: 800, leg: 'L1' }, b: { watts: 500, leg: 'L2' } },
    });
    expectClose(row['runtimeMinutes']!, (6000 * 60) / 800); // 450 < 480
    expect(row['endUnit']).toBe(0);
    expectClose(row['firstBlackoutMinute']!, (4000 * 60) / 500);
    expectClose(row['minutesUnit0Down']!, 48 * 60 - 450);
    expectClose(row['minutesUnit1Down']!, 48 * 60 - 480);
    expect(trace.units[1]!.mode[479]).toBe('on');
  });

  it('takes half of a 240 V load from each bank, and gives it up when the first is empty', () => {
    const { row, trace } = live({
      units: [{ capacityWh: 6000 }, { capacityWh: 3000 }],
      circuits: { pump: { watts: 600, leg: 'both', tier: 2 }, lamp: { watts: 100, leg: 'L1' } },
    });
    const first = (3000 * 60) / 300;
    expectClose(row['first240LossMinute']!, first);
    expectClose(trace.units[0]!.loadW[0]!, 400);
    expectClose(trace.units[1]!.loadW[0]!, 300);
    // what is left in the first bank then feeds the lamp alone
    expectClose(row['runtimeMinutes']!, first + ((6000 - (400 * first) / 60) * 60) / 100);
    expect(row['endUnit']).toBe(0);
  });

  it('that stops together goes dark with the first empty bank, and its partner is named as the cause', () => {
    const { row } = live({
      units: [{ capacityWh: 6000 }, { capacityWh: 3000 }],
      pair: { stopsTogether: true },
      circuits: { lamp: { watts: 100, leg: 'L1' }, fan: { watts: 450, leg: 'L2', tier: 2 } },
    });
    expectClose(row['runtimeMinutes']!, (3000 * 60) / 450);
    expect(causeOf(row)).toBe('partner stopped');
    expectClose(row['firstBlackoutMinute']!, 400);
  });

  it('loads the neutral with the difference of its legs: |P1 - P2| ÷ 120 V', () => {
    const { trace } = live({
      units: [{}, {}],
      circuits: {
        a: { watts: 900, leg: 'L1' },
        b: { watts: 300, leg: 'L2' },
        pump: { watts: 1000, leg: 'both' },
      },
      hours: 2,
    });
    expectClose(trace.neutralA[30]!, 600 / 120);
  });
});

describe('the outcome row', () => {
  it('books served and unserved per tier: P × time with and without power', () => {
    const { row } = live({ circuits: { a: { watts: 500 }, b: { watts: 250, tier: 4 } }, hours: 24 });
    const runtimeHours = 6000 / 750;
    expectClose(row['servedTier1Wh']!, 500 * runtimeHours);
    expectClose(row['unservedTier1Wh']!, 500 * (24 - runtimeHours));
    expectClose(row['servedTier4Wh']!, 250 * runtimeHours);
    expectClose(row['unservedTier4Wh']!, 250 * (24 - runtimeHours));
  });

  it('counts a need’s unmet minutes beyond the grace, from the first one on', () => {
    const { row } = live({ circuits: { a: { watts: 1000, graceMinutes: 60, need: 'talk' } }, hours: 24 });
    expectClose(row['need:talk:firstMinute']!, 360 + 60);
    expectClose(row['need:talk:minutes']!, 24 * 60 - 360 - 60);
  });

  it('agrees with the trace', () => {
    const { row, trace } = live({ circuits: { a: { watts: 777 } }, hours: 24 });
    expectClose(sumOf(trace.circuits[0]!.servedW) / 60, row['servedTier1Wh']!);
    expectClose(sumOf(trace.circuits[0]!.wantedW) / 60, row['servedTier1Wh']! + row['unservedTier1Wh']!);
  });
});
