/** How facts of the trade without a source are marked. */
export const PRACTICE = 'common practice, no source';
