/** The command as people run it: a process of its own, its answers, its exit code. */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
export const DEMO = 'data/full-house.yaml';
export const SMALL = 'data/small-house.yaml';

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly told: string;
}

/** Runs `rideout` in the project's folder. @param watch gets the process, to listen to it or to interrupt it */
export function rideout(
  args: readonly string[],
  watch?: (child: ChildProcessWithoutNullStreams) => void,
): Promise<Ended> {
  const command = [
    '--import',
    'tsx/esm',
    '--conditions=rideout-source',
    'packages/sim/src/cli/main.ts',
    ...args,
  ];
  const child = spawn(process.execPath, command, { cwd: ROOT, env: { ...process.env, NODE_OPTIONS: '' } });
  let out = '';
  let told = '';
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (told += chunk.toString()));
  watch?.(child);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, told }));
  });
}
