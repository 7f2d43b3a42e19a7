/** Circuits and what is plugged into them. */
import { z } from 'zod';
import { fraction, positive, atLeastZero, identifier, text, title, clockWindows } from './schema-terms.ts';
import { circuitWiring } from './schema-wiring.ts';

const about = {
  id: identifier().optional(),
  title: title().optional(),
  count: z.int().min(1).max(100).default(1).describe('How many of the same.'),
  dayScatterFraction: fraction()
    .default(0.1)
    .describe(
      'Day-to-day spread of its use, beside the household’s own; thermostats and schedules have none. Common practice, no source.',
    ),
};
const starting = {
  startingW: atLeastZero()
    .optional()
    .describe('Watts for the seconds of a start; left out: no more than running.'),
};

const steady = z.strictObject({ kind: z.literal('steady'), ...about, runningW: atLeastZero() });
const dutyCycled = z.strictObject({
  kind: z.literal('duty-cycled'),
  ...about,
  runningW: positive(),
  ...starting,
  onMinutes: positive().max(1440).describe('Length of one run.'),
  dutyFraction: z.number().gt(0).max(1).describe('Share of the time it runs.'),
  warmerPerC: z
    .number()
    .min(0)
    .max(0.2)
    .default(0)
    .describe('Share by which the duty grows for each °C the room is above site.indoorC.'),
});
const events = z.strictObject({
  kind: z.literal('events'),
  ...about,
  runningW: positive(),
  ...starting,
  usesPerDay: atLeastZero().max(500),
  minutesPerUse: positive().max(1440),
  lengthScatterFraction: fraction()
    .default(0.3)
    .describe('Spread of the length of a use (log-normal). Common practice, no source.'),
  hourWeights: z
    .array(atLeastZero())
    .length(24, 'twenty-four weights, midnight first')
    .optional()
    .describe('When uses fall; left out: evenly over waking hours.'),
});
const scheduled = z.strictObject({
  kind: z.literal('scheduled'),
  ...about,
  runningW: positive(),
  ...starting,
  windows: clockWindows(),
});
const lights = z.strictObject({
  kind: z.literal('lights'),
  ...about,
  runningW: positive(),
  litFraction: fraction().default(1).describe('Share of runningW that is lit in a dark waking minute.'),
  darkBelowElevationDeg: z
    .number()
    .min(-18)
    .max(30)
    .default(3)
    .describe('Dark indoors while the sun stands lower than this. Common practice, no source.'),
});
const thermostat = z.strictObject({
  kind: z.literal('thermostat'),
  ...about,
  does: z.enum(['cools', 'heats']),
  runningW: positive(),
  ...starting,
  setC: z.number().min(-40).max(40),
  bandC: z.number().min(0.02).max(10).describe('Cuts in and out this far on either side of setC.'),
  surroundings: z
    .enum(['indoors', 'outdoors', 'garage'])
    .default('indoors')
    .describe('Where it stands; whose temperature it drifts to.'),
  surroundingsOffsetC: z.number().min(-30).max(30).default(0).describe('Gains from sun, people, cooking.'),
  timeConstantHours: positive().max(2000).describe('How slowly it drifts to its surroundings when off.'),
  dutyFraction: z
    .number()
    .gt(0)
    .lt(1)
    .describe('Share of the time it runs when its surroundings are at dutySurroundingsC.'),
  dutySurroundingsC: z.number().min(-40).max(60),
  limitC: z
    .number()
    .min(-40)
    .max(60)
    .optional()
    .describe('Past this the need it serves is unmet (refrigerator: 4.4 °C, food-safety guidance).'),
});
const measured = z.strictObject({
  kind: z.literal('measured'),
  ...about,
  file: text().describe('CSV with a time column and a watts column, path from this file.'),
  scale: positive()
    .default(1)
    .describe('Times the watts of the file: 1000 for kilowatts. Default: as they stand.'),
});
const typical = z.looseObject({
  typical: identifier().describe(
    'A row of data/appliances.csv; any key of that kind of appliance can be given beside it.',
  ),
});

export const appliance = z.discriminatedUnion('kind', [
  steady,
  dutyCycled,
  events,
  scheduled,
  lights,
  thermostat,
  measured,
]);

export const circuit = z.strictObject({
  id: identifier(),
  title: title().optional(),
  leg: z.enum(['L1', 'L2', 'both']).describe('both: a 240 V circuit, half from each side.'),
  tier: z.int().min(1).max(5).describe('1 is kept longest.'),
  graceMinutes: z
    .int()
    .min(0)
    .max(10080)
    .default(0)
    .describe(
      'Minutes it may go without power while it is wanted before that counts; a pump that runs an hour a day uses up 60 in a day.',
    ),
  need: identifier()
    .optional()
    .describe('What it serves: food, water, warmth, medical, light, talk or a word of your own.'),
  breakerA: positive().max(200).optional(),
  ...circuitWiring,
  legFixed: z.boolean().default(false).describe('Its leg may not be changed by advice.'),
  appliances: z.array(z.union([appliance, typical])).min(1),
});
