import { describe, expect, it } from 'vitest';
import {
  askDrawsHere,
  mattersTable,
  openJob,
  prepareStudy,
  runsToDo,
  runShard,
  whatMatters,
  type MattersJob,
  type Scenario,
} from '../../../../packages/sim/src/index.ts';
import { inputsOf } from '../../../../packages/sim/src/advice/matters/inputs.ts';
import { tinyScenario } from '../../step/tiny-house.ts';

/** 6,000 Wh and 250 W wanted without scatter: a day, but for what nobody knows. */
const plain = tinyScenario({
  circuits: { a: { watts: 200 } },
  units: [{ inverter: { idleW: 50 } }],
  hours: 72,
});
/** In the dark, so that the weather says nothing. */
const dark: Scenario = {
  ...plain,
  alternatives: plain.alternatives.map((a) => ({
    ...a,
    household: { ...a.household, units: a.household.units.map((u) => ({ ...u, solar: undefined })) },
  })),
};
const question = { alternative: 0, strategy: 0, seed: 'm', draws: 60 };

describe('inputsOf', () => {
  it('leaves out what is fixed: a set start, a full bank, a range without width', () => {
    expect(inputsOf(dark, 0).map((i) => i.id)).toEqual(['weather', 'usage', 'health', 'idle']);
    const known = { ...dark, unknowns: { healthFraction: [0.9, 0.9] as [number, number] } };
    expect(inputsOf(known, 0).map((i) => i.id)).toEqual(['weather', 'usage', 'idle']);
  });

  it('takes in a random start, a cycling bank and every range that is given', () => {
    const open: Scenario = {
      ...plain,
      outage: { ...plain.outage, startLocal: undefined, months: [3] },
      unknowns: {
        oneWayEfficiency: [0.9, 0.98],
        panelLossFraction: [0.1, 0.2],
        indoorFollowsFraction: [0, 0.6],
      },
      alternatives: plain.alternatives.map((a) => ({
        ...a,
        household: {
          ...a.household,
          units: a.household.units.map((u) => ({
            ...u,
            battery: { ...u.battery, startFraction: undefined, reserveFraction: 0.5 },
          })),
        },
      })),
    };
    expect(inputsOf(open, 0).map((i) => i.id)).toEqual([
      'weather',
      'usage',
      'start-day',
      'start-hour',
      'charge',
      'health',
      'idle',
      'efficiency',
      'panel-loss',
      'rooms',
    ]);
  });
});

describe('what matters', () => {
  it('knows a run that the horizon cuts, also where days are no whole number of minutes to a computer', async () => {
    const endless: Scenario = {
      ...dark,
      outage: { ...dark.outage, horizonDays: 2.2 }, // times 1440: 3168.0000000000005
      unknowns: { healthFraction: [0.8, 1] },
      alternatives: dark.alternatives.map((a) => ({
        ...a,
        household: {
          ...a.household,
          units: a.household.units.map((u) => ({
            ...u,
            battery: { ...u.battery, module: { ...u.battery.module, capacityWh: 1e6 } },
          })),
        },
      })),
    };
    const answer = await whatMatters(endless, { ...question, draws: 20 }, askDrawsHere);
    expect(answer.hiddenFraction).toBe(1);
    expect(answer.middle.medianDays.value).toBeNull();
  });

  it('for a house in which only health and idle watts act is those two, as worked out on paper', async () => {
    const scenario: Scenario = {
      ...dark,
      unknowns: { healthFraction: [0.8, 1], idleW: [49, 51] },
    };
    const answer = await whatMatters(scenario, question, askDrawsHere);
    const of = (id: string) => answer.inputs.find((i) => i.id === id)!;
    // T = 6000 h / (200 + idle) hours: 24 at health 1 and 50 W
    expect(answer.middle.nineInTenDays.value).toBeCloseTo(0.9, 9);
    expect(of('health').nineInTen.lowDays).toBeCloseTo(0.8, 9);
    expect(of('health').nineInTen.highDays).toBeCloseTo(1, 9);
    expect(of('health').nineInTen.differenceDays.value).toBeCloseTo(0.2, 9);
    expect(of('idle').nineInTen.differenceDays.value).toBeCloseTo((0.9 * 250) / 251 - (0.9 * 250) / 249, 9);
    for (const limit of Object.values(of('weather').nineInTen.differenceDays))
      expect(limit).toBeCloseTo(0, 12);
    // variance of an even value over a width w is w²/12: idle's share is (0.9·2/250)² to 0.2²
    expect(of('health').total.value).toBeGreaterThan(0.8); // 1 but for the noise of 60 rows
    expect(of('health').total.value).toBeLessThan(1.2);
    expect(of('idle').total.value).toBeLessThan(0.01);
    expect(of('weather').total.value).toBe(0);
    expect(of('usage').total.value).toBe(0);
    expect(answer.inputs[0]!.id).toBe('health');
    expect(answer.sdDays).toBeGreaterThan(0.04);
    expect(answer.sdDays).toBeLessThan(0.08); // 0.2/√12 = 0.058
  });

  it('is the same bits however the draws are cut', () => {
    const job: MattersJob = { job: 'matters', task: 'indices', scenario: plain, ...question };
    const whole = openJob(job)(0, 12);
    const run = openJob(job);
    const parts = [run(5, 12), run(0, 5)];
    for (const [name, column] of Object.entries(whole.columns))
      expect([...parts[1]!.columns[name]!, ...parts[0]!.columns[name]!], name).toEqual([...column]);
  });

  it('with nothing unknown but chance runs the study’s own draws', () => {
    const battery = plain.alternatives[0]!.household.units[0]!.battery;
    const scenario: Scenario = {
      ...plain,
      unknowns: { healthFraction: [1, 1], idleW: [50, 50] },
      alternatives: plain.alternatives.map((a) => ({
        ...a,
        household: {
          ...a.household,
          units: [
            {
              ...a.household.units[0]!,
              battery: { ...battery, startFraction: undefined, reserveFraction: 0.3 },
            },
          ],
        },
      })),
    };
    const rows = openJob({ job: 'matters', task: 'indices', scenario, ...question })(0, 10);
    const study = runShard(prepareStudy(scenario, { seed: 'm' }), 0, 20);
    const runtimes = [...study.columns['runtimeMinutes']!];
    expect([...rows.columns['a']!]).toEqual(runtimes.filter((_, i) => i % 2 === 0));
    expect([...rows.columns['b']!]).toEqual(runtimes.filter((_, i) => i % 2 === 1));
    expect(new Set(runtimes).size).toBeGreaterThan(15);
  });

  it('tells progress up to the runs it said, and gives a table of one row per input', async () => {
    const seen: number[] = [];
    const answer = await whatMatters(
      plain,
      { ...question, draws: 20, onProgress: (done) => seen.push(done) },
      askDrawsHere,
    );
    expect(seen.at(-1)).toBe(runsToDo(plain, { ...question, draws: 20 }));
    expect(seen).toEqual([...seen].sort((x, y) => x - y));
    const table = mattersTable(answer);
    expect(table.numRows()).toBe(4);
    expect(table.columnNames()).toContain('nineInTenDifferenceDaysLow');
    expect(answer.provenance).toMatchObject({ seed: 'm', draws: 20 });
  });

  it('refuses a run that is not there', async () => {
    await expect(whatMatters(plain, { ...question, strategy: 7 }, askDrawsHere)).rejects.toThrow(
      'no alternative 0 with strategy 7',
    );
    await expect(whatMatters(plain, { ...question, alternative: 3 }, askDrawsHere)).rejects.toThrow(
      'no alternative 3 with strategy 0',
    );
  });
});
