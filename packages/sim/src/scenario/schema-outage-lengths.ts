/** How long outages last and how often they come: for the question of the next outage. `days` does not read it. */
import { z } from 'zod';
import { positive, text, title } from './schema-terms.ts';

const part = z
  .strictObject({
    title: title().optional(),
    perYear: positive()
      .max(366)
      .describe('Outages of this kind in a year; for a whole utility the published SAIFI (IEEE 1366).'),
    meanHours: positive()
      .max(10_000)
      .optional()
      .describe('Mean length; for a whole utility the published CAIDI, SAIDI over SAIFI.'),
    sdHours: positive()
      .max(100_000)
      .optional()
      .describe('Standard deviation: lengths are then log-normal; left out: exponential.'),
    hours: z
      .array(positive().max(10_000))
      .min(1)
      .max(1000)
      .optional()
      .describe('Your own list of lengths instead, each as likely as any other.'),
  })
  .refine((p) => (p.meanHours === undefined) !== (p.hours === undefined), {
    message: 'either meanHours or a list of hours',
  })
  .refine((p) => p.sdHours === undefined || p.meanHours !== undefined, {
    message: 'sdHours beside meanHours only',
    path: ['sdHours'],
  });

export const outageLengths = z
  .strictObject({
    published: z
      .enum(['us-2017', 'us-2024'])
      .optional()
      .describe('Published national figures: United States 2017 or 2024 (EIA).'),
    source: text().max(300).optional().describe('Where your own figures come from.'),
    kinds: z
      .array(part)
      .min(1)
      .max(12)
      .optional()
      .describe('Kinds of outages, such as ordinary ones and storms, each with its own number and lengths.'),
  })
  .refine((o) => (o.published === undefined) !== (o.kinds === undefined), {
    message: 'either published or kinds',
  });

/** How long outages last and how often they come: published figures, or kinds of your own. */
export type OutageLengthsSpec = z.output<typeof outageLengths>;
export type OutageKindSpec = z.output<typeof part>;
