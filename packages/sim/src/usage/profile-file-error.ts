/** One thing wrong with a profile file; line 1 is the first. */
export interface ProfileFinding {
  readonly line: number;
  readonly text: string;
}

const MOST_TOLD = 20;

/** A measured profile that cannot be read, with everything that is wrong with it. */
export class ProfileFileError extends Error {
  readonly fileName: string;
  readonly findings: readonly ProfileFinding[];

  constructor(fileName: string, findings: readonly ProfileFinding[]) {
    const told = findings.slice(0, MOST_TOLD).map(({ line, text }) => `  line ${line}: ${text}`);
    const rest = findings.length > MOST_TOLD ? [`  and ${findings.length - MOST_TOLD} more`] : [];
    super([`${fileName} cannot be used as a measured profile:`, ...told, ...rest].join('\n'));
    this.name = 'ProfileFileError';
    this.fileName = fileName;
    this.findings = findings;
  }
}
