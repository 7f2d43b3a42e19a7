/**
 * A quick guess at how long each assignment lasts, to choose which to simulate: per draw the leg that runs dry first,
 * by mean watts. It decides nothing by itself. MODEL.md §21.
 */
import { LEGS, shareOn, unitOn } from './leg-limits.ts';
import type { Panel, Sides } from './panel.ts';
import type { ProbedEnergy } from './probe-energy.ts';

export interface GuessedSides {
  readonly sides: Sides;
  /** Hours that the share of draws reach by the guess, and the mean, cut at ten windows. */
  readonly hours: number;
  readonly meanHours: number;
}

export type GuessSides = (sides: Sides) => GuessedSides;

/** One leg: watts drawn from its bank in each draw, its bank, and whether something of tier 1 hangs on it. */
interface LegBooks {
  readonly needW: Float64Array;
  readonly storedWh: Float64Array;
  readonly drawnPerW: number;
  essential: boolean;
}

/** @param share of draws that must reach the hours */
export function createGuess(panel: Panel, probed: ProbedEnergy, share: number): GuessSides {
  const { household, movable } = panel;
  const fixed = LEGS.map((_, leg) => fixedBooks(panel, probed, leg));
  const tier1 = movable.map((c) => household.circuits[c]!.tier === 1);
  const rank = Math.floor((1 - share) * probed.draws + 1e-9);
  return (sides) => {
    const legs = fixed.map((books) => ({ ...books, needW: books.needW.slice() }));
    movable.forEach((circuit, i) => {
      const books = legs[sides[i] === '2' ? 1 : 0]!;
      const served = probed.servedW[circuit]!;
      for (let d = 0; d < served.length; d++) books.needW[d] = books.needW[d]! + books.drawnPerW * served[d]!;
      if (tier1[i]) books.essential = true;
    });
    const hours = hoursOf(legs, 240 * probed.windowDays);
    const meanHours = hours.reduce((sum, h) => sum + h / hours.length, 0);
    return { sides, hours: hours.sort()[rank]!, meanHours };
  };
}

/** Per draw, until the first leg with something of tier 1 is dry. */
function hoursOf(legs: readonly LegBooks[], most: number): Float64Array {
  return legs[0]!.needW.map((_, d) =>
    legs.reduce((least, { needW, storedWh, essential }) => {
      return essential && needW[d]! > 0 ? Math.min(least, storedWh[d]! / needW[d]!) : least;
    }, most),
  );
}

/** What cannot move: 240 V, fixed circuits, idling, less the leg's sun. */
function fixedBooks({ household, movable }: Panel, probed: ProbedEnergy, leg: number): LegBooks {
  const { inverter } = unitOn(household, LEGS[leg]!);
  const drawnPerW = 1 + inverter.lossPerW;
  const needW = probed.solarW[leg]!.map((solarW) => inverter.idleW - solarW);
  let essential = false;
  household.circuits.forEach((circuit, c) => {
    const share = movable.includes(c) ? 0 : shareOn(LEGS[leg]!, circuit);
    for (let d = 0; d < needW.length; d++) needW[d] = needW[d]! + share * drawnPerW * probed.servedW[c]![d]!;
    if (share > 0 && circuit.tier === 1) essential = true;
  });
  return { needW, storedWh: probed.storedWh[leg]!, drawnPerW, essential };
}
