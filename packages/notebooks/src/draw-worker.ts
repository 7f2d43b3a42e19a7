/** The draws behind advice, off the page's own thread: the very code the command line runs. */
import { openJob, type RunDraws } from '@rideout/sim';
import type { DrawAsk, DrawReply } from './draw-messages.ts';
import { saidBy } from './error-words.ts';

let run: RunDraws | undefined;

addEventListener('message', ({ data }: MessageEvent<DrawAsk>) => {
  try {
    answer(data);
  } catch (error) {
    say({ reply: 'failed', message: saidBy(error) });
  }
});

function answer(asked: DrawAsk): void {
  if (asked.ask === 'open') {
    run = openJob(asked.job);
    return say({ reply: 'open' });
  }
  if (!run) throw new Error('asked for draws before the job was made ready');
  const { from, to } = asked;
  say({ reply: 'draws', from, to, rows: run(from, to) });
}

function say(reply: DrawReply): void {
  postMessage(reply);
}
