/**
 * What a household is: the one schema of a scenario file.
 *
 * Conventions: every key that carries a physical quantity ends in its unit (`W`, `Wh`, `C`, `Deg`, `Minutes`,
 * `Hours`, `Days`); shares are fractions from 0 to 1 and say so; azimuths are clockwise from north; clock times are
 * local civil time, "HH:MM". The defaults live in the schema and nowhere else, each with
 * its ground: `schema-setting`, `schema-units`, `schema-circuits` and `schema-strategies` hold its parts.
 */
import { z } from 'zod';
import { appliance, circuit } from './schema-circuits.ts';
import { ladder } from './schema-ladder.ts';
import { needs } from './schema-needs.ts';
import { outageLengths } from './schema-outage-lengths.ts';
import { outage, site, weather } from './schema-setting.ts';
import { person, rule, strategy } from './schema-strategies.ts';
import { fraction, identifier, text, title } from './schema-terms.ts';
import { sources } from './schema-sources.ts';
import { pair, unit } from './schema-units.ts';
import { unknowns } from './schema-unknowns.ts';

export { appliance } from './schema-circuits.ts';

const usage = z.strictObject({
  householdScatterFraction: fraction()
    .default(0.15)
    .describe(
      'How much frugal and lavish weeks differ (log-normal spread of one factor per draw). Common practice, no source.',
    ),
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
  currency: text().min(1).max(8),
  items: z.record(z.string(), z.number().min(0)),
});

export const scenarioSchema = z.strictObject({
  $schema: z.string().optional(),
  rideout: z.literal(1).describe('Version of this file layout.'),
  title: title(),
  notes: text().optional(),
  site,
  weather,
  outage,
  units: z.array(unit).min(1).max(2),
  pair: pair.prefault({}).describe('What two units do together.'),
  sources: sources.optional(),
  circuits: z.array(circuit).min(1).max(60),
  usage: usage.prefault({}).describe('How the household uses what it has.'),
  person: person.prefault({}).describe('Who looks at the battery and throws the switches.'),
  strategies: z.array(strategy).min(1).max(24),
  alternatives: z
    .array(alternative)
    .max(24)
    .default([])
    .describe('Versions of the household to weigh against the one described. Default: none.'),
  prices: prices.optional(),
  ladder: ladder.optional(),
  needs: needs.optional(),
  outageLengths: outageLengths.optional(),
  unknowns: unknowns.optional(),
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
