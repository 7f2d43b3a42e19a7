/** Inverters, their modules and panels, and what the pair does together. */
import { z } from 'zod';
import { fraction, positive, atLeastZero, clockWindows, identifier } from './schema-terms.ts';
import { chargerFeed, panelString, solarWindow, unitWiring } from './schema-wiring.ts';

const lossCurve = {
  idleW: atLeastZero().describe('p0: watts eaten while on with no load.'),
  lossPerW: z
    .number()
    .min(0)
    .max(0.5)
    .default(0.03)
    .describe(
      'k1: share of the delivered watts lost. Common practice, no source; better from the efficiencies of the data sheet.',
    ),
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
    .describe('Whole minutes above continuousW it bears before it trips. Default: none, the cautious side.'),
  ...lossCurve,
  standbyW: atLeastZero().default(0).describe('Watts eaten while off or asleep; left out: none.'),
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
    .describe('Self-resets in a row before it stays down until a person comes. Common practice, no source.'),
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
    .describe('One way. Literature, from memory: LFP cells 0.93 to 0.97 there and back near 25 °C.'),
  dischargeEfficiency: z
    .number()
    .min(0.5)
    .max(1)
    .default(0.97)
    .describe('One way, as chargeEfficiency: together 0.94, within the literature for LFP cells.'),
  selfDischargePerMonthFraction: fraction()
    .default(0.03)
    .describe('Share of what is stored that a month at rest takes. Common practice, no source.'),
});

const battery = z
  .strictObject({
    modules: z.int().min(1).max(64).default(1).describe('How many of the same on this unit.'),
    module: module_,
    healthFraction: z
      .number()
      .min(0.1)
      .max(1)
      .default(1)
      .describe('What is left of the nameplate capacity. Default: new.'),
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
    cutOffFraction: fraction()
      .default(0.1)
      .describe('The unit stops here to spare the modules. Common practice, no source.'),
    restartFraction: fraction()
      .default(0.2)
      .describe('After a cut-off the unit comes back here. Common practice, no source.'),
    place: z
      .enum(['indoors', 'garage', 'outdoors'])
      .default('indoors')
      .describe(
        'Where the modules stand, for what the cold does to them. Default: indoors, where most makers want them; common practice, no source.',
      ),
    minChargeC: z
      .number()
      .min(-40)
      .max(20)
      .default(0)
      .describe(
        'No charging below this module temperature. Makers’ guidance for LFP: lithium plates below 0 °C.',
      ),
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
        '[°C, fraction of capacity that can be drawn], rising temperatures. Default: middle of the literature ranges for LFP, from memory.',
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
  powerTemperatureCoefficientPerC: z
    .number()
    .min(-0.01)
    .max(0)
    .default(-0.0037)
    .describe('From the data sheet (IEC 60891). Default: crystalline silicon; common practice, no source.'),
  lossFraction: fraction()
    .default(0.14)
    .describe('Soiling, wiring, mismatch, age together. Default: California Title 24 compliance figure.'),
  openBackHeatLossU0: positive().default(25).describe('Faiman 2008 U0, W/m²K.'),
  windHeatLossU1: atLeastZero().default(6.84).describe('Faiman 2008 U1, W·s/m³K.'),
  string: panelString.optional(),
  outDuring: clockWindows()
    .optional()
    .describe('Portable panels: put out and taken in by somebody awake; left out: they stay out.'),
});

const solar = z.strictObject({
  inputLimitW: positive().describe('Most watts the unit takes from its panels; the rest is clipped.'),
  arrays: z.array(array_).min(1).max(8),
  window: solarWindow.optional(),
});

const leg = z.enum(['L1', 'L2', 'both']);

export const unit = z.strictObject({
  id: identifier(),
  leg: leg.describe(
    'The 120 V side this unit feeds. both: the only unit feeds both sides with 120 V through an inlet that joins them; 240 V circuits get nothing, and circuits that share a neutral (multiwire) can overload it: have them found and parted first.',
  ),
  inverter,
  battery,
  solar: solar.optional(),
  wiring: unitWiring.optional(),
  charger: z
    .strictObject({
      maxW: positive().describe('AC watts it takes at most; the bank gets efficiency times that.'),
      efficiency: z
        .number()
        .min(0.5)
        .max(1)
        .default(0.93)
        .describe('From its AC input into the bank’s terminals. Common practice, no source.'),
      feed: chargerFeed.optional(),
    })
    .optional()
    .describe('AC charging from the grid or a generator.'),
});

export const pair = z.strictObject({
  stopsTogether: z.boolean().default(false).describe('One unit stopping takes the other down with it.'),
});
