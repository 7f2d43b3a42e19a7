/** One worker, asked one thing at a time. */
import type { StudyJob, StudyReply } from './study-messages.ts';
import StudyWorker from './study-worker.ts?worker&inline';

export class StudyHand {
  readonly #worker = new StudyWorker({ name: 'rideout-study' });

  /** Rejects with the worker's own words when the job fails, and when the browser will not run it at all. */
  ask(job: StudyJob): Promise<StudyReply> {
    return new Promise((resolve, reject) => {
      this.#worker.onmessage = ({ data }: MessageEvent<StudyReply>) =>
        data.reply === 'failed' ? reject(new Error(data.message)) : resolve(data);
      this.#worker.onerror = (event) =>
        reject(new Error(event.message || 'this browser does not let a page from a file run its own worker'));
      this.#worker.postMessage(job);
    });
  }

  /** Ends the worker, whatever it is doing. */
  dismiss(): void {
    this.#worker.terminate();
  }
}
