/** Weather comes in spells: how daily clearness holds on. MODEL.md §Weather, W1. */

/**
 * The day-to-day sequence is the sum of two first-order autoregressions with half the variance each: a quick one whose
 * persistence makes up the month's own, and one for spells of weather. A single one with the measured lag-1 correlation
 * has too few long dark spells: at Penn State (SURFRAD 1998–2017) 2.5 % of dark days in runs of seven or more against
 * 6.2 % measured. Share and persistence of the spells were chosen there so that dark runs, worst spells of a year and
 * differences between years all stay within what 20 years can tell (`tests/published/generated-weather.test.ts`);
 * slower spells with the same runs make months differ too much from year to year.
 */
export const SPELL_VARIANCE_FRACTION = 0.5;
export const SPELL_LAG1 = 0.5;
