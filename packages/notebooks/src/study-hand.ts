/** One worker: asked things one after another, it answers in the same order. */
import { workerFault } from './error-words.ts';
import type { StudyJob, StudyReply } from './study-messages.ts';
import StudyWorker from './study-worker.ts?worker&inline';

interface Asked {
  readonly resolve: (reply: StudyReply) => void;
  readonly reject: (error: Error) => void;
}

export class StudyHand {
  readonly #worker = new StudyWorker({ name: 'rideout-study' });
  readonly #asked: Asked[] = [];

  constructor() {
    this.#worker.onmessage = ({ data }: MessageEvent<StudyReply>) => {
      const { resolve, reject } = this.#asked.shift()!;
      if (data.reply === 'failed') reject(new Error(data.message));
      else resolve(data);
    };
    this.#worker.onerror = (event) => {
      const error = workerFault(event);
      for (const { reject } of this.#asked.splice(0)) reject(error);
    };
  }

  /**
   * May be asked before it has answered the last: whoever asked that need not wait for it.
   * Rejects with the worker's own words when the job fails, and when the browser will not run it at all.
   */
  ask(job: StudyJob): Promise<StudyReply> {
    return new Promise((resolve, reject) => {
      this.#asked.push({ resolve, reject });
      this.#worker.postMessage(job);
    });
  }

  /** Ends the worker, whatever it is doing. */
  dismiss(): void {
    this.#worker.terminate();
  }
}
