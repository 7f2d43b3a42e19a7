/**
 * A shard: a pure function of (study, from, to) that returns rows. One process, a pool of workers and a browser's
 * worker all run this; merging is concatenation.
 */
import { streamsOf } from '../chance/streams.ts';
import { advance } from '../step/advance.ts';
import { liveToEnd } from '../step/live-to-end.ts';
import { writeOutcome, writeRuntime, type WriteCell } from '../step/outcome.ts';
import { releaseRun, startRun, type Run } from '../step/run.ts';
import { assertDraws } from './draw-range.ts';
import { OUTCOME_COLUMNS, RUNTIME_COLUMNS, type OutcomeRows } from './outcome-rows.ts';
import { placeUnits, unitPositions } from './place-units.ts';
import type { Study, StudyOutline } from './study.ts';
import { createWorkspace, fillDraw, type Workspace } from './workspace.ts';

/** Buffers are made once per study and thread. */
const workspaces = new WeakMap<Study, Workspace>();

export function workspaceOf(study: Study): Workspace {
  let work = workspaces.get(study);
  if (work === undefined) {
    work = createWorkspace(study);
    workspaces.set(study, work);
  }
  return work;
}

/** Names of every column of a study's rows. */
export function columnsOf(outline: Pick<StudyOutline, 'needs' | 'rows'>): string[] {
  if (outline.rows === 'runtimes') return [...RUNTIME_COLUMNS];
  return [
    ...OUTCOME_COLUMNS,
    ...outline.needs.flatMap((need) => [`need:${need}:firstMinute`, `need:${need}:minutes`]),
  ];
}

/**
 * Rows of draws `from` to `to - 1`, in order of draw, alternative, strategy.
 *
 * @param from whole number ≥ 0.
 * @param to whole number ≥ `from`; the same gives no rows.
 * @throws RangeError otherwise
 */
export function runShard(study: Study, from: number, to: number): OutcomeRows {
  assertDraws(from, to);
  const perDraw = study.alternatives.length * study.strategies.length;
  const length = (to - from) * perDraw;
  const columns = Object.fromEntries(columnsOf(study).map((name) => [name, new Float64Array(length)]));
  const work = workspaceOf(study);
  const positions = study.compiled.map(({ household }) => unitPositions(study, household.units));
  let row = 0;
  const write = (column: string, value: number) => {
    columns[column]![row] = value;
  };
  for (let draw = from; draw < to; draw++) {
    fillDraw(study, work, streamsOf(study.seed, draw));
    study.compiled.forEach(({ household }, alternative) => {
      household.strategies.forEach((plan, strategy) => {
        const run = startRun(household, work.draws[alternative]!, plan);
        write('draw', draw);
        write('alternative', alternative);
        write('strategy', strategy);
        live(run, study, write);
        releaseRun(run);
        placeUnits(columns, row, positions[alternative]!);
        row++;
      });
    });
  }
  return { length, columns };
}

function live(run: Run, { rows, minutes }: Study, write: WriteCell): void {
  if (rows === 'runtimes') {
    liveToEnd(run);
    writeRuntime(run, write);
  } else {
    advance(run, minutes);
    writeOutcome(run, write);
  }
}

/** Rows of several shards as one, in the order given. */
export function joinRows(shards: readonly OutcomeRows[]): OutcomeRows {
  const length = shards.reduce((sum, s) => sum + s.length, 0);
  const names = Object.keys(shards[0]?.columns ?? {});
  const columns = Object.fromEntries(names.map((name) => [name, new Float64Array(length)]));
  let at = 0;
  for (const shard of shards) {
    for (const name of names) columns[name]!.set(shard.columns[name]!, at);
    at += shard.length;
  }
  return { length, columns };
}
