/** Published figures of whole countries, as kinds of outages. */
import type { OutageKindSpec, OutageLengthsSpec } from '../../scenario/schema-outage-lengths.ts';

export type PublishedId = NonNullable<OutageLengthsSpec['published']>;

export interface PublishedFigures {
  readonly title: string;
  readonly source: string;
  readonly kinds: readonly OutageKindSpec[];
}

/**
 * Interruptions longer than five minutes, of the average customer. Major events are what the figures with them have
 * more than those without: (SAIDI with − without) / (SAIFI with − without) is their mean length. The figures give means
 * only. Ordinary ones are taken as exponential, major ones as log-normal with a standard deviation of twice the mean,
 * since some homes wait many times longer than most: our assumptions, no source.
 */
export const PUBLISHED_FIGURES: Readonly<Record<PublishedId, PublishedFigures>> = {
  'us-2017': {
    title: 'United States, 2017',
    source:
      'US EIA, Today in Energy, 30 November 2018 (Form EIA-861): 470 minutes and 1.4 interruptions with major events, about 2 hours and 1.0 without',
    kinds: [
      { title: 'Ordinary', perYear: 1, meanHours: 2 },
      { title: 'Major events', perYear: 0.4, ...majorEvents((470 / 60 - 2) / 0.4) },
    ],
  },
  'us-2024': {
    title: 'United States, 2024, a year of hurricanes',
    source:
      'US EIA, Today in Energy, 1 December 2025 (Electric Power Annual 2024): 11 hours, nearly 9 of them major events, and 1.5 interruptions; ordinary ones 1.0 as in 2017, assumed',
    kinds: [
      { title: 'Ordinary', perYear: 1, meanHours: 2 },
      { title: 'Major events', perYear: 0.5, ...majorEvents(9 / 0.5) },
    ],
  },
};

export const PUBLISHED_IDS = Object.keys(PUBLISHED_FIGURES) as PublishedId[];

function majorEvents(meanHours: number) {
  return { meanHours, sdHours: 2 * meanHours };
}

/** Kinds of outages as written, or as published. */
export function kindsOf(lengths: OutageLengthsSpec): { kinds: readonly OutageKindSpec[]; source: string } {
  if (lengths.published === undefined)
    return { kinds: lengths.kinds!, source: lengths.source ?? 'the household’s own figures' };
  const { title, source, kinds } = PUBLISHED_FIGURES[lengths.published];
  return { kinds, source: `${title}: ${source}` };
}
