import { describe, expect, it } from 'vitest';
import { ProfileFileError } from '../../../packages/sim/src/usage/profile-file-error.ts';
import { profileHints, profileZoneHints } from '../../../packages/sim/src/usage/profile-hints.ts';
import { readProfile } from '../../../packages/sim/src/usage/read-profile.ts';

/** Rows every `step` minutes from `from`, the watts being the time of day in minutes. */
function rows(count: number, step: number, from: number, time: (minute: number) => string): string {
  return Array.from({ length: count }, (_, k) => `${time(from + k * step)},${(from + k * step) % 1440}`).join(
    '\n',
  );
}
const pad = (value: number) => String(value).padStart(2, '0');
const clock = (minute: number) => `${pad(Math.floor(minute / 60) % 24)}:${pad(minute % 60)}`;
const date = (minute: number) => `2026-01-${pad(10 + Math.floor(minute / 1440))}T${clock(minute)}`;
const faultsOf = (text: string) => {
  try {
    readProfile(text, 'shed.csv');
  } catch (error) {
    if (error instanceof ProfileFileError)
      return error.findings.map(({ line, text: told }) => `${line}: ${told}`);
  }
  return [];
};

describe('readProfile', () => {
  it.each([
    ['dates with a T', 'time,watts', (m: number) => date(m)],
    ['dates with a space and seconds', 'Date,Power (W)', (m: number) => `${date(m).replace('T', ' ')}:00`],
    ['dates with a zone, whose clock reading counts', 'timestamp,powerW', (m: number) => `${date(m)}-05:00`],
    ['clock times past midnight', 'time of day,watt', (m: number) => clock(m)],
    ['minutes after midnight', 'minutes,load_w', (m: number) => String(m)],
  ])('reads %s and lays every reading at its time of day', (_, header, time) => {
    const profile = readProfile(`${header}\n${rows(2 * 96, 15, 870, time)}`, 'shed.csv');
    expect(profile.intervalMinutes).toBe(15);
    expect(profile.watts).toEqual(Array.from({ length: 192 }, (__, k) => (k * 15) % 1440));
  });

  it('reads semicolons with decimal commas, quotes, a byte order mark, comments and blank lines', () => {
    const text = '\uFEFF"Time";"W"\r\n# from the meter\r\n"00:00";"1,5"\r\n\r\n"12:00";"2,25"\r\n';
    expect(readProfile(text, 'shed.csv')).toEqual({ intervalMinutes: 720, watts: [1.5, 2.25] });
  });

  it('reads readings of seconds', () => {
    const text = `time,watts\n${Array.from({ length: 9 }, (_, k) => `10:0${Math.floor((k * 7) / 60)}:${pad((k * 7) % 60)},${k}`).join('\n')}`;
    expect(readProfile(text, 'shed.csv').intervalMinutes).toBeCloseTo(7 / 60, 12);
  });

  it('keeps whole days and lets the rest go, so that repeating keeps the time of day', () => {
    expect(readProfile(`time,watts\n${rows(50, 60, 0, date)}`, 'shed.csv').watts).toHaveLength(48);
  });

  it('turns an interval that does not divide a day into minutes', () => {
    const profile = readProfile(`time,watts\n${rows(206, 7, 0, date)}`, 'shed.csv');
    expect([profile.intervalMinutes, profile.watts.length, profile.watts[8]]).toEqual([1, 1440, 7]);
  });

  it('leaves a record of hours as it is', () => {
    expect(readProfile('time,watts\n18:00,5\n18:30,6\n19:00,7', 'shed.csv')).toEqual({
      intervalMinutes: 30,
      watts: [5, 6, 7],
    });
  });

  it('tells every fault by its line, in order', () => {
    const text = [
      'time,watts',
      '00:00,10',
      '00:15,-3',
      '00:30,',
      '00:45,ten',
      '01:30,12',
      '01:40,12',
      '25:00,12',
      '01:55,12',
      '2026-01-01T02:10,5',
    ];
    expect(faultsOf(text.join('\n'))).toMatchInlineSnapshot(`
      [
        "3: the watts are -3; a load cannot be below 0 (power sent back is not a load)",
        "4: the watts are missing; expected a number",
        "5: the watts are "ten"; expected a number",
        "6: a gap: 2 readings are missing before this line",
        "7: 10 min after the line before; the other lines are 15 min apart",
        "8: the time is "25:00"; expected a clock time such as 18:00, as in the lines above",
        "10: the time is "2026-01-01T02:10"; expected a clock time such as 18:00, as in the lines above",
      ]
    `);
  });

  it.each([
    ['an empty file', ''],
    ['only blank lines', '\n\n'],
    ['no known columns', 'a,b\n1,2'],
    ['kilowatts', 'time,power_kW\n00:00,0.3\n00:15,0.4'],
    ['kilowatts, written otherwise', 'time,loadKW\n00:00,0.3\n00:15,0.4'],
    ['a power without a unit', 'time,power\n00:00,0.3\n00:15,0.4'],
    ['two columns of watts', 'time,fridge W,freezer W\n00:00,3,4\n00:15,4,5'],
    ['one reading', 'time,watts\n00:00,3'],
    [
      'a time that repeats',
      'time,watts\n2026-01-01T00:00,3\n2026-01-01T00:15,3\n2026-01-01T00:15,3\n2026-01-01T00:10,3',
    ],
    ['a date that is none', 'time,watts\n2026-02-30T00:00,3\n2026-03-01T00:00,3\n2026-03-02T00:00,3'],
    ['less than a minute', 'time,watts\n00:00:00,3\n00:00:10,3\n00:00:20,3'],
  ])('refuses %s', (_, text) => {
    expect(faultsOf(text).length).toBeGreaterThan(0);
    expect(faultsOf(text)).toMatchSnapshot();
  });

  const ifChanged =
    '; if the clocks were changed there, write the whole file in standard time, without daylight saving';

  it.each([
    [
      'forward, hourly',
      ['00:00', '01:00', '03:00', '04:00', '05:00'],
      `4: a gap: 1 reading is missing before this line${ifChanged}`,
    ],
    [
      'back, hourly',
      ['00:00', '01:00', '01:00', '02:00', '03:00'],
      `4: the time is the same as the line before${ifChanged}`,
    ],
    [
      'back, half-hourly',
      ['00:00', '00:30', '01:00', '01:30', '01:00', '01:30'],
      `6: the time is earlier than the line before${ifChanged}`,
    ],
    [
      'in no way that clocks are: two hours are missing',
      ['00:00', '01:00', '02:00', '05:00', '06:00'],
      '5: a gap: 2 readings are missing before this line',
    ],
  ])('tells of daylight saving where clocks may have gone %s', (_, times, told) => {
    const text = times.map((time) => `2026-03-08T${time},3`).join('\n');
    expect(faultsOf(`time,watts\n${text}`)).toEqual([told]);
  });

  /** Hourly or quarter-hourly readings of whole days of New York's clock, 100 W at one o'clock, 200 W at two … */
  function acrossAChange(from: string, days: number, step: number): string {
    const clock = new Intl.DateTimeFormat('sv-SE', {
      timeZone: 'America/New_York',
      dateStyle: 'short',
      timeStyle: 'short',
    });
    const begin = Date.parse(from);
    const end = begin + days * 86_400_000 + 3_600_000;
    const times = [];
    for (let at = begin; at < end; at += step * 60_000) times.push(clock.format(at));
    return `time,watts\n${times.map((time) => `${time},${100 * Number(time.slice(11, 13))}`).join('\n')}`;
  }

  it.each([
    ['forward', 60, '2026-03-07T05:00Z', [0, 100, 100, 300]],
    ['forward', 15, '2026-03-07T05:00Z', [0, 100, 100, 300]],
    ['back', 60, '2026-10-31T04:00Z', [0, 100, 200, 300]],
    ['back', 15, '2026-10-31T04:00Z', [0, 100, 200, 300]],
  ])(
    'goes on across clocks that go %s in the house’s zone, %i minutes apart, and says so',
    (way, step, from, small) => {
      const notes: string[] = [];
      const text = acrossAChange(from, 3, step);
      const zone = { timeZone: 'America/New_York', onNote: (note: string) => notes.push(note) };
      const { watts, intervalMinutes } = readProfile(text, 'shed.csv', zone);
      expect([intervalMinutes, watts.length]).toEqual([step, (3 * 1440) / step]);
      const usual = Array.from({ length: 24 }, (_, h) => 100 * h);
      const hourly = watts.filter((_, k) => (k * step) % 60 === 0);
      expect(hourly.slice(0, 24)).toEqual(usual);
      expect(hourly.slice(24, 48)).toEqual([...small, ...usual.slice(4)]);
      expect(hourly.slice(48)).toEqual(usual);
      expect(notes).toEqual([
        expect.stringMatching(new RegExp(`^the clocks went ${way} on 2026-(03-08|11-01): `)),
      ]);
    },
  );

  it('takes the mean of an hour that comes twice, and leaves gaps that no clock explains', () => {
    const back = [
      '00:00,10',
      '00:30,20',
      '01:00,30',
      '01:30,40',
      '01:00,50',
      '01:30,60',
      '02:00,70',
      '02:30,80',
    ];
    const text = `time,watts\n${back.map((row) => `2026-11-01T${row}`).join('\n')}`;
    const { watts } = readProfile(text, 'shed.csv', { timeZone: 'America/New_York' });
    expect(watts).toEqual([10, 20, 40, 50, 70, 80]);
    const told = (timeZone: string, times: string[]) => {
      const rows = times.map((time) => `2026-03-${time},3`).join('\n');
      return () => readProfile(`time,watts\n${rows}`, 'shed.csv', { timeZone });
    };
    const gap = ['08T00:00', '08T01:00', '08T03:00', '08T04:00'];
    expect(told('America/New_York', gap)).not.toThrow();
    expect(told('America/Phoenix', gap)).toThrow(
      'a gap: 1 reading is missing before this line; the clocks of America/Phoenix do not change that day',
    );
    const twice = ['08T00:00', '08T01:00', '08T01:00', '08T02:00', '08T03:00'];
    expect(told('America/New_York', twice)).toThrow(
      'the clocks of America/New_York change that day, but not so',
    );
    expect(told('Nowhere/Land', gap)).toThrow('write the whole file in standard time');
  });

  it.each([
    ['seconds since 1970', 1704067200, 900],
    ['milliseconds since 1970', 1704067200000, 900_000],
    ['minutes since 1970', 28401120, 15],
  ])('refuses %s in the place of minutes, and says so once', (what, from, step) => {
    const text = `timestamp,watts\n${from},5\n${from + step},6\n${from + 2 * step},7\n`;
    expect(faultsOf(text)).toEqual([
      `2: the time is "${from}", which looks like ${what}; expected a time such as 2026-01-15T18:00, 18:00 or minutes after midnight`,
    ]);
  });

  it('refuses a record of seconds that would last for years in minutes', () => {
    const text = Array.from({ length: 4000 }, (_, k) => `${k * 900},5`).join('\n');
    expect(faultsOf(`time,watts\n${text}`)).toEqual([
      expect.stringMatching(/^2931: .* looks like seconds; /),
    ]);
    expect(faultsOf(`time,watts\n${text.replaceAll(/^(\d+)00,/gm, '$1,')}`)).toEqual([]);
  });

  it('reads what stands in quotes as one value, and leaves a comma of thousands to its writer', () => {
    const quoted = 'time,"a, b","watts, mean"\n"00:00","x, y","1500"\n"12:00","x ""y""","2500"\n';
    expect(readProfile(quoted, 'shed.csv').watts).toEqual([1500, 2500]);
    expect(faultsOf('time,watts\n00:00,"1,500"\n00:15,20\n')).toEqual([
      '2: the watts are "1,500"; expected a number without a comma, such as 1500 or 1.5',
    ]);
    expect(readProfile('time;watts\n00:00;"1,5"\n12:00;2,5\n', 'shed.csv').watts).toEqual([1.5, 2.5]);
    expect(readProfile('time\twatts\n00:00\t"1,5"\n12:00\t2,5\n', 'shed.csv').watts).toEqual([1.5, 2.5]);
  });

  it('refuses decimal commas between commas instead of losing what is behind them', () => {
    expect(faultsOf('time,watts\n00:00,0,5\n12:00,20\n')).toEqual([
      '2: found 3 cells, where the header names 2; with decimal commas part the columns by semicolons, or write decimals with a point',
    ]);
    expect(readProfile('time,watts\n00:00,5,\n12:00,20,\n', 'shed.csv').watts).toEqual([5, 20]);
  });

  it('takes no more watts than the schema does', () => {
    expect(faultsOf('time,watts\n00:00,1e6\n00:15,1000001')).toEqual([
      '3: the watts are 1000001; expected at most 1000000',
    ]);
  });

  it('names the file and stops telling after twenty lines', () => {
    const text = `time,watts\n${Array.from({ length: 30 }, (_, k) => `${clock(k)},-1`).join('\n')}`;
    expect(() => readProfile(text, 'shed.csv')).toThrow(
      /^shed\.csv cannot be used[\s\S]*line 21:[^\n]*\n {2}and 10 more$/,
    );
  });
});

describe('profileHints', () => {
  it('points at kilowatts, at short records and at nothing at all', () => {
    expect(profileHints({ intervalMinutes: 60, watts: new Array(24).fill(0.45) })).toEqual([
      'the highest reading is 0.45 W; if the file is in kilowatts, set scale: 1000',
    ]);
    expect(profileHints({ intervalMinutes: 60, watts: [100, 200] })).toEqual([
      'it lasts 2 h, less than a day; it is repeated end to end from midnight',
    ]);
    expect(profileHints({ intervalMinutes: 60, watts: new Array(24).fill(0) })).toEqual([
      'every reading is 0 W',
    ]);
    expect(profileHints({ intervalMinutes: 60, watts: new Array(24).fill(90) })).toEqual([]);
  });

  it('says that a zone behind the times is not used', () => {
    expect(profileZoneHints('time,watts\n2026-01-01T00:00:00Z,3')).toEqual([
      'the Z behind its times is not used: they count as they stand, so they must be the house’s own clock',
    ]);
    expect(profileZoneHints('time,watts\n2026-01-01 00:00-05:00,3')[0]).toMatch(/^the -05:00 behind/);
    expect(profileZoneHints('time,watts\n2026-01-01T00:00,3\n18:00,4')).toEqual([]);
  });
});
