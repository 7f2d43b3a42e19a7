/** What a page and its workers say to each other. A worker prepares one study, then does one job after another. */
import type { DrawTrace, OutcomeRows, RowsWanted, Scenario, StudySummary, TraceChoice } from '@rideout/sim';

export type StudyJob =
  | {
      readonly job: 'prepare';
      readonly scenario: Scenario;
      readonly seed: string;
      readonly rows?: RowsWanted | undefined;
    }
  /** Draws `from` … `to - 1`, every alternative and strategy. */
  | { readonly job: 'shard'; readonly from: number; readonly to: number }
  | { readonly job: 'summarise'; readonly rows: OutcomeRows }
  /** One draw of one alternative and strategy, minute by minute. */
  | { readonly job: 'trace'; readonly choice: TraceChoice };

export type StudyReply =
  | { readonly reply: 'prepared' }
  | { readonly reply: 'shard'; readonly from: number; readonly to: number; readonly rows: OutcomeRows }
  | { readonly reply: 'summary'; readonly summary: StudySummary }
  | { readonly reply: 'trace'; readonly trace: DrawTrace }
  | { readonly reply: 'failed'; readonly message: string };
