import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describeWeatherFindings } from '../../../packages/sim/src/weather/messages.ts';
import { inspectWeatherYear, readWeatherYear } from '../../../packages/sim/src/weather/read-weather-year.ts';
import { isFault } from '../../../packages/sim/src/weather/weather-finding.ts';
import { WeatherFileError } from '../../../packages/sim/src/weather/weather-file-error.ts';
import { weatherYearFile, withoutWeatherYear } from '../../weather-years.ts';
import { asEpw, asTable, asTmy3, plainRows } from './weather-file.ts';
import type { Row } from './weather-file.ts';

const LAYOUTS = [
  ['TMY3', asTmy3, 3],
  ['EPW', asEpw, 9],
  ['table', asTable, 6],
] as const;

/** The plain year with some rows changed. */
function changed(change: (row: Row, index: number) => void): Row[] {
  const rows = plainRows();
  rows.forEach(change);
  return rows;
}

const at = (index: number, change: (row: Row) => void): Row[] =>
  changed((row, i) => {
    if (i === index) change(row);
  });

function codesOf(text: string): string[] {
  return inspectWeatherYear(text).findings.map(({ code }) => code);
}

describe.each(LAYOUTS)('readWeatherYear of a %s file', (_, write, firstLine) => {
  it('gives back every hour in order, with nothing to tell', () => {
    const { year, notes } = readWeatherYear(write(plainRows()), 'a.csv');
    expect(notes).toEqual([]);
    expect(year.utcOffsetHours).toBe(-5);
    expect([year.latitudeDeg, year.longitudeDeg]).toEqual([40, -75]);
    expect(year.ghiWm2).toHaveLength(8760);
    expect(year.ghiWm2.slice(7, 17)).toEqual([0, 300, 300, 300, 300, 300, 300, 300, 300, 0]);
    expect(year.dniWm2[8]).toBe(200);
    expect(year.dhiWm2[8]).toBe(180);
    expect(year.dryBulbC.at(-1)).toBe(21);
    expect(year.windMs[5000]).toBe(3);
  });

  it('leaves out 29 February and tells', () => {
    const { year, notes } = readWeatherYear(write(plainRows(true)), 'a.csv');
    expect(year.ghiWm2).toHaveLength(8760);
    const line = firstLine + 24 * 59;
    expect(notes).toEqual([{ code: 'leap-day-dropped', line, lastLine: line + 23, hours: 24 }]);
  });

  it('refuses a year that is too short, and shows where the hour is missing', () => {
    const rows = plainRows().filter((_, index) => index !== 100);
    const { year, findings } = inspectWeatherYear(write(rows));
    expect(year).toBeUndefined();
    expect(findings).toEqual([
      {
        code: 'out-of-order',
        line: firstLine + 100,
        column: 'time',
        found: '01-05 06',
        expected: '01-05 05',
      },
      { code: 'wrong-length', found: 8759, expected: 8760 },
    ]);
  });

  it('refuses what is not a number, by line', () => {
    const { findings } = inspectWeatherYear(write(at(30, (row) => (row.dryBulb = 'warm'))));
    expect(findings[0]).toEqual({
      code: 'not-a-number',
      line: firstLine + 30,
      column: 'dry-bulb',
      found: 'warm',
    });
  });

  it('refuses a row of a table with more cells than its first line names: a decimal comma moves what follows', () => {
    const lines = asTable(plainRows()).split('\n');
    const row = lines.length - 2;
    const { findings } = inspectWeatherYear(lines.with(row, `${lines[row]!},5`).join('\n'));
    expect(findings[0]).toMatchObject({ code: 'too-many-cells', line: row + 1 });
    expect(describeWeatherFindings(findings, 'a.csv')).toMatch(
      /^a\.csv, line \d+: found \d+ cells, where the first line names \d+; decimals are written with a point/,
    );
  });

  it('fills up to three missing hours between their neighbours and tells the lines', () => {
    const blank = changed((row, index) => {
      if (index >= 11 && index < 14) row.ghi = '';
      row.dryBulb = index;
      if (index === 40) row.dryBulb = '';
      if (index > 50) row.dryBulb = 5;
    });
    const { year, notes } = readWeatherYear(write(blank), 'a.csv');
    expect(year.ghiWm2.slice(10, 15)).toEqual([300, 300, 300, 300, 300]);
    expect(year.dryBulbC[40]).toBe(40);
    expect(notes).toEqual([
      { code: 'gap-filled', column: 'GHI', line: firstLine + 11, lastLine: firstLine + 13, hours: 3 },
      { code: 'gap-filled', column: 'dry-bulb', line: firstLine + 40, lastLine: firstLine + 40, hours: 1 },
    ]);
  });

  it('refuses four missing hours in a row', () => {
    const { year, findings } = inspectWeatherYear(
      write(changed((row, index) => void (index >= 11 && index < 15 && (row.wind = '')))),
    );
    expect(year).toBeUndefined();
    expect(findings).toEqual([
      {
        code: 'gap-too-long',
        column: 'wind',
        line: firstLine + 11,
        lastLine: firstLine + 14,
        hours: 4,
        expected: 3,
      },
    ]);
  });

  it('counts a gap over the turn of the year as one', () => {
    const codes = codesOf(
      write(changed((row, index) => void ((index < 2 || index > 8757) && (row.wind = '')))),
    );
    expect(codes).toEqual(['gap-too-long']);
  });

  it('sets a small negative night offset to 0 and tells how often and how low', () => {
    const offset = changed((row, index) => void (index < 5 && (row.ghi = -index)));
    const { year, notes } = readWeatherYear(write(offset), 'a.csv');
    expect(Math.min(...year.ghiWm2)).toBe(0);
    const place = { line: firstLine + 1, lastLine: firstLine + 4 };
    expect(notes).toEqual([{ code: 'night-offset-zeroed', column: 'GHI', ...place, found: -4, hours: 4 }]);
  });

  it.each([
    ['GHI far below zero', 'ghi', -21, '0 to 1600'],
    ['GHI brighter than any hour', 'ghi', 1601, '0 to 1600'],
    ['DNI brighter than the sun', 'dni', 1501, '0 to 1500'],
    ['a frost no weather has', 'dryBulb', -91, '-90 to 60'],
    ['a heat no weather has', 'dryBulb', 61, '-90 to 60'],
    ['a wind no roof survives', 'wind', 101, '0 to 100'],
  ] as const)('refuses %s', (_, key, value, expected) => {
    const { findings } = inspectWeatherYear(write(at(12, (row) => (row[key] = value))));
    expect(findings).toEqual([
      expect.objectContaining({ code: 'impossible-value', line: firstLine + 12, found: value, expected }),
    ]);
  });

  it('refuses sunlight at night', () => {
    const { findings } = inspectWeatherYear(write(at(1, (row) => (row.ghi = 400))));
    expect(findings).toEqual([
      { code: 'impossible-value', line: firstLine + 1, column: 'GHI', found: 400, expected: '0 to 50' },
    ]);
  });

  it.each([
    ['kilowatts', (row: Row) => ({ ...row, ghi: Number(row.ghi) / 1000 }), 0.876],
    ['nothing', (row: Row) => ({ ...row, ghi: 0 }), 0],
  ])('refuses a year of %s where sunlight in watts is needed', (_, change, found) => {
    const { findings } = inspectWeatherYear(write(plainRows().map(change)), {
      latitudeDeg: 40,
      longitudeDeg: -75,
      utcOffsetHours: -5,
    });
    expect(findings.filter(isFault)).toEqual([
      { code: 'too-dark', column: 'GHI', found, expected: expect.any(Number) as number },
    ]);
    expect(describeWeatherFindings(findings.filter(isFault), 'a.csv')).toMatch(
      /^a\.csv: GHI adds up to [\d.]+ kWh\/m² in the year, where 2\d\d\d reach the air above; is it in kW\/m²\?/,
    );
  });

  it('reads CRLF and LF alike', () => {
    const text = write(plainRows());
    const lf = text.replaceAll('\r\n', '\n');
    expect(readWeatherYear(lf.replaceAll('\n', '\r\n'), 'a').year).toEqual(readWeatherYear(lf, 'a').year);
  });
});

describe('readWeatherYear', () => {
  it('takes the sentinels of each layout for missing', () => {
    const tmy3 = asTmy3(at(12, (row) => (row.ghi = -9900)));
    const epw = asEpw(at(12, (row) => Object.assign(row, { ghi: 9999, dryBulb: 99.9, wind: 999 })));
    expect(codesOf(tmy3)).toEqual(['gap-filled']);
    expect(codesOf(epw)).toEqual(['gap-filled', 'gap-filled', 'gap-filled']);
  });

  it('keeps a comma inside a quoted station name', () => {
    expect(readWeatherYear(asTmy3(plainRows()), 'a.csv').year.name).toBe('A MADE-UP PLACE, INVENTED');
  });

  it('estimates DNI and DHI where a table has neither, and tells', () => {
    const { year, notes } = readWeatherYear(asTable(plainRows(), 'ghi_w_m2,dry_bulb_c,wind_m_s'), 'a.csv');
    expect(notes.map(({ code }) => code)).toEqual(['diffuse-estimated']);
    year.dhiWm2.forEach((dhi, hour) => expect(dhi).toBeLessThanOrEqual(year.ghiWm2[hour]!));
    expect(year.dhiWm2[11]).toBeGreaterThan(50); // January noon, kt 0.5: Erbs gives about 0.65 of 300
    expect(year.dhiWm2[11]).toBeLessThan(280);
  });

  it('works out DHI from DNI and DNI from DHI by closure', () => {
    const both = readWeatherYear(asTable(plainRows()), 'a.csv').year;
    const noDni = readWeatherYear(asTable(plainRows(), 'ghi_w_m2,dhi_w_m2,dry_bulb_c,wind_m_s'), 'a.csv');
    const noDhi = readWeatherYear(asTable(plainRows(), 'ghi_w_m2,dni_w_m2,dry_bulb_c,wind_m_s'), 'a.csv');
    expect(noDni.notes.map(({ code }) => code)).toEqual(['beam-by-difference']);
    expect(noDhi.notes.map(({ code }) => code)).toEqual(['diffuse-by-difference']);
    const cosZenith = (both.ghiWm2[12]! - both.dhiWm2[12]!) / noDni.year.dniWm2[12]!;
    expect(noDhi.year.dhiWm2[12]).toBeCloseTo(both.ghiWm2[12]! - both.dniWm2[12]! * cosZenith, 6);
  });

  it('takes from the site what a table leaves out, and tells', () => {
    const bare = asTable(plainRows(), 'ghi_w_m2,dry_bulb_c', '');
    expect(codesOf(bare)).toEqual(['no-utc-offset', 'wind-assumed', 'no-location']);
    const site = { latitudeDeg: 40, longitudeDeg: -75, windMs: 2, timeZone: 'America/New_York' };
    const { year, notes } = readWeatherYear(bare, 'bare.csv', site);
    expect(notes.map(({ code }) => code)).toEqual([
      'utc-offset-assumed',
      'wind-assumed',
      'diffuse-estimated',
      'location-assumed',
    ]);
    expect(year.utcOffsetHours).toBe(-5);
    expect(year.windMs[0]).toBe(2);
    expect(year.name).toBe('bare.csv');
  });

  it('tells when the weather is of a place far from the site', () => {
    const text = asEpw(plainRows());
    expect(readWeatherYear(text, 'a.epw', { latitudeDeg: 40.5, longitudeDeg: -75.5 }).notes).toEqual([]);
    // one degree of latitude is 111 km: two degrees north is 222 km
    const { notes } = readWeatherYear(text, 'a.epw', { latitudeDeg: 42, longitudeDeg: -75 });
    expect(notes).toEqual([{ code: 'far-away', found: 222 }]);
  });

  it('takes standard time from a zone south of the equator too', () => {
    const bare = asTable(plainRows(), 'ghi_w_m2,dni_w_m2,dhi_w_m2,dry_bulb_c,wind_m_s', '');
    const { year } = readWeatherYear(bare, 'a.csv', { timeZone: 'Pacific/Auckland' });
    expect(year.utcOffsetHours).toBe(12);
  });

  it('reads midnight as 24:00 or as 00:00 of the next day', () => {
    const text = asTable(plainRows(true)).replaceAll('1999-', '');
    const next = text
      .replaceAll('12-31T24:00', '01-01T00:00')
      .replaceAll('01-15T24:00', '01-16T00:00')
      .replace('# name', '# other');
    expect(inspectWeatherYear(next).year?.ghiWm2).toHaveLength(8760);
  });

  it('finds hours out of order in a file of the right length', () => {
    const rows = plainRows();
    [rows[20], rows[21]] = [rows[21]!, rows[20]!];
    expect(codesOf(asEpw(rows))).toEqual(['out-of-order']);
  });

  it('refuses an EPW file with half-hours', () => {
    const text = asEpw(plainRows()).replace('DATA PERIODS,1,1', 'DATA PERIODS,1,2');
    expect(inspectWeatherYear(text).findings).toContainEqual({ code: 'wrong-interval', line: 8, found: 2 });
  });

  it('refuses a table without its needed columns, and names those it found', () => {
    const { findings } = inspectWeatherYear(asTable(plainRows(), 'ghi_w_m2,wind_m_s'));
    expect(findings).toContainEqual({
      code: 'missing-column',
      line: 5,
      expected: 'dry_bulb_c',
      found: 'ghi_w_m2, wind_m_s',
    });
  });

  it('refuses a broken station line', () => {
    const text = asTmy3(plainRows()).replace(',-5.0,40.000', ',?,north');
    expect(inspectWeatherYear(text).findings[0]).toMatchObject({ code: 'bad-station', line: 1 });
  });

  it.each([
    ['', 'empty'],
    ['a,b\n1,2\n', 'some other table'],
    ['{"ghi": 1}', 'no table at all'],
  ])('refuses %j: %s', (text) => {
    expect(() => readWeatherYear(text, 'odd.csv')).toThrow(
      /odd\.csv: this is neither a TMY3 CSV file, nor an EPW file/,
    );
  });

  it('tells every fault at once, in words with file, line, found and expected', () => {
    const rows = changed((row, index) => {
      if (index === 12) row.ghi = 2000;
      if (index === 40) row.dryBulb = 'cold';
    });
    const read = (): unknown => readWeatherYear(asTmy3(rows.slice(0, -1)), 'home.csv');
    expect(read).toThrow(WeatherFileError);
    expect(read).toThrow(
      [
        'home.csv, line 43: dry-bulb reads "cold", which is not a number.',
        'home.csv: found 8759 hours, expected 8760: every hour of one year, 29 February apart.',
        'home.csv, line 15: GHI is 2000 W/m²; believable is 0 to 1600 W/m².',
      ].join('\n'),
    );
  });

  it('lists twenty faults and counts the rest', () => {
    const rows = changed((row, index) => void (index < 50 && (row.dryBulb = 99)));
    const { findings } = inspectWeatherYear(asTmy3(rows));
    const lines = describeWeatherFindings(findings, 'a.csv').split('\n');
    expect(lines).toHaveLength(21);
    expect(lines.at(-1)).toBe('… and 30 more.');
  });
});

describe('real weather years kept outside the repository', () => {
  // Whole-year figures as published beside the files: kWh/m² of GHI, DNI, DHI; mean, lowest, highest dry-bulb; mean wind
  const FILES = [
    ['boston-725090-tmy3.csv', -5, [1407.8, 1336.0, 651.8, 10.6, -20.0, 37.2, 5.48]],
    ['phoenix-722780-tmy3.epw', -7, [2094.2, 2523.7, 564.3, 23.8, 2.2, 44.4, 2.76]],
  ] as const;
  for (const [name, utcOffsetHours, [ghi, dni, dhi, mean, lowest, highest, wind]] of FILES) {
    const path = weatherYearFile(name);
    it(`gives the whole-year figures of ${name}`, ({ skip }) => {
      skip(path === undefined, withoutWeatherYear(name));
      const { year, notes } = readWeatherYear(readFileSync(path!, 'utf8'), name);
      const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
      expect(notes).toEqual([]);
      expect(year.utcOffsetHours).toBe(utcOffsetHours);
      expect(Math.abs(sum(year.ghiWm2) / 1000 - ghi)).toBeLessThan(0.051); // printed to 0.1
      expect(Math.abs(sum(year.dniWm2) / 1000 - dni)).toBeLessThan(0.051);
      expect(Math.abs(sum(year.dhiWm2) / 1000 - dhi)).toBeLessThan(0.051);
      expect(Math.abs(sum(year.dryBulbC) / 8760 - mean)).toBeLessThan(0.0051); // printed to 0.01
      expect(Math.abs(sum(year.windMs) / 8760 - wind)).toBeLessThan(0.0051);
      expect([Math.min(...year.dryBulbC), Math.max(...year.dryBulbC)]).toEqual([lowest, highest]);
    });
  }
});
