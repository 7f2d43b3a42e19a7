import { Presets, SingleBar } from 'cli-progress';
import type { OutputOptions } from './output.ts';

export interface Progress {
  readonly update: (done: number) => void;
  readonly stop: () => void;
}

/** A bar with the time left, on standard error, when somebody is watching. */
export function startProgress(draws: number, { quiet }: OutputOptions): Progress {
  if (quiet === true || !process.stderr.isTTY) return { update: () => undefined, stop: () => undefined };
  const bar = new SingleBar(
    {
      format: 'outages {bar} {value} of {total}, {eta_formatted} left',
      stream: process.stderr,
      clearOnComplete: true,
      hideCursor: true,
      etaBuffer: 50,
    },
    Presets.rect,
  );
  bar.start(draws, 0);
  return { update: (done) => bar.update(done), stop: () => bar.stop() };
}
