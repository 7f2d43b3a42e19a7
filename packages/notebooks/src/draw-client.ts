/** Running the draws of advice in the page: the same rows however many workers there are. */
import { RowsInOrder, type AskDraws, type DrawJob, type OutcomeRows } from '@rideout/sim';
import type { DrawAsk, DrawReply } from './draw-messages.ts';
import DrawWorker from './draw-worker.ts?worker&inline';
import { workerFault } from './error-words.ts';

export interface DrawCrew {
  readonly ask: AskDraws;
  /** Ends the workers, whatever they are doing; what is under way is never answered. */
  readonly dismiss: () => void;
}

const DRAWS_AT_ONCE = 4;
const MOST_WORKERS = 6;

/** One less than the machine has cores, 1 to 6. */
export function drawCrew(): DrawCrew {
  const count = Math.max(1, Math.min(MOST_WORKERS, (navigator.hardwareConcurrency || 2) - 1));
  const hands = Array.from({ length: count }, () => new DrawHand());
  return {
    ask: (job, draws, onDone) => askHands(hands, job, draws, onDone),
    dismiss: () => hands.forEach((hand) => hand.dismiss()),
  };
}

async function askHands(
  hands: readonly DrawHand[],
  job: DrawJob,
  draws: number,
  onDone: ((done: number) => void) | undefined,
): Promise<OutcomeRows> {
  const rows = new RowsInOrder();
  let given = 0;
  let done = 0;
  const work = async (hand: DrawHand) => {
    await hand.ask({ ask: 'open', job });
    while (given < draws) {
      const from = given;
      given = Math.min(from + DRAWS_AT_ONCE, draws);
      const reply = await hand.ask({ ask: 'draws', from, to: given });
      if (reply.reply !== 'draws') throw new Error(`asked for draws, got ${reply.reply}`);
      rows.add(reply.from, reply.to, reply.rows);
      done += reply.to - reply.from;
      onDone?.(done);
    }
  };
  await Promise.all(hands.map(work));
  return rows.joined();
}

/** One worker, asked one thing at a time. */
class DrawHand {
  readonly #worker = new DrawWorker({ name: 'rideout-draws' });

  /** Rejects with the worker's own words when the job fails, and when the browser will not run it at all. */
  ask(asked: DrawAsk): Promise<DrawReply> {
    return new Promise((resolve, reject) => {
      this.#worker.onmessage = ({ data }: MessageEvent<DrawReply>) =>
        data.reply === 'failed' ? reject(new Error(data.message)) : resolve(data);
      this.#worker.onerror = (event) => reject(workerFault(event));
      this.#worker.postMessage(asked);
    });
  }

  dismiss(): void {
    this.#worker.terminate();
  }
}
