/** Days of autonomy as textbooks size them. */
import { exactly, near, type Comparison } from '../comparison.ts';
import { NO_LOSSES } from './runtime-by-hand.ts';
import { constantLoad, runtimeHours } from './constant-load.ts';

export const sizing: readonly Comparison[] = [
  {
    claim: '2,400 Wh a day from 694.44 Ah at 24 V, four fifths usable, 0.9 for the cold: days of autonomy',
    source: 'autonomy sizing, C = L·D / (depth × temperature factor); form from memory, inverse (C)',
    unit: 'days',
    band: near(5, 5e-5),
    ours: () =>
      runtimeHours(
        constantLoad(694.44 * 24, 100, NO_LOSSES, {
          cutOffFraction: 0.2,
          restartFraction: 0.3,
          coldCapacity: [
            [-20, 0.9],
            [25.1, 0.9],
          ],
        }),
      ) / 24,
  },
  {
    claim: 'the bank a textbook sizes for 3 days of 4.2 kWh at 0.9 out of the bank lasts 3 days',
    source: 'textbook sizing by loss-of-load charts, B = L·S / η (R1)',
    unit: 'days',
    band: exactly(3),
    ours: () =>
      runtimeHours(constantLoad((4200 * 3) / 0.9, 4200 / 24, { ...NO_LOSSES, dischargeEfficiency: 0.9 })) /
      24,
  },
];
