/** What a reader finds in a weather file: faults that stop it and notes on what it mended. */

/** The quantities of a weather file, as people call them. */
export type WeatherColumn = 'GHI' | 'DNI' | 'DHI' | 'dry-bulb' | 'wind' | 'time';

export type WeatherFaultCode =
  | 'unknown-layout'
  | 'bad-station'
  | 'missing-column'
  | 'wrong-interval'
  | 'wrong-length'
  | 'out-of-order'
  | 'too-many-cells'
  | 'not-a-number'
  | 'impossible-value'
  | 'too-dark'
  | 'gap-too-long'
  | 'no-utc-offset'
  | 'no-location';

export type WeatherNoteCode =
  | 'leap-day-dropped'
  | 'gap-filled'
  | 'night-offset-zeroed'
  | 'diffuse-estimated'
  | 'diffuse-by-difference'
  | 'beam-by-difference'
  | 'wind-assumed'
  | 'utc-offset-assumed'
  | 'location-assumed'
  | 'far-away';

export interface WeatherFinding {
  readonly code: WeatherFaultCode | WeatherNoteCode;
  /** Line of the file, the first is 1; for a stretch, its first line. */
  readonly line?: number;
  readonly lastLine?: number;
  readonly column?: WeatherColumn;
  readonly found?: string | number;
  readonly expected?: string | number;
  /** How many hours it is about. */
  readonly hours?: number;
}

const NOTES: ReadonlySet<string> = new Set<WeatherNoteCode>([
  'leap-day-dropped',
  'gap-filled',
  'night-offset-zeroed',
  'diffuse-estimated',
  'diffuse-by-difference',
  'beam-by-difference',
  'wind-assumed',
  'utc-offset-assumed',
  'location-assumed',
  'far-away',
]);

/** True when the file cannot be used because of it. */
export const isFault = (finding: WeatherFinding): boolean => !NOTES.has(finding.code);
