import { execFileSync } from 'node:child_process';
import { availableParallelism, cpus, loadavg } from 'node:os';

/** Where and on what the figures were taken. */
export interface Machine {
  readonly cpu: string;
  readonly cores: number;
  readonly node: string;
  /** Null outside a git repository. */
  readonly commit: string | null;
  readonly uncommittedChanges: boolean | null;
  readonly date: string;
  /** Processes that wanted a core, mean of the minute before; above `cores` the figures are disturbed. */
  readonly loadBefore: number;
}

export function describeMachine(): Machine {
  const status = git('status', '--porcelain');
  return {
    cpu: cpus()[0]?.model.trim() ?? 'unknown',
    cores: availableParallelism(),
    node: process.version,
    commit: git('rev-parse', 'HEAD'),
    uncommittedChanges: status === null ? null : status !== '',
    date: new Date().toISOString(),
    loadBefore: loadavg()[0]!,
  };
}

function git(...args: string[]): string | null {
  try {
    return execFileSync('git', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  } catch {
    return null;
  }
}
