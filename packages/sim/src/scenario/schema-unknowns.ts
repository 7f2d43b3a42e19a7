/** What the household does not know of itself, as ranges: for the question what matters. `days` does not read it. */
import { z } from 'zod';

const range = (least: number, most: number) =>
  z
    .tuple([z.number().min(least).max(most), z.number().min(least).max(most)])
    .refine(([low, high]) => low <= high, { message: 'two numbers, the lower one first' });

export const unknowns = z
  .strictObject({
    healthFraction: range(0.1, 1)
      .optional()
      .describe(
        '[low, high] of every module’s health; left out: 0.05 below to 0.05 above what each unit says, 1 at most. Common practice, no source.',
      ),
    idleW: range(0, 1000)
      .optional()
      .describe(
        '[low, high] of each inverter’s idle watts; left out: a quarter below to a quarter above what each says. Common practice, no source.',
      ),
    oneWayEfficiency: range(0.5, 1)
      .optional()
      .describe('[low, high] of charging and discharging alike; left out: taken as known.'),
    panelLossFraction: range(0, 1)
      .optional()
      .describe('[low, high] of every array’s lossFraction; left out: taken as known.'),
    indoorFollowsFraction: range(0, 1)
      .optional()
      .describe('[low, high] of site.indoorFollowsFraction; left out: taken as known.'),
  })
  .describe(
    'Ranges of what nobody measured, each value in them as likely as any other. Read by the question what matters only.',
  );

export type UnknownsSpec = z.output<typeof unknowns>;
