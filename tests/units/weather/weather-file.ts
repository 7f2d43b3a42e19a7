/** Small hand-made weather files in the three open layouts, for the readers' tests. */

export interface Row {
  month: number;
  day: number;
  /** 1…24, hour-ending. */
  hour: number;
  ghi: number | string;
  dni: number | string;
  dhi: number | string;
  dryBulb: number | string;
  wind: number | string;
}

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A year of plain weather at 40 N, 75 W, UTC-5: sun from 8 to 16 h. @param leap with a 29 February. */
export function plainRows(leap = false): Row[] {
  return MONTH_LENGTHS.flatMap((length, index) =>
    Array.from({ length: 24 * (length + (leap && index === 1 ? 1 : 0)) }, (_, at) => {
      const hour = (at % 24) + 1;
      const up = hour > 8 && hour <= 16;
      return {
        month: index + 1,
        day: Math.floor(at / 24) + 1,
        hour,
        ghi: up ? 300 : 0,
        dni: up ? 200 : 0,
        dhi: up ? 180 : 0,
        dryBulb: 10 + index,
        wind: 3,
      };
    }),
  );
}

const two = (value: number): string => String(value).padStart(2, '0');

/** Data begin on line 3. */
export function asTmy3(rows: readonly Row[], end = '\n'): string {
  const header = [
    '999999,"A MADE-UP PLACE, INVENTED",XX,-5.0,40.000,-75.000,10',
    'Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd (m/s)',
  ];
  const lines = rows.map(
    (r) =>
      `${two(r.month)}/${two(r.day)}/1999,${two(r.hour)}:00,${r.ghi},${r.dni},${r.dhi},${r.dryBulb},${r.wind}`,
  );
  return [...header, ...lines, ''].join(end);
}

/** Data begin on line 9; CRLF as such files usually have. */
export function asEpw(rows: readonly Row[], end = '\r\n'): string {
  const header = [
    'LOCATION,Made-up Place,XX,NONE,made up,999999,40.00,-75.00,-5.0,10.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,none',
    'COMMENTS 2,none',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
  ];
  const lines = rows.map((r) => {
    const fields = new Array<string | number>(35).fill(0);
    [1999, r.month, r.day, r.hour, 60].forEach((value, index) => (fields[index] = value));
    fields[6] = r.dryBulb;
    fields[13] = r.ghi;
    fields[14] = r.dni;
    fields[15] = r.dhi;
    fields[21] = r.wind;
    return fields.join(',');
  });
  return [...header, ...lines, ''].join(end);
}

const PLACED = '# latitude_deg: 40\n# longitude_deg: -75\n';
export const REMARKS = `# name: made up\n# utc_offset_h: -5\n${PLACED}`;

/** Data begin on line 6 with `REMARKS`. */
export function asTable(
  rows: readonly Row[],
  columns = 'time,ghi_w_m2,dni_w_m2,dhi_w_m2,dry_bulb_c,wind_m_s',
  remarks = REMARKS,
): string {
  const cells: Record<string, (row: Row) => string | number> = {
    time: (r) => `1999-${two(r.month)}-${two(r.day)}T${two(r.hour)}:00`,
    ghi_w_m2: (r) => r.ghi,
    dni_w_m2: (r) => r.dni,
    dhi_w_m2: (r) => r.dhi,
    dry_bulb_c: (r) => r.dryBulb,
    wind_m_s: (r) => r.wind,
  };
  const names = columns.split(',');
  const lines = rows.map((row) => names.map((name) => cells[name]!(row)).join(','));
  return `${remarks}${[columns, ...lines, ''].join('\n')}`;
}
