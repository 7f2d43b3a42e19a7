/**
 * Running a study in the page: shards on a few workers, a coarse first answer soon, the settled one at the end.
 *
 * Every summary, the first coarse one included, is that of draws 0 … n-1 and of nothing else, however many workers
 * there are and whichever comes first: the command line gives the same figures for n draws.
 */
import {
  RowsInOrder,
  type DrawTrace,
  type OutcomeRows,
  type Scenario,
  type StudySummary,
  type TraceChoice,
} from '@rideout/sim';
import { StudyHand } from './study-hand.ts';
import type { StudyJob, StudyReply } from './study-messages.ts';

export interface StudyRunOptions {
  readonly seed: string;
  /** How many outages to draw, ≥ 1. */
  readonly draws: number;
  /** Draws per job; default: what takes some hundredths of a second. Changes how often progress is told, never the figures. */
  readonly batch?: number | undefined;
  /** Default: as many as the machine has cores, at most 6. */
  readonly workers?: number | undefined;
  /** Workers to use in the place of new ones, for one study after another; the caller ends them. */
  readonly hands?: readonly StudyHand[] | undefined;
  /** Aborting ends the run without another word, and the workers with it; given `hands` finish the job they are at. */
  readonly signal?: AbortSignal | undefined;
}

export interface StudyProgress {
  readonly drawsDone: number;
  readonly draws: number;
  /** Of the first `summary.provenance.draws` draws; undefined until the first. */
  readonly summary: StudySummary | undefined;
  /** True once, at the end: `summary` is of all draws. */
  readonly settled: boolean;
  /** Every outcome, when settled. */
  readonly rows?: OutcomeRows | undefined;
}

const FIRST_BATCH = 2;
const MOST_AT_ONCE = 20;
/** A job about as long as this is worth handing over, and soon over when the reader has changed something meanwhile. */
const JOB_MS = 40;
const FIRST_SUMMARY = 10; // draws; then 80, 160, 320, …
const SECOND_SUMMARY = 80;
const MOST_WORKERS = 6;
const WARM_UP_DRAWS = 12;

/** Progress as it comes. Throws an Error with the words of the worker that failed. */
export async function* runStudy(scenario: Scenario, options: StudyRunOptions): AsyncGenerator<StudyProgress> {
  const plan = new RunPlan(options.draws, options.batch);
  const crew =
    options.hands?.slice(0, plan.shards) ??
    studyHands(Math.min(options.workers ?? coresToUse(), plan.shards));
  const stopped = aborted(options.signal);
  try {
    const busy = new Map(
      crew.map((hand) => [hand, hand.ask({ job: 'prepare', scenario, seed: options.seed })]),
    );
    while (busy.size > 0) {
      const told = await Promise.race([
        stopped,
        ...[...busy].map(async ([hand, reply]) => ({ hand, reply: await reply })),
      ]);
      if (told === 'stopped') return;
      busy.delete(told.hand);
      plan.take(told.reply, performance.now());
      const next = plan.next(performance.now());
      if (next) busy.set(told.hand, told.hand.ask(next));
      yield plan.progress();
    }
  } finally {
    if (!options.hands) crew.forEach((hand) => hand.dismiss());
  }
}

/** Writes out single draws of one study, one after another, on a worker of its own. */
export interface DrawTracer {
  /** Rejects with the worker's own words. */
  readonly trace: (choice: TraceChoice) => Promise<DrawTrace>;
  /** Ends the worker; what is under way is never answered. */
  readonly dismiss: () => void;
}

export function openTracer(scenario: Scenario, seed: string): DrawTracer {
  const hand = new StudyHand();
  let idle: Promise<unknown> = hand.ask({ job: 'prepare', scenario, seed });
  const ask = async (choice: TraceChoice): Promise<DrawTrace> => {
    const reply = await hand.ask({ job: 'trace', choice });
    if (reply.reply !== 'trace') throw new Error(`asked for a trace, got ${reply.reply}`);
    return reply.trace;
  };
  return {
    trace(choice) {
      const asked = idle.then(() => ask(choice));
      idle = asked;
      return asked;
    },
    dismiss: () => hand.dismiss(),
  };
}

/** What has come in and what is to be asked next. */
class RunPlan {
  readonly #draws: number;
  readonly #fixedBatch: number | undefined;
  readonly #rows = new RowsInOrder();
  /** When each shard was given out, by its first draw. */
  readonly #askedAt = new Map<number, number>();
  #batch: number;
  #given = 0;
  #summary: StudySummary | undefined;
  #summarising = false;
  #summaryAt: number;

  constructor(draws: number, batch: number | undefined) {
    if (!(Number.isInteger(draws) && draws >= 1))
      throw new RangeError(`draws must be a whole number from 1, not ${draws}`);
    this.#draws = draws;
    this.#fixedBatch = batch;
    this.#batch = batch ?? FIRST_BATCH;
    this.#summaryAt = Math.min(FIRST_SUMMARY, draws);
  }

  get shards(): number {
    return Math.ceil(this.#draws / this.#batch);
  }

  take(reply: StudyReply, nowMs: number): void {
    if (reply.reply === 'shard') {
      this.#rows.add(reply.from, reply.to, reply.rows);
      this.#fitBatch(reply.to - reply.from, nowMs - this.#askedAt.get(reply.from)!);
    }
    if (reply.reply === 'summary') [this.#summary, this.#summarising] = [reply.summary, false];
  }

  /** As many draws as take about `JOB_MS`, going by the last job; at most twice as many as that had. */
  #fitBatch(draws: number, tookMs: number): void {
    const fitting = Math.round((draws * JOB_MS) / Math.max(tookMs, 1));
    this.#batch = this.#fixedBatch ?? Math.max(1, Math.min(fitting, 2 * draws, MOST_AT_ONCE));
  }

  /** A summary when enough new draws are in, or else the next shard; undefined: nothing left to give out. */
  next(nowMs: number): StudyJob | undefined {
    const ready = this.#rows.draws;
    if (!this.#summarising && ready >= this.#summaryAt && this.#summary?.provenance.draws !== ready) {
      this.#summarising = true;
      this.#summaryAt = nextSummaryAt(ready, this.#draws);
      return { job: 'summarise', rows: this.#rows.joined() };
    }
    if (this.#given >= this.#draws) return undefined;
    const from = this.#given;
    this.#given = Math.min(from + this.#batch, this.#draws);
    this.#askedAt.set(from, nowMs);
    return { job: 'shard', from, to: this.#given };
  }

  progress(): StudyProgress {
    const settled = this.#summary?.provenance.draws === this.#draws;
    return {
      drawsDone: this.#rows.draws,
      draws: this.#draws,
      summary: this.#summary,
      settled,
      rows: settled ? this.#rows.joined() : undefined,
    };
  }
}

/** A summary costs a drawing of the page: none short of the last. */
function nextSummaryAt(ready: number, draws: number): number {
  const next = Math.max(SECOND_SUMMARY, 2 * ready);
  return 1.5 * next > draws ? draws : next;
}

/** Lets workers meet the study before it counts: the first draws of a new worker take many times as long as later ones. */
export async function warmUp(
  hands: readonly StudyHand[],
  scenario: Scenario,
  seed: string,
  signal: AbortSignal,
): Promise<void> {
  const each = async (hand: StudyHand) => {
    await hand.ask({ job: 'prepare', scenario, seed });
    for (let draw = 0; draw < WARM_UP_DRAWS && !signal.aborted; draw++)
      await hand.ask({ job: 'shard', from: draw, to: draw + 1 });
  };
  await Promise.allSettled(hands.map(each)); // what goes wrong is told when it counts
}

/** As many workers as this machine has use for, or `count`. */
export function studyHands(count = coresToUse()): StudyHand[] {
  return Array.from({ length: count }, () => new StudyHand());
}

function coresToUse(): number {
  return Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 2));
}

function aborted(signal: AbortSignal | undefined): Promise<'stopped'> {
  return new Promise((resolve) => {
    if (signal?.aborted) resolve('stopped');
    signal?.addEventListener('abort', () => resolve('stopped'), { once: true });
  });
}
