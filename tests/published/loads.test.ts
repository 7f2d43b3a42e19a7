/**
 * Appliances against published figures.
 *
 * Grades: R1, R2 = read in one, two independent texts; C = recomputed from the cited rule; memory = a figure from
 * memory, unverified, kept as a plausibility band and not as proof.
 */
import { readFileSync } from 'node:fs';
import { fromCSV } from 'arquero';
import { describe, expect, it } from 'vitest';
import { prepareStudy } from '../../packages/sim/src/index.ts';
import { traceDraw } from '../../packages/sim/src/trials/trace-draw.ts';
import { readTypicalAppliances } from '../../packages/sim/src/usage/typical-appliances.ts';
import type { ThermostatWant } from '../../packages/sim/src/usage/usage-draw.ts';
import { circuitOf, drawOf, wattHours, type Written } from '../units/usage/household-under-test.ts';
import { bareCircuit, bareScenario, bareUnit } from './bare-household.ts';
import { ErrorBudget } from './error-budget.ts';

const shipped = readFileSync(new URL('../../data/appliances.csv', import.meta.url), 'utf8');
const typical = readTypicalAppliances(shipped);
const columns = fromCSV(shipped, { autoType: false }).objects({ limit: Infinity }) as Record<
  string,
  string | null
>[];

function wantOf(written: Written): ThermostatWant {
  return drawOf([circuitOf('x', written)], { minutes: 60 }).thermostats[0]!;
}

interface Course {
  /** Temperature after each minute, °C. */
  readonly celsius: number[];
  /** Mean watts over all minutes. */
  readonly meanW: number;
  /** Minutes in which it began to run. */
  readonly starts: number[];
}

/**
 * The plain minute step that the model states (MODEL.md, thermostats), in surroundings of one temperature:
 * T ← T + (surroundings + offset - T)/τ - sign·pull while running. The simulation itself is held against it below.
 */
function course(
  want: ThermostatWant,
  startC: number,
  surroundingsC: number,
  minutes: number,
  powered: boolean,
): Course {
  const { sign, setC, bandC, timeConstantMinutes, pullCPerMinute } = want;
  const celsius: number[] = [];
  const starts: number[] = [];
  let [now, calling, ran] = [startC, false, 0];
  for (let m = 0; m < minutes; m++) {
    const beyond = sign * (now - setC);
    const calls = calling ? beyond >= -bandC : beyond > bandC;
    if (calls && !calling) starts.push(m);
    calling = calls;
    const runs = calling && powered;
    if (runs) ran++;
    now +=
      (surroundingsC + want.surroundingsOffsetC - now) / timeConstantMinutes -
      (runs ? sign * pullCPerMinute : 0);
    celsius.push(now);
  }
  return { celsius, meanW: (ran / minutes) * want.runningW, starts };
}

/** The simulation's own minutes for one typical appliance in a room of `indoorC`; without power from the first minute on. */
function simulated(id: string, indoorC: number, hours: number, powered: boolean) {
  const appliance = { ...typical.get(id), ...(powered ? {} : { bandC: 0.02 }) };
  const bare = bareScenario({
    units: [bareUnit({ capacityWh: powered ? 1e6 : 1e-6 })],
    circuits: [bareCircuit('cold', 'L1', appliance)],
    days: hours / 24,
  });
  const study = prepareStudy({ ...bare, site: { ...bare.site, indoorC } }, { seed: 'loads' });
  const { temperatureC, servedW } = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 }).circuits[0]!;
  return { temperatureC: temperatureC!, servedW, want: wantOf(appliance) };
}

const kWhPerYear = (meanW: number) => (meanW * 8760) / 1000;

describe('duty cycles and yearly energy', () => {
  it.each([
    [
      'US DOE: a refrigerator of 725 W runs a third of the time (R1): 5.8 kWh a day (C)',
      725,
      1 / 3,
      5.8 * 365,
    ],
    ['EIA RECS 2001: 1,462 kWh a year (R1), at 725 W a duty of 0.230 (C)', 725, 0.2302, 1462],
    ['600 kWh a year at 150 W is a duty of 0.457 (C)', 150, 0.4566, 600],
    [
      'EIA RECS 2001: a freezer’s 1,150 kWh a year is a mean of 131.3 W (R1+C), at 400 W a duty of 0.328',
      400,
      0.3282,
      1150,
    ],
  ])('%s', (_, runningW, dutyFraction, expectedKWh) => {
    const fridge: Written = {
      kind: 'duty-cycled',
      runningW,
      dutyFraction,
      onMinutes: 14,
      dayScatterFraction: 0,
    };
    const meanW = wattHours(drawOf([circuitOf('kitchen', fridge)], { days: 365 })) / 8760;
    expect(Math.abs(kWhPerYear(meanW) / expectedKWh - 1)).toBeLessThan(0.005);
  });

  it('a worked example of the US DOE list: 214 W for 4 h a day is 312 kWh a year (R1+C)', () => {
    const television: Written = { kind: 'scheduled', runningW: 214, windows: ['18:00-22:00'] };
    const energyWh = wattHours(
      drawOf([circuitOf('den', television)], { days: 365, timeZone: 'America/Phoenix' }),
    );
    expect(energyWh / 1000).toBeCloseTo(312.4, 1);
  });

  it('typical appliances use what their label or survey says a year, in 21 °C rooms (bands and sources in the table)', () => {
    const labelled = columns.filter((row) => row['labelKWhPerYearLow'] !== null);
    for (const row of labelled) {
      const written = typical.get(row['id']!)!;
      const [low, high] = [Number(row['labelKWhPerYearLow']), Number(row['labelKWhPerYearHigh'])];
      const found = kWhPerYear(
        written['kind'] === 'thermostat' ? thermostatMeanW(written) : drawnMeanW(written),
      );
      expect(found, `${row['id']} of ${low} to ${high} kWh a year`).toBeGreaterThan(low);
      expect(found, `${row['id']} of ${low} to ${high} kWh a year`).toBeLessThan(high);
    }
    expect(labelled.length).toBeGreaterThanOrEqual(12);
  });
});

function thermostatMeanW(written: Written): number {
  const want = wantOf(written);
  return course(want, want.setC, Number(written['dutySurroundingsC']), 60 * 1440, true).meanW;
}

function drawnMeanW(written: Written): number {
  const circuits = [circuitOf('x', { ...written, dayScatterFraction: 0 })];
  const draws = 100;
  let total = 0;
  for (let index = 0; index < draws; index++) total += wattHours(drawOf(circuits, { days: 60, index }));
  return total / (draws * 60 * 24);
}

describe('thermostats against the exponential law of cooling', () => {
  /**
   * T(t) = Ta - (Ta - T0) e^(-t/τ) is exact for constant surroundings Ta. Stepping by the minute gives (1 - 1/τ)^n in
   * place of e^(-n/τ): ahead by (Ta - T0) · (t/τ) e^(-t/τ) / (2τ) to first order, at most (Ta - T0) / (2 e τ), at t = τ.
   */
  const worstC = (differenceC: number, tauMinutes: number) => differenceC / (2 * Math.E * tauMinutes);

  it.each([
    ['refrigerator', 'refrigerator', 2.8, 22],
    ['full freezer', 'freezer-chest', -17.8, 22],
    ['half-full freezer', 'freezer-chest-half-full', -17.8, 35],
    ['a room in winter', 'furnace-blower-ecm', 20, -15],
  ])(
    '%s, off, for five time constants: off by no more than the step explains',
    (_, id, startC, surroundingsC) => {
      const want = wantOf(typical.get(id)!);
      const tau = want.timeConstantMinutes;
      const settlesC = surroundingsC + want.surroundingsOffsetC;
      const errors = new ErrorBudget();
      course(want, startC, surroundingsC, Math.round(5 * tau), false).celsius.forEach((celsius, m) => {
        errors.add(celsius, settlesC - (settlesC - startC) * Math.exp(-(m + 1) / tau), `minute ${m + 1}`);
      });
      const bound = worstC(Math.abs(settlesC - startC), tau);
      expect(errors.count).toBeGreaterThan(5000);
      expect(errors.worst).toBeLessThan(bound * 1.001);
      expect(errors.worst).toBeGreaterThan(bound * 0.99); // the error is the step's and nothing else's
      expect(errors.worst).toBeLessThan(0.006);
    },
  );

  it('running, settles where the exponential law with its pull does', () => {
    const want = wantOf(typical.get('refrigerator')!);
    const tau = want.timeConstantMinutes;
    const endless = { ...want, setC: -200 };
    const settlesC = 21 - want.pullCPerMinute * tau;
    const errors = new ErrorBudget();
    course(endless, 20, 21, 3000, true).celsius.forEach((celsius, m) => {
      errors.add(celsius, settlesC - (settlesC - 20) * Math.exp(-(m + 1) / tau), `minute ${m + 1}`);
    });
    expect(errors.count).toBe(3000);
    expect(errors.worst).toBeLessThan(worstC(Math.abs(settlesC - 20), tau) * 1.001);
  });

  it.each([
    ['refrigerator', 21],
    ['freezer-chest', 28],
    ['refrigerator-old', 15],
  ])('the simulation takes the same minute steps: %s in a room of %d °C, for 60 h', (id, indoorC) => {
    const { temperatureC, servedW, want } = simulated(id, indoorC, 60, true);
    const errors = new ErrorBudget();
    let running = 0;
    for (let m = 1; m < temperatureC.length; m++) {
      const before = temperatureC[m - 1]!;
      const pull = servedW[m]! > 0 ? want.pullCPerMinute : 0;
      if (pull > 0) running++;
      errors.add(
        temperatureC[m]!,
        before + (indoorC - before) / want.timeConstantMinutes - pull,
        `minute ${m}`,
      );
    }
    const step = want.pullCPerMinute;
    expect(errors.count).toBe(60 * 60 - 1);
    expect(errors.worst, errors.worstAt).toBeLessThan(1e-9);
    expect(running).toBeGreaterThan(300);
    expect(Math.max(...temperatureC)).toBeLessThan(want.setC + want.bandC + step);
    expect(Math.min(...temperatureC)).toBeGreaterThan(want.setC - want.bandC - step);
  });

  it('every thermostatic row runs for its stated share at its stated surroundings, within 2 % of it', () => {
    const errors = new ErrorBudget();
    for (const [id, written] of typical) {
      if (written['kind'] !== 'thermostat') continue;
      const meanW = thermostatMeanW(written);
      errors.add(meanW / Number(written['runningW']) / Number(written['dutyFraction']), 1, id);
    }
    expect(errors.count).toBeGreaterThanOrEqual(10);
    expect(errors.worst, errors.worstAt).toBeLessThan(0.02);
  });

  it('compressors and blowers cycle every 20 to 90 minutes at their stated surroundings (common practice, no source)', () => {
    let compared = 0;
    for (const [id, written] of typical) {
      if (written['kind'] !== 'thermostat') continue;
      const want = wantOf(written);
      const { starts } = course(want, want.setC, Number(written['dutySurroundingsC']), 10 * 1440, true);
      const cycle = (starts.at(-1)! - starts[0]!) / (starts.length - 1);
      expect(cycle, id).toBeGreaterThan(20);
      expect(cycle, id).toBeLessThan(90);
      compared++;
    }
    expect(compared).toBeGreaterThanOrEqual(10);
  });
});

describe('switched off, against US government food-safety guidance (CDC, FDA, USDA, FoodSafety.gov; R2)', () => {
  it.each([
    ['a refrigerator at 2.8 °C keeps 4 h with the door shut', 'refrigerator', 4],
    ['an old refrigerator does as well', 'refrigerator-old', 4],
    ['a full freezer at -17.8 °C keeps 48 h', 'freezer-chest', 48],
    ['a full upright freezer does as well', 'freezer-upright', 48],
    ['a half-full freezer keeps 24 h', 'freezer-chest-half-full', 24],
  ])('%s (to 4.4 °C in a room of 22 °C)', (_, id, hours) => {
    const { temperatureC, want } = simulated(id, 22, 60, false);
    const passes = temperatureC.findIndex((celsius) => celsius > want.limitC!) + 1;
    expect(want.setC).toBe(id.startsWith('refrigerator') ? 2.8 : -17.8);
    expect(want.limitC).toBe(4.4);
    expect(Math.abs(passes / 60 - hours) / hours).toBeLessThan(0.02); // it begins within 0.02 °C of its setting
  });
});

describe('room air conditioners', () => {
  it('draw BTU/h over the US federal minimum efficiency from 2014 (memory; watts C)', () => {
    const table: readonly (readonly [number, number, number])[] = [
      [5000, 11.0, 454.5],
      [8000, 10.9, 733.9],
      [12000, 10.9, 1100.9],
    ];
    for (const [btuPerHour, eer, watts] of table) {
      expect(btuPerHour / eer).toBeCloseTo(watts, 1);
      expect(typical.get(`room-air-conditioner-${btuPerHour}`)?.['runningW']).toBe(Math.round(watts));
    }
    expect([...typical.keys()].filter((id) => id.startsWith('room-air-conditioner-'))).toHaveLength(
      table.length,
    );
  });
});

describe('motor starting', () => {
  /** NEC 430.248 full-load and 430.251(A) locked-rotor amperes at 230 V. 1/2 hp R1; 3/4 hp full-load from memory. */
  const at230V = [
    { id: 'well-pump-half-hp', fullLoadA: 4.9, lockedRotorA: 29.4, codeGUpperKVA: 6.29 * 0.5 },
    { id: 'well-pump-three-quarter-hp', fullLoadA: 6.9, lockedRotorA: 41.4, codeGUpperKVA: 6.29 * 0.75 },
  ];

  it('locked-rotor current is six times full-load current for single-phase motors (NEC tables, R1)', () => {
    for (const { fullLoadA, lockedRotorA } of at230V) expect(lockedRotorA / fullLoadA).toBeCloseTo(6, 12);
  });

  it('every motor of the table starts at six times its watts: startingW = runningW + 5 motorW', () => {
    const motors = columns.filter((row) => row['motorW'] !== null);
    for (const row of motors) {
      const [runningW, motorW] = [Number(row['runningW']), Number(row['motorW'])];
      expect(motorW, row['id']!).toBeLessThanOrEqual(runningW);
      expect(typical.get(row['id']!)?.['startingW'], row['id']!).toBe(runningW + 5 * motorW);
    }
    expect(motors.length).toBeGreaterThanOrEqual(15);
    expect(columns.filter((row) => row['startingW'] !== null)).toHaveLength(motors.length);
  });

  it.each(at230V)(
    '$id starts below its locked-rotor volt-amperes and above code letter G (R2)',
    ({ id, lockedRotorA, codeGUpperKVA }) => {
      const startingW = Number(typical.get(id)?.['startingW']);
      expect(startingW).toBeLessThanOrEqual(lockedRotorA * 230);
      expect(startingW).toBeGreaterThan(codeGUpperKVA * 1000);
    },
  );

  it('a half-horsepower motor of code letter G takes up to 13.1 A at 240 V on starting (C)', () => {
    expect((6.29 * 0.5 * 1000) / 240).toBeCloseTo(13.1, 1);
  });
});

describe('typical watts against ranges of the US DOE Energy Savers list', () => {
  const ranges: readonly (readonly [string, number, number, string])[] = [
    ['refrigerator-old', 725, 725, 'R2'],
    ['microwave', 750, 1100, 'R2'],
    ['clothes-washer', 350, 500, 'R2'],
    ['dryer-electric', 1800, 5000, 'R2'],
    ['dishwasher', 1200, 2400, 'R2'],
    ['coffee-maker', 900, 1200, 'R2'],
    ['dehumidifier', 785, 785, 'R2'],
    ['ceiling-fan', 65, 175, 'R2'],
    ['window-fan', 55, 250, 'R2'],
    ['whole-house-fan', 240, 750, 'R2'],
    ['hair-dryer', 1200, 1875, 'R2'],
    ['space-heater', 750, 1500, 'R2'],
    ['clothes-iron', 1000, 1800, 'R2'],
    ['toaster', 800, 1400, 'R1'],
    ['water-heater', 4500, 5500, 'R1'],
    ['laptop', 50, 50, 'R1'],
    ['clock-radio', 10, 10, 'R1'],
    ['electric-blanket', 60, 100, 'R2'],
    ['furnace-blower-psc', 400, 700, 'memory'],
    ['furnace-blower-ecm', 100, 400, 'memory'],
    ['sump-pump', 600, 800, 'memory'],
    ['cpap', 10, 40, 'memory'],
    ['cpap-humidifier', 50, 90, 'memory'],
    ['modem-router', 10, 20, 'memory'],
    ['lights-led', 8 * 8, 8 * 10, 'memory'],
    ['refrigerator', 100, 200, 'memory'],
  ];

  it.each(ranges)('%s lies in %d to %d W (%s)', (id, low, high) => {
    const runningW = Number(typical.get(id)?.['runningW']);
    expect(runningW).toBeGreaterThanOrEqual(low);
    expect(runningW).toBeLessThanOrEqual(high);
  });

  it('every row that takes its watts from the list is checked above', () => {
    const taken = columns
      .filter((row) => /^(watts: )?US DOE/.test(row['source'] ?? ''))
      .map((row) => row['id']);
    expect(taken.length).toBeGreaterThanOrEqual(18);
    for (const id of taken) expect(ranges.map(([checked]) => checked)).toContain(id);
  });

  it('every row tells where its figures are from, and how far they are to be trusted', () => {
    for (const row of columns) {
      expect(row['source'], row['id']!).toMatch(
        /US DOE|EIA|NEC|US federal|common practice, no source|from memory/,
      );
      expect(row['grade'], row['id']!).toMatch(/R1|R2|C|M|none/);
    }
  });
});
