import { describeWeatherFindings } from './messages.ts';
import type { WeatherFinding } from './weather-finding.ts';

/** A weather file that cannot be used; the message lists every fault. */
export class WeatherFileError extends Error {
  override readonly name = 'WeatherFileError';
  readonly fileName: string;
  readonly findings: readonly WeatherFinding[];

  constructor(fileName: string, findings: readonly WeatherFinding[]) {
    super(describeWeatherFindings(findings, fileName));
    this.fileName = fileName;
    this.findings = findings;
  }
}
