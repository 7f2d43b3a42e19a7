/**
 * What a household is: the one schema of a scenario file.
 *
 * Conventions: every key that carries a physical quantity ends in its unit (`W`, `Wh`, `C`, `Deg`, `Minutes`,
 * `Hours`, `Days`); shares are fractions from 0 to 1 and say so; azimuths are clockwise from north; clock times are
 * local civil time, "HH:MM". The defaults live here and nowhere else, each with its ground.
 */
import { z } from 'zod';

const fraction = () => z.number().min(0).max(1);
/** Beyond any household's watts and watt-hours: keeps slips of the pen away from sums. */
const MOST = 1_000_000;
const positive = () => z.number().positive().max(MOST);
const atLeastZero = () => z.number().min(0).max(MOST);
const identifier = () =>
  z
    .string()
    .regex(/^[a-z][a-z0-9-]{0,39}$/, 'lower-case letters, digits and hyphens, starting with a letter')
    .describe('A short name used to refer to this item: lower-case letters, digits, hyphens.');
const title = () => z.string().min(1).max(120);

/** "06:30-22:00" (local civil time; may pass midnight; 24:00 is the day's end). */
export const clockWindow = z
  .string()
  .regex(
    /^([01]\d|2[0-3]):[0-5]\d-(([01]\d|2[0-3]):[0-5]\d|24:00)$/,
    'a window of local clock time such as "06:30-22:00"',
  );
const clockWindows = () => z.array(clockWindow).min(1);
const month = () => z.int().min(1).max(12);
const twelve = (each: z.ZodNumber) => z.array(each).length(12, 'twelve numbers, January first');

const site = z.strictObject({
  place: z.string().max(120).default('').describe('Free text shown in results.'),
  latitudeDeg: z.number().min(-90).max(90).describe('North is positive.'),
  longitudeDeg: z.number().min(-180).max(180).describe('East is positive.'),
  elevationM: z.number().min(-430).max(6000).default(0),
  timeZone: z.string().describe('IANA zone, such as America/New_York; daylight saving follows from it.'),
  groundReflectance: fraction()
    .default(0.2)
    .describe('Common practice: 0.2 bare ground or grass, 0.7 fresh snow.'),
  windMs: atLeastZero().default(3).describe('Wind at the panels where the weather source has none, m/s.'),
  indoorC: z.number().min(-10).max(40).default(21).describe('Room temperature when nothing changes it, °C.'),
  indoorFollowsFraction: fraction()
    .default(0.3)
    .describe(
      'How far rooms follow the outdoor daily mean away from indoorC once the grid is gone; 0 = not at all.',
    ),
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

const weather = z
  .strictObject({
    normals: identifier().optional().describe('A place in data/normals.csv.'),
    monthly: monthlyNormals.optional().describe('Your own twelve numbers instead.'),
    yearFile: z
      .string()
      .optional()
      .describe('An hourly weather year (TMY3 CSV, EPW or a plain table), path from this file.'),
    windowDays: z
      .int()
      .min(0)
      .max(182)
      .default(15)
      .describe('Weather-year days are taken from this many days around the date.'),
    blockDays: z
      .int()
      .min(1)
      .max(60)
      .default(5)
      .describe('Mean length of the runs of days taken from the weather year together.'),
    snowCoverDays: z
      .strictObject({ perMonth: twelve(z.number().min(0).max(31)), untilCleared: z.boolean().default(false) })
      .optional()
      .describe(
        'Days a month on which snow hides the panels; untilCleared: until somebody awake clears them.',
      ),
  })
  .refine((w) => [w.normals, w.monthly, w.yearFile].filter((x) => x !== undefined).length === 1, {
    message: 'exactly one of normals, monthly or yearFile',
  });

const outage = z
  .strictObject({
    startLocal: z
      .string()
      .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/, 'a local date and time such as 2026-01-15T18:00')
      .optional()
      .describe('A fixed start. Leave out and give months to start at a random minute of a random day.'),
    months: z.array(month()).min(1).optional(),
    year: z
      .int()
      .min(1950)
      .max(2100)
      .default(2026)
      .describe('Calendar year used for random starts (daylight saving, weekdays).'),
    horizonDays: z
      .number()
      .min(1 / 24)
      .max(366)
      .default(14),
    stormLed: z
      .boolean()
      .default(false)
      .describe('The storm that took the grid is still overhead: the first day is a dull one.'),
    stormDullestFraction: fraction()
      .default(0.2)
      .describe('A storm-led start falls in this dullest share of days.'),
  })
  .refine((o) => (o.startLocal === undefined) !== (o.months === undefined), {
    message: 'either startLocal or months, not both',
  });

const lossCurve = {
  idleW: atLeastZero().describe('p0: watts eaten while on with no load.'),
  lossPerW: z.number().min(0).max(0.5).default(0.03).describe('k1: share of the delivered watts lost.'),
  lossPerW2: z
    .number()
    .min(0)
    .max(0.001)
    .default(0)
    .describe('k2: loss growing with the square of the watts, 1/W.'),
};

const inverter = z.strictObject({
  continuousW: positive(),
  surgeW: positive().describe('Watts it can start, for seconds.'),
  overloadMinutes: z
    .int()
    .min(0)
    .max(60)
    .default(0)
    .describe('Whole minutes above continuousW it bears before it trips.'),
  ...lossCurve,
  standbyW: atLeastZero().default(0).describe('Watts eaten while off or asleep.'),
  resetsItselfAfterMinutes: z
    .int()
    .min(1)
    .max(1440)
    .optional()
    .describe('Restarts itself this long after a trip; left out: a person must reset it.'),
  resetTries: z
    .int()
    .min(1)
    .max(100)
    .default(3)
    .describe('Self-resets in a row before it stays down until a person comes.'),
});

const coldPoint = z.tuple([z.number().min(-60).max(60), fraction()]);

const module_ = z.strictObject({
  capacityWh: positive().describe('Nameplate energy of one module.'),
  maxChargeW: positive(),
  maxDischargeW: positive(),
  chargeEfficiency: z
    .number()
    .min(0.5)
    .max(1)
    .default(0.97)
    .describe('One way. Literature: LFP cells 0.93 to 0.97 there and back near 25 °C.'),
  dischargeEfficiency: z.number().min(0.5).max(1).default(0.97),
  selfDischargePerMonthFraction: fraction().default(0.03),
});

const battery = z
  .strictObject({
    modules: z.int().min(1).max(64).default(1),
    module: module_,
    healthFraction: z.number().min(0.1).max(1).default(1).describe('What is left of the nameplate capacity.'),
    startFraction: fraction()
      .optional()
      .describe(
        'State of charge when the outage starts; left out: anywhere between reserveFraction and full.',
      ),
    reserveFraction: fraction()
      .default(1)
      .describe(
        'The share always kept for outages while the grid is up; the draw starts between it and full.',
      ),
    cutOffFraction: fraction().default(0.1).describe('The unit stops here to spare the modules.'),
    restartFraction: fraction().default(0.2).describe('After a cut-off the unit comes back here.'),
    place: z.enum(['indoors', 'garage', 'outdoors']).default('indoors'),
    minChargeC: z.number().min(-40).max(20).default(0).describe('No charging below this module temperature.'),
    coldCapacity: z
      .array(coldPoint)
      .min(2)
      .default([
        [-20, 0.6],
        [-10, 0.75],
        [0, 0.85],
        [25, 1],
      ])
      .describe(
        '[°C, fraction of capacity that can be drawn], rising temperatures. Default: middle of the literature ranges for LFP.',
      ),
  })
  .refine((b) => b.cutOffFraction < b.restartFraction, {
    message: 'a fraction above cutOffFraction',
    path: ['restartFraction'],
  })
  .refine((b) => b.coldCapacity.every((p, i, all) => i === 0 || p[0] > (all[i - 1]?.[0] ?? -Infinity)), {
    message: 'temperatures that rise from point to point',
    path: ['coldCapacity'],
  });

const array_ = z.strictObject({
  peakW: positive().describe('Nameplate watts at 1000 W/m², 25 °C.'),
  tiltDeg: z.number().min(0).max(90),
  azimuthDeg: z.number().min(0).max(360).describe('Clockwise from north: 180 faces south.'),
  powerTemperatureCoefficientPerC: z.number().min(-0.01).max(0).default(-0.0037),
  lossFraction: fraction()
    .default(0.14)
    .describe('Soiling, wiring, mismatch, age together. Default: California Title 24 compliance figure.'),
  openBackHeatLossU0: positive().default(25).describe('Faiman 2008 U0, W/m²K.'),
  windHeatLossU1: atLeastZero().default(6.84).describe('Faiman 2008 U1, W·s/m³K.'),
});

const solar = z.strictObject({
  inputLimitW: positive().describe('Most watts the unit takes from its panels; the rest is clipped.'),
  arrays: z.array(array_).min(1).max(8),
});

const leg = z.enum(['L1', 'L2']);

const unit = z.strictObject({
  id: identifier(),
  leg: leg.describe('The 120 V side this unit feeds.'),
  inverter,
  battery,
  solar: solar.optional(),
  charger: z
    .strictObject({ maxW: positive(), efficiency: z.number().min(0.5).max(1).default(0.93) })
    .optional()
    .describe('AC charging from the grid or a generator; kept for studies that bring power back.'),
});

const pair = z.strictObject({
  stopsTogether: z.boolean().default(false).describe('One unit stopping takes the other down with it.'),
});

const about = {
  id: identifier().optional(),
  title: title().optional(),
  count: z.int().min(1).max(100).default(1).describe('How many of the same.'),
  dayScatterFraction: fraction()
    .default(0.1)
    .describe(
      'Day-to-day spread of its use, beside the household’s own; thermostats and schedules have none.',
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
  lengthScatterFraction: fraction().default(0.3).describe('Spread of the length of a use (log-normal).'),
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
  darkBelowElevationDeg: z.number().min(-18).max(30).default(3),
});
const thermostat = z.strictObject({
  kind: z.literal('thermostat'),
  ...about,
  does: z.enum(['cools', 'heats']),
  runningW: positive(),
  ...starting,
  setC: z.number().min(-40).max(40),
  bandC: z.number().min(0.02).max(10).describe('Cuts in and out this far on either side of setC.'),
  surroundings: z.enum(['indoors', 'outdoors', 'garage']).default('indoors'),
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
  file: z.string().describe('CSV with a time column and a watts column, path from this file.'),
  scale: positive().default(1),
});
const typical = z.looseObject({
  typical: identifier().describe(
    'A row of data/appliances.csv; any key of that kind of appliance can be given beside it.',
  ),
});

export const applianceKinds = { steady, dutyCycled, events, scheduled, lights, thermostat, measured };
export const appliance = z.discriminatedUnion('kind', [
  steady,
  dutyCycled,
  events,
  scheduled,
  lights,
  thermostat,
  measured,
]);

const circuit = z.strictObject({
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
  legFixed: z.boolean().default(false).describe('Its leg may not be changed by advice.'),
  appliances: z.array(z.union([appliance, typical])).min(1),
});

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

const strategy = z.strictObject({
  id: identifier(),
  title: title(),
  carriedOutBy: z.enum(['person', 'switch']).default('person'),
  rules: z.array(rule).default([]).describe('A circuit is on while every rule that names it allows it.'),
});

const person = z.strictObject({
  awake: clockWindow.default('06:30-22:30'),
  looksEveryMinutes: z
    .int()
    .min(1)
    .max(1440)
    .default(60)
    .describe('How often the battery reading is looked at while awake.'),
  tripReactionMinutes: z
    .int()
    .min(0)
    .max(1440)
    .default(10)
    .describe('From a trip noticed to the unit reset.'),
  afterTripShedTiers: z
    .int()
    .min(0)
    .max(4)
    .default(1)
    .describe('How many of the least essential tiers stay off after a reset.'),
  afterTripHoldMinutes: z.int().min(0).max(1440).default(60),
});

const usage = z.strictObject({
  householdScatterFraction: fraction()
    .default(0.15)
    .describe('How much frugal and lavish weeks differ (log-normal spread of one factor per draw).'),
});

const alternative = z.strictObject({
  id: identifier(),
  title: title(),
  change: z
    .record(z.string(), z.unknown())
    .default({})
    .describe('Path to new value, such as "units.*.battery.modules": 2; list items by id, * for all.'),
});

const prices = z.strictObject({
  currency: z.string().min(1).max(8),
  items: z.record(z.string(), z.number().min(0)),
});

export const scenarioSchema = z.strictObject({
  $schema: z.string().optional(),
  rideout: z.literal(1).describe('Version of this file layout.'),
  title: title(),
  notes: z.string().optional(),
  site,
  weather,
  outage,
  units: z.array(unit).min(1).max(2),
  pair: pair.prefault({}),
  circuits: z.array(circuit).min(1).max(60),
  usage: usage.prefault({}),
  person: person.prefault({}),
  strategies: z.array(strategy).min(1).max(24),
  alternatives: z.array(alternative).max(24).default([]),
  prices: prices.optional(),
});

/** A scenario as a person writes it. */
export type ScenarioSpec = z.input<typeof scenarioSchema>;
/** The same with every default filled in; weather and profiles still named by file or place. */
export type CheckedScenario = z.output<typeof scenarioSchema>;
export type UnitSpec = CheckedScenario['units'][number];
export type CircuitSpec = CheckedScenario['circuits'][number];
export type ApplianceSpec = z.output<typeof appliance>;
export type StrategySpec = CheckedScenario['strategies'][number];
export type RuleSpec = z.output<typeof rule>;
export type PersonSpec = CheckedScenario['person'];
export type SiteSpec = CheckedScenario['site'];
export type OutageSpec = CheckedScenario['outage'];
export type WeatherSpec = CheckedScenario['weather'];
export type ArraySpec = NonNullable<UnitSpec['solar']>['arrays'][number];
