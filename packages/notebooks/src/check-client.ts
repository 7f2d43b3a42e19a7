/** Has a household looked over by a worker of its own. */
import type { CheckOptions, CheckReport, Scenario } from '@rideout/sim';
import type { CheckAsk, CheckReply } from './check-messages.ts';
import CheckWorker from './check-worker.ts?worker&inline';
import { workerFault } from './error-words.ts';

/** Rejects with the worker's own words; aborting ends the worker, and it is never answered. */
export function lookOver(
  scenario: Scenario,
  options: CheckOptions,
  stopped: AbortSignal,
): Promise<CheckReport> {
  const worker = new CheckWorker({ name: 'rideout-check' });
  stopped.addEventListener('abort', () => worker.terminate(), { once: true });
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<CheckReply>) => {
      worker.terminate();
      if (data.reply === 'report') resolve(data.report);
      else reject(new Error(data.message));
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(workerFault(event));
    };
    worker.postMessage({ scenario, options } satisfies CheckAsk);
  });
}
