/** Days in a study are 24 h from the outage's start, whatever the clocks on the wall do. */
export const MINUTES_PER_DAY = 1440;
