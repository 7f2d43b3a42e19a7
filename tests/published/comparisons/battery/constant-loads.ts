/** How long constant loads last. */
import { exactly, near, type Comparison } from '../comparison.ts';
import { constantHours, NO_LOSSES, type Losses } from './runtime-by-hand.ts';
import { ENERGY, ORDINARY, constantLoad, runtimeHours } from './constant-load.ts';

const AT_94_PERCENT: Losses = {
  ...NO_LOSSES,
  lossPerW: 1 / 0.94 - 1,
  dischargeEfficiency: 0.95,
};

export const constantLoads: readonly Comparison[] = [
  {
    claim: '10 kWh at 0.95 one way and 0.94 through the inverter carry 0.5 kW for 17.86 h',
    source: 'energy balance, 10 × 0.95 × 0.94 / 0.5 (C)',
    unit: 'h',
    band: near(17.86, 1e-9),
    ours: () => runtimeHours(constantLoad(10_000, 500, AT_94_PERCENT)),
  },
  {
    claim: '5 kW out of 12.5 kWh lasts 2.5 h (0.4 of its capacity an hour)',
    source: 'the 5 kW, 12.5 kWh system of the NREL Annual Technology Baseline 2022–2024 (R2, C)',
    unit: 'h',
    band: exactly(2.5),
    ours: () => runtimeHours(constantLoad(12_500, 5000, NO_LOSSES)),
  },
  ...[1, 5, 80, 200, 450, 1200, 3000].map((loadW) => ({
    claim: `3.2 kWh with cut-off at a tenth, idle 28 W and ordinary losses carries ${loadW} W`,
    source: ENERGY,
    unit: 'h',
    band: exactly(constantHours(0.9 * 3200, loadW, ORDINARY)),
    ours: () =>
      runtimeHours(constantLoad(3200, loadW, ORDINARY, { cutOffFraction: 0.1, restartFraction: 0.2 })),
  })),
  {
    claim: 'six worn modules (health 0.8) from 0.75 charged down to 0.15',
    source: ENERGY,
    unit: 'h',
    band: exactly(constantHours(6 * 1000 * 0.8 * 0.6, 320, ORDINARY)),
    ours: () =>
      runtimeHours(
        constantLoad(1000, 320, ORDINARY, {
          modules: 6,
          healthFraction: 0.8,
          startFraction: 0.75,
          cutOffFraction: 0.15,
          restartFraction: 0.2,
        }),
      ),
  },
];
