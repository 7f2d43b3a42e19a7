/** The compiled yardstick: what the barest honest minute loop does on this machine, at this moment. */
import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const run = promisify(execFile);
const SOURCE = fileURLToPath(new URL('yardstick.c', import.meta.url));
const FLAGS = ['-O3', '-march=native', '-ffast-math'];

/** A run is about as long as one sample of ours (some milliseconds), so that both dodge disturbance alike. */
const MINUTES = 20_160;
const RUNS = 20;
/** Of several at once: long enough for them to run beside each other. */
const RUNS_TOGETHER = 2000;

export interface Yardstick {
  readonly command: string;
  /** Every reading of this session, million inverter-minutes per second. */
  readonly readings: readonly number[];
  read(times: number, signal: AbortSignal): Promise<number[]>;
  /** What so many of them do together when they run at once: as much as the machine's cores are worth to anybody. */
  readTogether(count: number, signal: AbortSignal): Promise<number>;
  remove(): Promise<void>;
}

/** Compiles the yardstick into a temporary folder; a sentence saying why when it cannot be done. */
export async function compileYardstick(compiler = process.env['CC'] ?? 'cc'): Promise<Yardstick | string> {
  const folder = await mkdtemp(join(tmpdir(), 'rideout-yardstick-'));
  const program = join(folder, 'yardstick');
  const remove = () => rm(folder, { recursive: true, force: true });
  try {
    await run(compiler, [...FLAGS, SOURCE, '-o', program, '-lm']);
  } catch (error) {
    await remove();
    return whyNot(compiler, error);
  }
  const readings: number[] = [];
  const read = async (times: number, signal: AbortSignal) => {
    const fresh: number[] = [];
    for (let i = 0; i < times; i++) fresh.push(await readOnce(program, signal));
    readings.push(...fresh);
    return fresh;
  };
  const readTogether = async (count: number, signal: AbortSignal) => {
    const each = Array.from({ length: count }, () => readOnce(program, signal, RUNS_TOGETHER));
    return (await Promise.all(each)).reduce((sum, millions) => sum + millions, 0);
  };
  return { command: [compiler, ...FLAGS].join(' '), readings, read, readTogether, remove };
}

async function readOnce(program: string, signal: AbortSignal, runs = RUNS): Promise<number> {
  const { stdout } = await run(program, [String(MINUTES), String(runs)], { signal });
  const millions = Number(/^([\d.]+) million inverter-minutes/.exec(stdout)?.[1]);
  if (!(millions > 0)) throw new Error(`the yardstick printed ${JSON.stringify(stdout)}, which is no speed`);
  return millions;
}

function whyNot(compiler: string, error: unknown): string {
  const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
  const why = missing ? `there is no C compiler "${compiler}" here` : `"${compiler}" could not compile it`;
  return `No yardstick: ${why}. The figures stand alone, without their ratio to it.`;
}
