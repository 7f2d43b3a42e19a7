/** What each kind of rule has on, minute by minute. Minutes count from the outage's start, at midnight. */
import { describe, expect, it } from 'vitest';
import { live, minutesWhere, type RuleInput, type TinyHouse } from './tiny-house.ts';

/** Minutes in which the circuit `extra` of tier 3, which the rule holds, has power: one unit of 60 kWh, 600 W of tier 1. */
function under(rule: RuleInput, house: Partial<TinyHouse> = {}): number[] {
  const { trace } = live({
    units: [{ capacityWh: 60_000 }],
    circuits: { base: { watts: 600 }, extra: { watts: 60, tier: 3 } },
    rules: [rule],
    hours: 24,
    ...house,
  });
  return minutesWhere(trace.circuits.find((c) => c.id === 'extra')!.servedW, (w) => w > 0);
}

const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);
const extra = { ids: ['extra'] };
const byPerson = (person: TinyHouse['person']): Partial<TinyHouse> => ({ carriedOutBy: 'person', person });

describe('a clock rule', () => {
  const rule: RuleInput = { by: 'clock', circuits: extra, onDuring: ['07:00-08:00', '23:30-00:10'] };

  it('has its circuits on exactly in its windows', () => {
    expect(under(rule)).toEqual([...range(0, 10), ...range(420, 480), ...range(1410, 1440)]);
  });

  it('by a person waits for the first look where it falls due asleep', () => {
    // on at the start, left on until waking at 06:30; 07:00–08:00; the evening's window begins after bedtime
    expect(under(rule, byPerson({ awake: '06:30-22:30' }))).toEqual([...range(0, 390), ...range(420, 480)]);
  });
});

describe('a ration rule', () => {
  it('has its circuits on for the first minutes of every hour', () => {
    const on = under({ by: 'ration', circuits: extra, onMinutesPerHour: 20 });
    expect(on).toEqual(range(0, 1440).filter((m) => m % 60 < 20));
  });

  it('by a person is left on, or off, overnight as it says, from bedtime to waking', () => {
    const from = { startLocal: '2026-03-10T12:00', ...byPerson({ awake: '06:30-22:30' }) };
    const onAt = (whileAsleep: 'on' | 'off') =>
      under({ by: 'ration', circuits: extra, onMinutesPerHour: 20, whileAsleep }, from).map(
        (m) => (m + 720) % 1440,
      );
    const awake = range(390, 1349).filter((m) => m % 60 < 20);
    const night = [...range(1349, 1440), ...range(0, 390)];
    const inOrder = (minutes: number[]) => minutes.sort((a, b) => ((a + 720) % 1440) - ((b + 720) % 1440));
    expect(onAt('off')).toEqual(inOrder(awake));
    expect(onAt('on')).toEqual(inOrder([...awake, ...night]));
  });
});

describe('a rule for the whole outage', () => {
  it('has its circuits off from the first minute to the last', () => {
    expect(under({ by: 'outage', circuits: extra })).toEqual([]);
  });
});

describe('a sun rule', () => {
  // 400 W from 08:07 to 16:00
  const solarW = (_: number, m: number) => (m >= 487 && m < 960 ? 400 : 0);

  it('looks every quarter of an hour at the mean of the last fifteen minutes', () => {
    const on = under({ by: 'sun', circuits: extra, solarAboveW: 200 }, { solarW });
    // at 08:15 the mean is 400 · 8 ÷ 15 = 213 W; at 16:15 it is 0
    expect(on).toEqual(range(495, 975));
    // a little more is reached a quarter later only
    expect(under({ by: 'sun', circuits: extra, solarAboveW: 214 }, { solarW })[0]).toBe(510);
  });

  it('by a person is thought of only when they look', () => {
    const on = under(
      { by: 'sun', circuits: extra, solarAboveW: 200 },
      { solarW, ...byPerson({ awake: '06:30-22:30', looksEveryMinutes: 60 }) },
    );
    expect(on).toEqual(range(510, 990)); // looks at 08:30 and 16:30
  });
});

describe('a charge rule', () => {
  const charge = (reads: 'lowest' | 'own'): RuleInput => ({
    by: 'charge',
    circuits: extra,
    dropBelowFraction: 0.7,
    restoreAboveFraction: 0.8,
    reads,
  });
  const rule = charge('lowest');

  const small: Partial<TinyHouse> = { units: [{}] };

  it('by a switch drops with the minute after the bank falls below, and restores with the one after it rises above', () => {
    // 660 W draw 0.3 of 6,000 Wh in 163.6 minutes; from 240 on 1,200 W of sun less 600 W of load charge
    const on = under(rule, { ...small, solarW: (_, m) => (m < 240 ? 0 : 1200), hours: 12 });
    const offAt = Math.ceil((0.3 * 6000 * 60) / 660);
    const storedAt240 = 6000 - (660 * offAt + 600 * (240 - offAt)) / 60;
    const backAt = 240 + Math.ceil(((0.8 * 6000 - storedAt240) * 60) / 600);
    expect(on).toEqual([...range(0, offAt), ...range(backAt, 720)]);
  });

  it('by a person drops at the first look after the bank fell below', () => {
    const on = under(rule, {
      ...small,
      ...byPerson({ awake: '00:00-24:00', looksEveryMinutes: 45 }),
      hours: 8,
    });
    expect(on).toEqual(range(0, 180)); // below 0.7 at 163.6; looks at 135 and 180
  });

  it('reads the lower of two banks, or only that of the circuit’s own leg', () => {
    const pair: Partial<TinyHouse> = {
      units: [{}, { capacityWh: 1000 }],
      circuits: { base: { watts: 60 }, other: { watts: 100, leg: 'L2' }, extra: { watts: 60, tier: 3 } },
      hours: 5,
    };
    expect(under(charge('own'), pair)).toEqual(range(0, 300));
    // 0.3 of 1,000 Wh at 100 W: 180 minutes, and below it with the next
    expect(under(rule, pair)).toEqual(range(0, 181));
  });
});

describe('a sleeping unit', () => {
  const pair = (circuits: 'moved' | 'dropped'): TinyHouse => ({
    units: [{ inverter: { idleW: 30, standbyW: 5 } }, { inverter: { idleW: 30, standbyW: 5 } }],
    circuits: {
      a: { watts: 200, leg: 'L1' },
      b: { watts: 100, leg: 'L2', graceMinutes: 600 },
      pump: { watts: 400, leg: 'both', tier: 2 },
    },
    rules: [{ by: 'sleep', unit: 'west', during: ['01:00-02:00'], circuits }],
    hours: 3,
  });
  const asleep = range(60, 120);

  it('takes 240 V with it, eats its standby watts, and leaves its circuits to its partner when they are moved', () => {
    const { trace, row } = live(pair('moved'));
    expect(minutesWhere(trace.circuits[2]!.servedW, (w) => w === 0)).toEqual(asleep);
    expect(minutesWhere(trace.circuits[1]!.servedW, (w) => w === 0)).toEqual([]);
    for (const m of asleep) {
      expect(trace.units[0]!.loadW[m]).toBeCloseTo(300, 9);
      expect(trace.units[1]!.loadW[m]).toBe(0);
      expect(trace.units[1]!.inverterLossW[m]).toBeCloseTo(5, 9);
      expect(trace.units[1]!.mode[m]).toBe('asleep');
    }
    expect(trace.units[0]!.loadW[30]).toBeCloseTo(400, 9);
    expect(row['minutesUnit1Down']).toBe(0);
    expect(row['first240LossMinute']).toBe(60);
  });

  it('takes its own circuits with it when they are dropped', () => {
    const { trace } = live(pair('dropped'));
    expect(minutesWhere(trace.circuits[1]!.servedW, (w) => w === 0)).toEqual(asleep);
    expect(minutesWhere(trace.units[0]!.loadW, (w) => Math.abs(w - 200) < 1e-9)).toEqual(asleep);
  });

  it('sleeps below its level and wakes above the other, charged by its own sun', () => {
    const { trace } = live({
      ...pair('moved'),
      rules: [
        { by: 'sleep', unit: 'west', sleepBelowFraction: 0.9, wakeAboveFraction: 0.95, circuits: 'moved' },
      ],
      solarW: (u, m) => (u === 1 && m >= 180 ? 605 : 0),
      hours: 6,
    });
    const modes = trace.units[1]!.mode;
    const fallsAsleep = modes.indexOf('asleep');
    // 330 W from 6,000 Wh: below 0.9 after 109.1 minutes
    expect(fallsAsleep).toBe(Math.floor((600 * 60) / 330));
    const storedAt180 = trace.units[1]!.storedWh[179]!;
    const wakes = modes.indexOf('on', 180);
    expect(wakes).toBe(180 + Math.floor(((5700 - storedAt180) * 60) / 600));
  });

  it('is woken while its partner is down', () => {
    const { trace } = live({
      ...pair('moved'),
      units: [{ inverter: { continuousW: 350, surgeW: 5000 } }, {}],
      circuits: { a: { watts: (m) => (m === 90 ? 300 : 200), leg: 'L1' }, b: { watts: 100, leg: 'L2' } },
    });
    expect(trace.units[0]!.mode[90]).toBe('tripped');
    expect(trace.units[1]!.mode[89]).toBe('asleep');
    expect(trace.units[1]!.mode[90]).toBe('on');
    expect(trace.circuits[1]!.servedW[90]).toBeCloseTo(100, 9);
  });
});
