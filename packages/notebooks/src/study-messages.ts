/** What a page and its workers say to each other. A worker prepares one study, then does one job after another. */
import type { OutcomeRows, Scenario, StudySummary } from '@rideout/sim';

export type StudyJob =
  | { readonly job: 'prepare'; readonly scenario: Scenario; readonly seed: string }
  /** Draws `from` … `to - 1`, every alternative and strategy. */
  | { readonly job: 'shard'; readonly from: number; readonly to: number }
  | { readonly job: 'summarise'; readonly rows: OutcomeRows };

export type StudyReply =
  | { readonly reply: 'prepared' }
  | { readonly reply: 'shard'; readonly from: number; readonly to: number; readonly rows: OutcomeRows }
  | { readonly reply: 'summary'; readonly summary: StudySummary }
  | { readonly reply: 'failed'; readonly message: string };
