/** The three ways of counting a loss of load. */
import { traceDraw } from '../../../../packages/sim/src/trials/trace-draw.ts';
import { bareCircuit, bareStudy, bareUnit, daysOfSun, during, onlyRow } from '../../bare-household.ts';
import { exactly, once, type Comparison } from '../comparison.ts';

/** Ten days that want 10 kWh each; the sun brings 10, but 7 on the fourth and 3 on the eighth. */
const lossOfLoad = once(() =>
  bareStudy({
    units: [bareUnit({ capacityWh: 10_000, sunW: 1000, battery: { startFraction: 0 } })],
    circuits: [bareCircuit('load', 'L1', during(2500, '18:00-22:00'))],
    days: 10,
    startLocal: '2026-01-01T00:00',
    year: daysOfSun((day) => (day === 3 ? [7, 14] : day === 7 ? [7, 10] : [7, 17])),
  }),
);

function daysWithoutShare(): number {
  const [circuit] = traceDraw(lossOfLoad(), { draw: 0, alternative: 0, strategy: 0 }).circuits;
  const short = (day: number) =>
    circuit!.wantedW
      .slice(1440 * day, 1440 * (day + 1))
      .some((w, m) => circuit!.servedW[1440 * day + m]! < w - 1e-6);
  return Array.from({ length: 10 }, (_, day) => day).filter(short).length / 10;
}

export const lossOfLoads: readonly Comparison[] = [
  {
    claim: 'deficits of 3 and 7 kWh in 100 kWh: share of the energy that is not served',
    source: 'loss-of-load probability in energy (definition from memory; example C)',
    unit: 'share',
    band: exactly(0.1),
    ours: () => {
      const row = onlyRow(lossOfLoad());
      return row('unservedTier1Wh') / (row('servedTier1Wh') + row('unservedTier1Wh'));
    },
  },
  {
    claim: 'the same: share of the days with anything not served',
    source: 'loss-of-load probability in days (definition; example C)',
    unit: 'share',
    band: exactly(0.2),
    ours: daysWithoutShare,
  },
  {
    claim: 'the same: the run survives up to the fourth evening, 2.8 h after 18:00, and not to day 10',
    source: 'survival: no unserved interval before (definition; example C)',
    unit: 'days',
    band: exactly(3 + 20.8 / 24),
    ours: () => onlyRow(lossOfLoad())('runtimeMinutes') / 1440,
  },
];
