/** What a page and the workers of its advice say to each other: one job is made ready, then done piece by piece. */
import type { DrawJob, OutcomeRows } from '@rideout/sim';

export type DrawAsk =
  | { readonly ask: 'open'; readonly job: DrawJob }
  /** Draws `from` … `to - 1` of the job. */
  | { readonly ask: 'draws'; readonly from: number; readonly to: number };

export type DrawReply =
  | { readonly reply: 'open' }
  | { readonly reply: 'draws'; readonly from: number; readonly to: number; readonly rows: OutcomeRows }
  | { readonly reply: 'failed'; readonly message: string };
