/**
 * Speed and memory on the full demo household, as ratios to a compiled yardstick.
 *
 *   npm run bench [-- --quick | --full] [kernel draws study advice memory scaling]
 *
 * Best and median of many short samples, the yardstick read in between. Prints a table and writes out/bench.json.
 * Ctrl+C stops it; what is measured by then is kept.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { loadScenario } from '../../packages/sim/src/node.ts';
import { measureAdvice } from './advice.ts';
import { measureDraws } from './draws.ts';
import { EFFORTS, type Effort } from './effort.ts';
import type { Figure } from './figure.ts';
import { measureKernel } from './kernel.ts';
import { describeMachine, type Machine } from './machine.ts';
import { measureMemory } from './memory.ts';
import { measureScaling } from './scaling.ts';
import type { Session } from './session.ts';
import { measureStudy } from './study.ts';
import { digits, renderFigures } from './table.ts';
import { fastest } from './timing.ts';
import { compileYardstick } from './yardstick.ts';

const MEASUREMENTS: Readonly<Record<string, (session: Session) => Promise<Figure[]>>> = {
  kernel: measureKernel,
  draws: measureDraws,
  study: measureStudy,
  advice: measureAdvice,
  memory: measureMemory,
  scaling: measureScaling,
};
const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const say = (text: string) => process.stderr.write(`${text}\n`);

const { effort, chosen } = readArguments();
const stop = new AbortController();
process.once('SIGINT', () => stop.abort());
const machine = describeMachine();
const compiled = await compileYardstick();
const [yardstick, noYardstick] = typeof compiled === 'string' ? [undefined, compiled] : [compiled, ''];
const started = performance.now();
const figures: Figure[] = [];
console.log(`${wordMachine(machine)}\n${noYardstick}`);
try {
  const demo = loadScenario(here('../../data/full-house.yaml')).scenario;
  await measureAll({ demo, effort, yardstick, signal: stop.signal });
  await writeReport('complete');
} catch (error) {
  if (!stop.signal.aborted) throw error;
  say('Stopped.');
  process.exitCode = 130;
} finally {
  await yardstick?.remove();
}
console.log(wordYardstick());
if (figures.length > 0)
  say(`Figures are in out/bench.json, after ${digits((performance.now() - started) / 1000)} s.`);

function readArguments(): { effort: Effort; chosen: string[] } {
  const { values, positionals } = parseArgs({
    options: { quick: { type: 'boolean' }, full: { type: 'boolean' } },
    allowPositionals: true,
  });
  const unknown = positionals.filter((name) => !(name in MEASUREMENTS));
  if (unknown.length > 0) {
    say(`There is no measurement ${unknown.join(', ')}; there are ${Object.keys(MEASUREMENTS).join(', ')}.`);
    process.exit(2);
  }
  const name = values.full ? 'full' : values.quick ? 'quick' : 'default';
  return { effort: EFFORTS[name], chosen: positionals.length > 0 ? positionals : Object.keys(MEASUREMENTS) };
}

/** Shows and keeps each measurement as soon as it is there, so that a stop at any moment loses only the present one. */
async function measureAll(session: Session): Promise<void> {
  for (const name of chosen) {
    say(`Measuring ${name} …`);
    const fresh = await MEASUREMENTS[name]!(session);
    figures.push(...fresh);
    console.log(`${renderFigures(fresh)}\n`);
    await writeReport('stopped early');
  }
}

function wordMachine({ cpu, cores, node, commit, loadBefore }: Machine): string {
  const busy = loadBefore > 0.5 ? '; not idle, so trust the best before the median' : '';
  return `${cpu}, ${cores} cores, Node ${node.slice(1)}, commit ${commit?.slice(0, 10) ?? 'unknown'}, load ${digits(loadBefore)}${busy}.`;
}

function wordYardstick(): string {
  const read = fastest(yardstick?.readings ?? []);
  if (!yardstick || !read) return '';
  return [
    `Yardstick (${yardstick.command}): best ${digits(read.best)}, median ${digits(read.median)} M inverter-min/s.`,
    'Of yardstick: inverter-minutes per second over its own, read around the same samples. A draw counts once.',
  ].join('\n');
}

async function writeReport(ended: 'complete' | 'stopped early'): Promise<void> {
  const read = yardstick && {
    command: yardstick.command,
    unit: 'M inverter-min/s',
    ...fastest(yardstick.readings),
    readings: yardstick.readings.length,
  };
  const seconds = (performance.now() - started) / 1000;
  const report = {
    machine,
    effort,
    measured: chosen,
    ended,
    seconds,
    yardstick: read ?? noYardstick,
    figures,
  };
  await mkdir(here('../../out'), { recursive: true });
  await writeFile(here('../../out/bench.json'), `${JSON.stringify(report, null, 2)}\n`);
}
