/** Weather-file findings in words: where, what is there, what was expected. The only place they are worded. */
import type { WeatherFinding } from './weather-finding.ts';

const LISTED = 20;

const UNIT: Record<string, string> = {
  GHI: ' W/m²',
  DNI: ' W/m²',
  DHI: ' W/m²',
  'dry-bulb': ' °C',
  wind: ' m/s',
  time: '',
};

const WORDING: Record<WeatherFinding['code'], (finding: WeatherFinding) => string> = {
  'unknown-layout': () =>
    'this is neither a TMY3 CSV file, nor an EPW file, nor a table whose first line names its columns (ghi_w_m2, dry_bulb_c, …).',
  'bad-station': (f) => `the station line should give ${f.expected}; found "${f.found}".`,
  'missing-column': (f) =>
    `no column "${f.expected}"${f.found === undefined ? '' : `; the columns are ${f.found}`}.`,
  'wrong-interval': (f) => `the file has ${f.found} values an hour; hourly values are needed.`,
  'wrong-length': (f) =>
    `found ${f.found} hours, expected ${f.expected}: every hour of one year, 29 February apart.`,
  'out-of-order': (f) =>
    `found the hour ${f.found} where ${f.expected} should come: an hour is missing, doubled or out of place.`,
  'too-many-cells': (f) =>
    `found ${f.found} cells, where the first line names ${f.expected}; decimals are written with a point, and commas part the columns.`,
  'not-a-number': (f) => `${f.column} reads "${f.found}", which is not a number.`,
  'impossible-value': (f) =>
    `${f.column} is ${f.found}${unitOf(f)}; believable is ${f.expected}${unitOf(f)}.`,
  'too-dark': (f) =>
    `GHI adds up to ${f.found} kWh/m² in the year, where ${f.expected} reach the air above; is it in kW/m²? W/m² are needed.`,
  'gap-too-long': (f) =>
    `${f.column} is missing for ${f.hours} hours in a row; up to ${f.expected} are filled in.`,
  'no-utc-offset': () =>
    'a plain table must say how its hours lie to UTC: a first line such as "# utc_offset_h: -5", or the site must give its time zone.',
  'no-location': () =>
    'DNI and DHI are missing and can only be estimated for a known place: add "# latitude_deg: 42.4" and "# longitude_deg: -71.0".',
  'leap-day-dropped': (f) => `29 February (${f.hours} hours) left out.`,
  'gap-filled': (f) => `${f.column} missing for ${hours(f)}; filled in between its neighbours.`,
  'night-offset-zeroed': (f) =>
    `${f.column} slightly below zero in ${hours(f)} (lowest ${f.found}${unitOf(f)}), as sensors read at night; taken as 0.`,
  'diffuse-estimated': () =>
    'DNI and DHI are missing; estimated from GHI by the correlation of Erbs, Klein & Duffie (1982).',
  'diffuse-by-difference': () => 'DHI is missing; worked out as GHI less the beam part of DNI.',
  'beam-by-difference': () => 'DNI is missing; worked out from GHI less DHI.',
  'wind-assumed': (f) => `wind is missing; ${f.found} m/s taken throughout.`,
  'utc-offset-assumed': (f) =>
    `no UTC offset in the file; ${f.found} hours taken, the site’s own standard time.`,
  'location-assumed': () => 'no latitude and longitude in the file; the site’s own taken.',
  'far-away': (f) => `the weather is of a place ${f.found} km from the site; is it the right file?`,
};

function unitOf(finding: WeatherFinding): string {
  return finding.column === undefined ? '' : UNIT[finding.column]!;
}

function hours(finding: WeatherFinding): string {
  return finding.hours === 1 ? '1 hour' : `${finding.hours} hours`;
}

/** One sentence, with the place in the file. */
export function describeWeatherFinding(finding: WeatherFinding, fileName: string): string {
  const { line, lastLine } = finding;
  const lines =
    line === undefined
      ? ''
      : lastLine === undefined || lastLine === line
        ? `, line ${line}`
        : `, lines ${line}–${lastLine}`;
  return `${fileName}${lines}: ${WORDING[finding.code](finding)}`;
}

/** A line each for the first twenty, and how many more there are. */
export function describeWeatherFindings(findings: readonly WeatherFinding[], fileName: string): string {
  const lines = findings.slice(0, LISTED).map((finding) => describeWeatherFinding(finding, fileName));
  const more = findings.length - LISTED;
  if (more > 0) lines.push(`… and ${more} more.`);
  return lines.join('\n');
}
