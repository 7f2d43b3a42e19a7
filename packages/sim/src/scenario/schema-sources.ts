/** Energy that comes back during an outage: a generator, hours of grid, a vehicle's outlet. MODEL.md E1–E8. */
import { z } from 'zod';
import { atLeastZero, clockWindows, fraction, identifier, positive } from './schema-terms.ts';

const hours = () => z.number().positive().max(8784);

const litresPerHour = () => z.number().positive().max(1000);

const fuelUse = z
  .strictObject({
    halfLoadLPerHour: litresPerHour(),
    fullLoadLPerHour: litresPerHour(),
  })
  .refine((f) => !(f.fullLoadLPerHour > 0) || f.fullLoadLPerHour > f.halfLoadLPerHour, {
    message: 'more than halfLoadLPerHour: a loaded engine burns more',
    path: ['fullLoadLPerHour'],
  })
  .refine((f) => !(f.halfLoadLPerHour > 0) || f.fullLoadLPerHour <= 2 * f.halfLoadLPerHour, {
    message: 'at most twice halfLoadLPerHour: an engine without load burns fuel too',
    path: ['fullLoadLPerHour'],
  });

const byCharge = z
  .strictObject({
    by: z.literal('charge'),
    startBelowFraction: fraction()
      .default(0.3)
      .describe('Starts when the emptier bank that it charges falls below this. Common practice, no source.'),
    stopAboveFraction: fraction()
      .default(0.9)
      .describe(
        'Stops when every bank that it charges has reached this. Common practice, no source: the last tenth goes slowly.',
      ),
    during: clockWindows().optional().describe('Only in these windows.'),
    mostHoursPerDay: z.number().positive().max(24).optional(),
  })
  .refine((r) => r.startBelowFraction < r.stopAboveFraction, {
    message: 'a fraction above startBelowFraction',
    path: ['stopAboveFraction'],
  });
const byHours = z.strictObject({
  by: z.literal('hours'),
  hoursPerDay: z.number().positive().max(24).describe('Runs the first so many allowed hours of every day.'),
  during: clockWindows().optional().describe('Only in these windows.'),
});
const byNobody = z.strictObject({ by: z.literal('never') });

/** When the generator runs. */
export const generatorRun = z.discriminatedUnion('by', [byCharge, byHours, byNobody]);

const maintenance = z
  .strictObject({
    everyHours: hours().default(100).describe('Running hours between services. Common practice, no source.'),
    minutes: z
      .int()
      .min(0)
      .max(10_080)
      .default(60)
      .describe('It stands still for so long, and somebody must be awake. Common practice, no source.'),
  })
  .describe('Oil, filter, spark plug.');

const generator = z.strictObject({
  ratedW: positive().describe(
    'Running watts at sea level on a mild day, both sides of a 240 V set together.',
  ),
  surgeW: positive().optional().describe('Watts it can start, for seconds; left out: ratedW.'),
  volts: z
    .literal([120, 240])
    .describe('240: half of ratedW on each leg, and 240 V circuits can run. 120: no 240 V while it runs.'),
  feeds: z
    .array(identifier())
    .min(1)
    .optional()
    .describe('Units whose AC input it is plugged into; left out: every unit that has a charger.'),
  passesThrough: z
    .boolean()
    .default(true)
    .describe('Circuits run straight off it while it runs; false: it only charges.'),
  fuel: z
    .enum(['gasoline', 'diesel', 'propane'])
    .default('gasoline')
    .describe('What it burns. Default: what most portable sets burn; common practice, no source.'),
  fuelUse: fuelUse
    .optional()
    .describe('From its label or manual; left out: a cautious line for an engine of that fuel and size.'),
  tankL: positive().describe('Full when the grid goes.'),
  cansL: atLeastZero().default(0).describe('Fuel in cans; somebody awake pours it in.'),
  refuelMinutes: z
    .int()
    .min(0)
    .max(1440)
    .default(20)
    .describe(
      'Off, cooled down, filled: never refuel a running or hot engine. The time: common practice, no source.',
    ),
  starts: z
    .enum(['hand', 'automatic'])
    .default('hand')
    .describe('hand: somebody awake starts it, and switches it off at bedtime.'),
  quietHours: clockWindows().optional().describe('It never runs then.'),
  run: generatorRun
    .prefault({ by: 'charge' })
    .describe('When it runs, for strategies that do not say it themselves.'),
  maintenance: maintenance.prefault({}),
  derating: z
    .enum(['engine', 'none'])
    .default('engine')
    .describe('engine: less power high up and in heat; none: ratedW is what it gives here.'),
});

const grid = z.strictObject({
  onHours: hours().describe('Mean length of a stretch with grid.'),
  offHours: hours().describe('Mean length of a stretch without.'),
  onScatterFraction: fraction()
    .default(0.25)
    .describe('Spread of the one (log-normal). Common practice, no source.'),
  offScatterFraction: fraction()
    .default(0.25)
    .describe('Spread of the other (log-normal). Common practice, no source.'),
  firstOffHours: hours().optional().describe('Until the grid first comes back; left out: offHours.'),
});

const vehicle = z.strictObject({
  unit: identifier().describe('The unit that it charges.'),
  outletW: positive().describe('Steady watts at the vehicle’s outlet.'),
  efficiency: z
    .number()
    .min(0.5)
    .max(1)
    .default(0.85)
    .describe('From the outlet into the unit. Common practice, no source.'),
  during: clockWindows()
    .optional()
    .describe('When it is plugged in; left out: all day and night while the grid is gone.'),
  hoursPerDay: z.number().positive().max(24).optional().describe('The first so many hours of those.'),
  mostWhPerDay: positive().optional().describe('What the vehicle may give in a day.'),
  mostWh: positive().optional().describe('What it may give in the whole outage.'),
});

export const sources = z
  .strictObject({
    generator: generator.optional(),
    grid: grid
      .optional()
      .describe('Rolling outages: the grid comes back for hours at a time and serves everything.'),
    vehicle: vehicle.optional(),
  })
  .describe('Energy that comes back during the outage, other than by the unit’s own panels.');

export type SourcesSpec = z.output<typeof sources>;
export type GeneratorSpec = NonNullable<SourcesSpec['generator']>;
export type GeneratorRunSpec = z.output<typeof generatorRun>;
export type GridSpec = NonNullable<SourcesSpec['grid']>;
export type VehicleSpec = NonNullable<SourcesSpec['vehicle']>;
