/** The simulation, off the page's own thread: the very code the command line runs. */
import { prepareStudy, runShard, summarise, traceDraw, type DrawTrace, type Study } from '@rideout/sim';
import { saidBy } from './error-words.ts';
import type { StudyJob, StudyReply } from './study-messages.ts';

let study: Study | undefined;

addEventListener('message', (event: MessageEvent<StudyJob>) => {
  try {
    answer(event.data);
  } catch (error) {
    say({ reply: 'failed', message: saidBy(error) });
  }
});

function answer(message: StudyJob): void {
  if (message.job === 'prepare') {
    study = prepareStudy(message.scenario, message);
    return say({ reply: 'prepared' });
  }
  if (!study) throw new Error('asked for draws before the study was prepared');
  if (message.job === 'summarise') return say({ reply: 'summary', summary: summarise(study, message.rows) });
  if (message.job === 'trace') {
    const trace = traceDraw(study, message.choice);
    return say({ reply: 'trace', trace }, traceBuffers(trace));
  }
  const { from, to } = message;
  const rows = runShard(study, from, to);
  say(
    { reply: 'shard', from, to, rows },
    Object.values(rows.columns).map((column) => column.buffer as ArrayBuffer),
  );
}

/** `moved`: buffers handed over instead of copied. */
function say(reply: StudyReply, moved: Transferable[] = []): void {
  postMessage(reply, { transfer: moved });
}

/** Megabytes of minutes: every column of the trace is its own array and can be handed over. */
function traceBuffers(trace: DrawTrace): Transferable[] {
  const columns = [trace, ...trace.units, ...trace.circuits].flatMap(
    (part) => Object.values(part) as unknown[],
  );
  return columns.flatMap((column) => (ArrayBuffer.isView(column) ? [column.buffer as ArrayBuffer] : []));
}
