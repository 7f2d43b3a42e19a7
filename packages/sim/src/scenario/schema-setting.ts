/** Where, in what weather, and what kind of outage. */
import { z } from 'zod';
import { fraction, atLeastZero, identifier, startMonths, text, twelve } from './schema-terms.ts';
import { siteExtremes } from './schema-wiring.ts';

export const site = z.strictObject({
  place: text().max(120).default('').describe('Free text shown in results.'),
  latitudeDeg: z.number().min(-90).max(90).describe('North is positive.'),
  longitudeDeg: z.number().min(-180).max(180).describe('East is positive.'),
  elevationM: z
    .number()
    .min(-430)
    .max(6000)
    .default(0)
    .describe(
      'Above the sea, metres. Default: sea level. Write your own for a generator: it gives less high up.',
    ),
  timeZone: z.string().describe('IANA zone, such as America/New_York; daylight saving follows from it.'),
  groundReflectance: fraction()
    .default(0.2)
    .describe('Common practice: 0.2 bare ground or grass, 0.7 fresh snow.'),
  windMs: atLeastZero()
    .default(3)
    .describe('Wind at the panels where the weather source has none, m/s. Common practice, no source.'),
  indoorC: z
    .number()
    .min(-10)
    .max(40)
    .default(21)
    .describe('Room temperature when nothing changes it, °C. Common practice, no source.'),
  indoorFollowsFraction: fraction()
    .default(0.3)
    .describe(
      'How far rooms follow the outdoor daily mean away from indoorC once the grid is gone; 0 = not at all. Common practice, no source.',
    ),
  ...siteExtremes,
});

/** Twelve monthly values that the weather generator works from. */
const monthlyNormals = z.strictObject({
  clearnessMean: twelve(z.number().min(0.05).max(0.85)).describe(
    'Mean daily clearness index Kt of each month.',
  ),
  clearnessSd: twelve(z.number().min(0.01).max(0.35))
    .optional()
    .describe('Spread of daily Kt; left out: from the published distribution.'),
  clearnessLag1: twelve(z.number().min(-0.5).max(0.95)).optional().describe('Day-to-day correlation of Kt.'),
  dryBulbMeanC: twelve(z.number().min(-60).max(50)),
  dryBulbDailyRangeC: twelve(z.number().min(0).max(40))
    .optional()
    .describe('Mean daily maximum less mean daily minimum.'),
  dryBulbSdC: twelve(z.number().min(0).max(20))
    .optional()
    .describe('Spread of the daily mean about the month.'),
  dryBulbLag1: twelve(z.number().min(-0.5).max(0.99)).optional(),
  clearnessDryBulbCorrelation: twelve(z.number().min(-1).max(1)).optional(),
});

export const weather = z
  .strictObject({
    normals: identifier().optional().describe('A place in data/normals.csv.'),
    monthly: monthlyNormals.optional().describe('Your own twelve numbers instead.'),
    yearFile: text()
      .optional()
      .describe('An hourly weather year (TMY3 CSV, EPW or a plain table), path from this file.'),
    windowDays: z
      .int()
      .min(0)
      .max(182)
      .default(15)
      .describe(
        'Weather-year days are taken from this many days around the date. Default: a month in all; common practice, no source.',
      ),
    blockDays: z
      .int()
      .min(1)
      .max(60)
      .default(5)
      .describe(
        'Mean length of the runs of days taken from the weather year together (stationary bootstrap, Politis & Romano 1994). The length: common practice, no source.',
      ),
    snowCoverDays: z
      .strictObject({
        perMonth: twelve(z.number().min(0).max(31)),
        untilCleared: z
          .boolean()
          .default(false)
          .describe('Somebody clears them. Default: nobody does, the cautious side.'),
      })
      .optional()
      .describe(
        'Days a month on which snow hides the panels; untilCleared: until somebody clears them, two hours after the first sunrise of a spell.',
      ),
  })
  .refine((w) => [w.normals, w.monthly, w.yearFile].filter((x) => x !== undefined).length === 1, {
    message: 'exactly one of normals, monthly or yearFile',
  });

export const outage = z
  .strictObject({
    startLocal: z
      .string()
      .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/, 'a local date and time such as 2026-01-15T18:00')
      .optional()
      .describe('A fixed start. Leave out and give months to start at a random minute of a random day.'),
    months: startMonths().optional(),
    year: z
      .int()
      .min(1950)
      .max(2100)
      .default(2026)
      .describe(
        'Calendar year used for random starts (daylight saving, weekdays). Any year does: the choice is ours.',
      ),
    horizonDays: z
      .number()
      .min(1 / 24)
      .max(366)
      .default(14)
      .describe(
        'Days that are looked at; a run that still goes then is told as at least so long. Common practice, no source.',
      ),
    stormLed: z
      .boolean()
      .default(false)
      .describe('The storm that took the grid is still overhead: the first day is a dull one.'),
    stormDullestFraction: fraction()
      .default(0.2)
      .describe('A storm-led start falls in this dullest share of days. Common practice, no source.'),
  })
  .refine((o) => o.startLocal !== undefined || o.months !== undefined, {
    message: 'months, at least one, or a startLocal',
  })
  .refine((o) => o.startLocal === undefined || o.months === undefined, {
    message: 'either startLocal or months, not both',
  });
