/** Looks a household over, off the page's own thread: the very checks of the command line. */
import { checkScenario } from '@rideout/sim';
import type { CheckAsk, CheckReply } from './check-messages.ts';
import { saidBy } from './error-words.ts';

addEventListener('message', ({ data: { scenario, options } }: MessageEvent<CheckAsk>) => {
  postMessage(answer(scenario, options));
});

function answer(scenario: CheckAsk['scenario'], options: CheckAsk['options']): CheckReply {
  try {
    return { reply: 'report', report: checkScenario(scenario, options) };
  } catch (error) {
    return { reply: 'failed', message: saidBy(error) };
  }
}
