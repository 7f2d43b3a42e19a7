/** Needs: what a family would notice, measured in what they would notice it by. `days` does not read them. */
import { z } from 'zod';
import { atLeastZero, identifier, positive, title } from './schema-terms.ts';

const about = {
  id: identifier(),
  title: title().optional(),
  circuits: z
    .array(identifier())
    .min(1)
    .optional()
    .describe('Circuits that serve it; left out: those whose `need` is this id.'),
};
const celsius = () => z.number().min(-40).max(60);

const cold = z.strictObject({
  measure: z.literal('cold'),
  ...about,
  limitC: celsius()
    .default(4.4)
    .describe('Food must not be warmer. US food-safety guidance: 40 °F, refrigerator and freezer alike.'),
  hoursAbove: atLeastZero()
    .max(1000)
    .default(2)
    .describe('Hours above the limit after which food is thrown away. US food-safety guidance: 2.'),
});

const water = z.strictObject({
  measure: z.literal('water'),
  ...about,
  persons: z.int().min(1).max(100),
  litresPerPersonPerDay: positive()
    .max(1000)
    .default(3.8)
    .describe('US emergency guidance: 1 gallon, 3.8 L, to drink and wash a little; Sphere handbook: 15 L.'),
  storedLitres: atLeastZero()
    .default(0)
    .describe('In clean containers and the pressure tank, full at the start.'),
  pumpLitresPerMinute: positive()
    .max(1000)
    .default(20)
    .describe('What the pump raises while it runs. Common practice, no source.'),
  hoursWithout: atLeastZero()
    .max(1000)
    .default(4)
    .describe('Hours in a row without a drop that are borne. Common practice, no source.'),
});

const heatSource = z
  .strictObject({
    circuit: identifier(),
    heatW: atLeastZero()
      .optional()
      .describe('Heat given (or taken, for cooling) while its thermostat runs, such as a furnace’s output.'),
    heatPerW: atLeastZero()
      .max(100)
      .optional()
      .describe('Heat given (or taken) for each electric watt served; an electric heater: 1.'),
  })
  .refine((s) => (s.heatW === undefined) !== (s.heatPerW === undefined), {
    message: 'either heatW or heatPerW',
  });

const room = z
  .strictObject({
    heatLossWPerC: positive().describe('UA: watts lost for each °C between room and outdoors.'),
    timeConstantHours: positive()
      .max(2000)
      .describe('How slowly it follows the outdoors: heat capacity over heatLossWPerC.'),
    gainsW: z.number().min(-1e6).max(1e6).default(0).describe('Steady gains from people, sun, cooking.'),
    startC: celsius().optional().describe('Left out: site.indoorC.'),
    sources: z.array(heatSource).max(12).default([]).describe('What heats it, or for cooling what cools it.'),
  })
  .describe('One room as one store of heat.');

const roomNeed = {
  ...about,
  hoursBeyond: atLeastZero()
    .max(1000)
    .default(1)
    .describe('Hours in a row past the limit that are borne. Common practice, no source.'),
  room: room.optional().describe('Left out: the room that the thermostats of its circuits carry.'),
};

const warmth = z.strictObject({
  measure: z.literal('warmth'),
  ...roomNeed,
  limitC: celsius().default(18).describe('Not colder. WHO Housing and health guidelines 2018: 18 °C.'),
});
const coolth = z.strictObject({
  measure: z.literal('coolth'),
  ...roomNeed,
  limitC: celsius().default(28).describe('Not warmer. CIBSE Guide A, living rooms, from memory: 28 °C.'),
});

const power = z.strictObject({
  measure: z.literal('power'),
  ...about,
  graceMinutes: z
    .int()
    .min(0)
    .max(10080)
    .optional()
    .describe('Wanted minutes in a row without power that are borne; left out: each circuit’s own grace.'),
});

export const need = z.discriminatedUnion('measure', [cold, water, warmth, coolth, power]);

export const needs = z
  .array(need)
  .min(1)
  .max(24)
  .describe(
    'What must be met, and how it is measured: cold, water, warmth, coolth or power. Left out: told from the `need` of the circuits.',
  );

export type NeedSpec = z.output<typeof need>;
export type RoomSpec = z.output<typeof room>;
