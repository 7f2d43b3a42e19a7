/** A pair of unequal banks: which leg dies first, and when. */
import { bareCircuit, bareStudy, bareUnit, onlyRow, steady, type Bare } from '../../bare-household.ts';
import { exactly, once, type Comparison } from '../comparison.ts';
import { pairHours } from './runtime-by-hand.ts';
import { ENERGY, ORDINARY } from './constant-load.ts';

/** Two units with 120 V loads of their own and a 240 V load between them. */
function pairOf(usableWh: readonly [number, number], legW: readonly [number, number], bothW: number): Bare {
  const { dischargeEfficiency, ...inverter } = ORDINARY;
  const units = (['L1', 'L2'] as const).map((leg, u) =>
    bareUnit({
      id: leg.toLowerCase(),
      leg,
      capacityWh: usableWh[u]!,
      inverter,
      module: { dischargeEfficiency },
    }),
  );
  return {
    units,
    circuits: [
      bareCircuit('one', 'L1', steady(legW[0])),
      bareCircuit('two', 'L2', steady(legW[1])),
      bareCircuit('both', 'both', steady(bothW)),
    ],
    days: 10,
  };
}

const UNEQUAL = { banks: [3000, 5000], legs: [300, 200], both: 400 } as const;
const unequalByHand = pairHours(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both, ORDINARY);
const unequal = once(() => onlyRow(bareStudy(pairOf(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both))));
const unequalTogether = () =>
  onlyRow(bareStudy({ ...pairOf(UNEQUAL.banks, UNEQUAL.legs, UNEQUAL.both), pair: { stopsTogether: true } }));

/** Banks and leg loads in every combination; the 240 V load is 300 W. */
const PAIRS = [2000, 3000, 4700].flatMap((one) =>
  [1500, 3300].flatMap((two) =>
    [90, 260, 700].flatMap((legOne) =>
      [120, 410].map((legTwo) => ({ banks: [one, two] as const, legs: [legOne, legTwo] as const })),
    ),
  ),
);

function pairsAgreed(): number {
  return PAIRS.filter(({ banks, legs }) => {
    const { hours, first } = pairHours(banks, legs, 300, ORDINARY);
    const row = onlyRow(bareStudy(pairOf(banks, legs, 300)));
    const gap = Math.abs(row('runtimeMinutes') / 60 - Math.min(...hours));
    const later = Math.abs(row('firstBlackoutMinute') / 60 - Math.max(...hours));
    return row('endUnit') === first && gap < 1e-9 * hours[first] && later < 1e-9 * Math.max(...hours);
  }).length;
}

export const twoBanks: readonly Comparison[] = [
  {
    claim: '3 and 5 kWh under 300 W, 200 W and 400 W at 240 V: when the first leg dies',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequal()('runtimeMinutes') / 60,
  },
  {
    claim: 'the same: 240 V goes with the first leg',
    source: 'a split-phase pair: 240 V needs both units (design fact)',
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequal()('first240LossMinute') / 60,
  },
  {
    claim: 'the same: the other leg goes on with its own load alone',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[1]),
    ours: () => unequal()('firstBlackoutMinute') / 60,
  },
  {
    claim: 'the same with units that stop together: both are dark with the first',
    source: ENERGY,
    unit: 'h',
    band: exactly(unequalByHand.hours[0]),
    ours: () => unequalTogether()('firstBlackoutMinute') / 60,
  },
  {
    claim: 'which leg dies first, when, and when the second follows: pairs that agree',
    source: ENERGY,
    unit: `of ${PAIRS.length}`,
    band: exactly(PAIRS.length),
    ours: pairsAgreed,
  },
];
