/** What could be bought or changed step by step, from where the household starts: for the question what to buy next. */
import { z } from 'zod';
import { atLeastZero, identifier, title } from './schema-terms.ts';

const paths = () => z.array(z.string().min(1)).min(1);
const percent = () => z.number().min(0).max(100);

const start = z.strictObject({
  title: title().default('Where you start').describe('What the start is called in results.'),
  without: paths()
    .optional()
    .describe('Parts of the household as described that are not there yet, such as "units.west".'),
  change: z
    .record(z.string(), z.unknown())
    .default({})
    .describe('Path to new value, as in an alternative: how the household differs at the start.'),
  strategy: identifier().describe('What the household does in an outage before any step.'),
});

const step = z.strictObject({
  id: identifier(),
  title: title(),
  price: atLeastZero()
    .optional()
    .describe('Before any incentive. Left out: that of what it buys, or nothing.'),
  buys: z
    .record(z.string(), z.int().min(1).max(1000))
    .optional()
    .describe('Items of prices.items and how many of each, instead of a price.'),
  incentivePercent: percent().optional().describe('For this step, instead of the ladder’s.'),
  brings: paths()
    .optional()
    .describe('Parts of ladder.start.without that come with it, as the household describes them.'),
  change: z
    .record(z.string(), z.unknown())
    .optional()
    .describe('Path to new value. Changes are made in the order of this list.'),
  add: z
    .record(z.string(), z.number())
    .optional()
    .describe('Path to what is added to the number there, such as "units.*.battery.modules": 1.'),
  strategy: identifier()
    .optional()
    .describe('A strategy that can be followed from then on; the best of those at hand is.'),
  needs: z.array(identifier()).default([]).describe('Steps further up this list that must come before.'),
  atMost: z.int().min(1).max(16).default(1).describe('How often it can be taken.'),
});

export const ladder = z
  .strictObject({
    start,
    steps: z.array(step).min(1).max(24),
    budget: atLeastZero().optional().describe('Most money for all steps, after incentives.'),
    incentivePercent: percent()
      .default(0)
      .describe('Taken off every price. Yours to find out: programmes change.'),
    confidence: z
      .number()
      .min(0.5)
      .max(0.99)
      .default(0.9)
      .describe(
        'The share of outages that must reach the days that are counted. Default: nine in ten, as in every headline here.',
      ),
  })
  .describe('Steps that could be bought or taken, in any order. Read by the question what to buy next only.');

export type LadderSpec = z.output<typeof ladder>;
export type LadderStepSpec = LadderSpec['steps'][number];
