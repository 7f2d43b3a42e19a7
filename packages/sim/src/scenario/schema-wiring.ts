/** Wires, breakers, strings and feeds: read by the check and by nothing else. No minute of a study depends on them. */
import { z } from 'zod';
import { identifier } from './schema-terms.ts';

/** Copper conductor sizes as the trade counts them; "1/0" and the like in quotes. */
export const AWG_SIZES = [18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, '1/0', '2/0', '3/0', '4/0'] as const;
/** One of the copper conductor sizes, such as 12 or "1/0". */
export type Awg = (typeof AWG_SIZES)[number];

const awg = () => z.literal([...AWG_SIZES]);
const amps = () => z.number().positive().max(400);
const runM = () => z.number().positive().max(1000);
const volts = () => z.number().positive().max(1500);
/** No default: 60 is taken where the check reads it, so that keys nobody wrote stay out of the scenario's hash. */
const terminalC = z
  .literal([60, 75])
  .optional()
  .describe('What the terminals at both ends are listed for; left out: 60 °C.');

/** How one unit's output reaches the panel. */
export const unitWiring = z.strictObject({
  breakerA: amps().optional().describe('The breaker that protects the wires between unit and panel.'),
  inletA: amps().optional().describe('Rating of the power inlet that the unit’s cord goes to.'),
  cordAwg: awg().optional().describe('Copper size of the flexible cord.'),
  cordRunM: runM().optional().describe('Length of the cord one way, metres (1 ft is 0.3048 m).'),
  wireAwg: awg().optional().describe('Copper size of the fixed wire to the panel.'),
  runM: runM().optional().describe('Length of the fixed wire one way, metres.'),
  terminalC,
});

/** Keys of a circuit. */
export const circuitWiring = {
  wireAwg: awg().optional().describe('Copper size of the circuit’s wire.'),
  runM: runM().optional().describe('Length of its wire one way to the farthest outlet, metres.'),
  terminalC,
  continuous: z
    .boolean()
    .optional()
    .describe('Stays at its most for three hours or more; left out: told from its appliances.'),
  sharedNeutralWith: identifier()
    .optional()
    .describe('The other circuit of a multiwire pair: both use one neutral wire.'),
};

/** The voltages between which a solar input works. */
export const solarWindow = z
  .strictObject({
    minV: volts().describe('Below this the input cannot follow the panels’ best point.'),
    maxV: volts().describe('Above this the input may be destroyed.'),
    startV: volts().optional().describe('The input wakes at this voltage.'),
  })
  .refine((w) => w.minV < w.maxV, { message: 'a voltage above minV', path: ['maxV'] })
  .refine((w) => w.startV === undefined || w.minV >= w.maxV || w.startV < w.maxV, {
    message: 'a voltage below maxV',
    path: ['startV'],
  });

/** How the panels of one array are strung together; figures of one panel from its data sheet, at 25 °C. */
export const panelString = z
  .strictObject({
    openCircuitV: volts(),
    maximumPowerV: volts(),
    openCircuitPerC: z
      .number()
      .gt(-0.02)
      .max(0)
      .optional()
      .describe('Relative change of the open-circuit voltage per °C: -0.27 %/°C is -0.0027.'),
    maximumPowerPerC: z
      .number()
      .gt(-0.02)
      .max(0)
      .optional()
      .describe(
        'The same for the voltage at maximum power; left out: the array’s powerTemperatureCoefficientPerC.',
      ),
    inSeries: z.int().min(1).max(60),
    inParallel: z.int().min(1).max(20).default(1).describe('Such strings side by side.'),
  })
  .refine((s) => s.maximumPowerV < s.openCircuitV, {
    message: 'a voltage below openCircuitV',
    path: ['maximumPowerV'],
  });

/** The circuit that feeds a charger. */
export const chargerFeed = z.strictObject({
  volts: z.literal([120, 240]).default(120).describe('Default: an ordinary outlet.'),
  breakerA: amps(),
});

/** The site's extremes: what strings of panels and cold modules must bear. */
export const siteExtremes = {
  recordLowC: z
    .number()
    .min(-60)
    .max(30)
    .optional()
    .describe('Lowest expected outdoor temperature, °C: for strings of panels and cold modules.'),
  recordHighC: z
    .number()
    .min(-10)
    .max(60)
    .optional()
    .describe('Highest expected outdoor temperature, °C: for strings of panels.'),
};
