/** What the publisher put into the page. */
import type { Scenario, StudySummary } from '@rideout/sim';

/** The page's own study: data, never code. */
export interface EmbeddedStudy {
  readonly scenario: Scenario;
  readonly seed: string;
  readonly draws: number;
  /** The study as it was when the page was made, so that a reader sees the answer before anything has run. */
  readonly summary?: StudySummary | undefined;
  /** What was odd about the file, in sentences; left out where nothing was. */
  readonly notes?: readonly string[] | undefined;
}

/** The id of the page's data element. */
export const EMBEDDED_ID = 'rideout-study';

/** @throws Error, in words for the reader, when the file is incomplete. */
export function embeddedStudy(): EmbeddedStudy {
  const text = document.getElementById(EMBEDDED_ID)?.textContent;
  if (!text?.trim()) {
    throw new Error(
      'This page carries no household. Publish it anew from a scenario file; a page copied in part does not work.',
    );
  }
  return JSON.parse(text) as EmbeddedStudy;
}
