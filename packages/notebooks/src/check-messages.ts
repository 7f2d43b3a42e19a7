/** What a page and the worker that looks a household over say to each other: one question, one answer. */
import type { CheckOptions, CheckReport, Scenario } from '@rideout/sim';

export interface CheckAsk {
  readonly scenario: Scenario;
  readonly options: CheckOptions;
}

export type CheckReply =
  | { readonly reply: 'report'; readonly report: CheckReport }
  | { readonly reply: 'failed'; readonly message: string };
