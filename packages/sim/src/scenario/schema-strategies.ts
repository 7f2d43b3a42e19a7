/** What is on when, and who sees to it. */
import { z } from 'zod';
import { generatorRun } from './schema-sources.ts';
import { fraction, positive, identifier, title, clockWindow, clockWindows } from './schema-terms.ts';

const circuitChoice = z
  .strictObject({
    ids: z.array(identifier()).min(1).optional(),
    tiers: z.array(z.int().min(1).max(5)).min(1).optional(),
    legs: z
      .array(z.enum(['L1', 'L2', 'both']))
      .min(1)
      .optional()
      .describe('both: the 240 V circuits.'),
  })
  .refine((c) => c.ids !== undefined || c.tiers !== undefined || c.legs !== undefined, {
    message: 'at least one of ids, tiers, legs; a circuit must match every one given',
  });

const byCharge = z
  .strictObject({
    by: z.literal('charge'),
    circuits: circuitChoice,
    dropBelowFraction: fraction(),
    restoreAboveFraction: fraction(),
    reads: z
      .enum(['lowest', 'own'])
      .default('lowest')
      .describe('lowest: the emptier bank; own: the bank of the circuit’s own leg (240 V: the emptier).'),
  })
  .refine((r) => r.dropBelowFraction < r.restoreAboveFraction, {
    message: 'a fraction above dropBelowFraction',
    path: ['restoreAboveFraction'],
  });
const byClock = z.strictObject({
  by: z.literal('clock'),
  circuits: circuitChoice,
  onDuring: clockWindows(),
});
const bySun = z.strictObject({
  by: z.literal('sun'),
  circuits: circuitChoice,
  solarAboveW: positive().describe('All panels together, mean of the last 15 minutes.'),
});
const byRation = z.strictObject({
  by: z.literal('ration'),
  circuits: circuitChoice,
  onMinutesPerHour: z.int().min(1).max(59),
  whileAsleep: z.enum(['on', 'off']).default('on').describe('How a person leaves these circuits overnight.'),
});
const byOutage = z.strictObject({
  by: z.literal('outage').describe('Off from the first moment to the last.'),
  circuits: circuitChoice,
});
const bySleep = z
  .strictObject({
    by: z.literal('sleep'),
    unit: identifier().describe('The unit that sleeps; 240 V is off meanwhile.'),
    during: clockWindows().optional(),
    sleepBelowFraction: fraction().optional().describe('Sleeps while its bank is below this.'),
    wakeAboveFraction: fraction().optional(),
    circuits: z
      .enum(['moved', 'dropped'])
      .default('dropped')
      .describe('What becomes of its 120 V circuits: moved to the other unit, or off.'),
  })
  .refine((r) => (r.during === undefined) !== (r.sleepBelowFraction === undefined), {
    message: 'either during or sleepBelowFraction, not both',
  })
  .refine((r) => (r.sleepBelowFraction === undefined) === (r.wakeAboveFraction === undefined), {
    message: 'sleepBelowFraction and wakeAboveFraction together',
  })
  .refine((r) => r.sleepBelowFraction === undefined || r.sleepBelowFraction < (r.wakeAboveFraction ?? 0), {
    message: 'a fraction above sleepBelowFraction',
    path: ['wakeAboveFraction'],
  });

export const rule = z.discriminatedUnion('by', [byCharge, byClock, bySun, byRation, bySleep, byOutage]);

export const strategy = z.strictObject({
  id: identifier(),
  title: title(),
  carriedOutBy: z
    .enum(['person', 'switch'])
    .default('person')
    .describe('person: at looks, while awake; switch: at any minute. Default: what every house has.'),
  rules: z.array(rule).default([]).describe('A circuit is on while every rule that names it allows it.'),
  generator: generatorRun
    .optional()
    .describe('When the generator runs under this strategy; left out: as sources.generator.run says.'),
});

export const person = z.strictObject({
  awake: clockWindow
    .default('06:30-22:30')
    .describe('When somebody is up, local time. Common practice, no source.'),
  looksEveryMinutes: z
    .int()
    .min(1)
    .max(1440)
    .default(60)
    .describe('How often the battery reading is looked at while awake. Common practice, no source.'),
  tripReactionMinutes: z
    .int()
    .min(0)
    .max(1440)
    .default(10)
    .describe('From a trip noticed to the unit reset. Common practice, no source.'),
  afterTripShedTiers: z
    .int()
    .min(0)
    .max(4)
    .default(1)
    .describe('How many of the least essential tiers stay off after a reset. Common practice, no source.'),
  afterTripHoldMinutes: z
    .int()
    .min(0)
    .max(1440)
    .default(60)
    .describe('How long they stay off. Common practice, no source.'),
});
