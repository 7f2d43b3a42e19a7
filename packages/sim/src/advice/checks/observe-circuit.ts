/** What one draw, and then many, showed of a circuit that was never off. */
import { CONTINUOUS_MINUTES } from '../../power/continuous-load.ts';
import { shareOf, startExtraW } from './household-loads.ts';
import type { ObservedCircuit, ObservedPair } from './observed.ts';
import { higherPeak, highestAt, highestMean, localTimeAt, peakOf, type WatchedDraw } from './watched-draw.ts';

/** A rise of the circuit's watts is where a start may be; less than this is a lamp. */
const LEAST_RISE_W = 20;

export function circuitOfDraw(draw: WatchedDraw, c: number): ObservedCircuit {
  const { household } = draw;
  const servedW = draw.servedW[c]!;
  const spec = household.circuits[c]!;
  const feeding = startExtraW(spec) > 0 ? [...household.units.keys()] : [];
  return {
    id: spec.id,
    worstMinute: peakOf(draw, servedW),
    worstThreeHoursW: highestMean(servedW, CONTINUOUS_MINUTES),
    starts: feeding
      .filter((u) => shareOf(household.units[u]!, spec, household.units) > 0)
      .map((u) => {
        const watts = startLoadW(draw, c, u);
        const worst = highestAt(watts);
        const { id, inverter } = household.units[u]!;
        const surgeDraws = watts[worst]! > inverter.surgeW ? 1 : 0;
        return { unitId: id, watts: watts[worst]!, at: localTimeAt(draw, worst), surgeDraws };
      }),
  };
}

/**
 * Load of the unit in each minute in which something on the circuit may start: the minute's mean with the excess of
 * starting over running watts on top, as in MODEL.md §6.2; 0 in the others.
 */
export function startLoadW(draw: WatchedDraw, c: number, u: number): Float64Array {
  const { household } = draw;
  const spec = household.circuits[c]!;
  const extraW = shareOf(household.units[u]!, spec, household.units) * startExtraW(spec);
  const servedW = draw.servedW[c]!;
  return draw.loadW[u]!.map((w, m) =>
    extraW > 0 && servedW[m]! > (m === 0 ? 0 : servedW[m - 1]!) + LEAST_RISE_W ? w + extraW : 0,
  );
}

export function joinCircuits(parts: readonly ObservedCircuit[]): ObservedCircuit {
  const first = parts[0]!;
  return {
    id: first.id,
    worstMinute: parts.map((p) => p.worstMinute).reduce(higherPeak),
    worstThreeHoursW: Math.max(...parts.map((p) => p.worstThreeHoursW)),
    starts: first.starts.map((_, s) => {
      const all = parts.map((p) => p.starts[s]!);
      const worst = all.reduce((a, b) => (b.watts > a.watts ? b : a));
      return { ...worst, surgeDraws: all.reduce((sum, p) => sum + p.surgeDraws, 0) };
    }),
  };
}

/** Positions of circuits that share a neutral, each pair once. */
export function sharedPairs(
  circuits: readonly { readonly id: string; readonly sharedNeutralWith?: string | undefined }[],
): [number, number][] {
  const pairs = circuits.flatMap(({ sharedNeutralWith }, a): [number, number][] => {
    const b = circuits.findIndex((c) => c.id === sharedNeutralWith);
    return b < 0 || b === a ? [] : [[Math.min(a, b), Math.max(a, b)]];
  });
  return pairs.filter(([a, b], i) => pairs.findIndex(([x, y]) => x === a && y === b) === i);
}

export function pairOfDraw({ servedW, household }: WatchedDraw, [a, b]: [number, number]): ObservedPair {
  const first = servedW[a]!;
  const second = servedW[b]!;
  const sums = first.map((w, m) => w + second[m]!);
  const differences = first.map((w, m) => Math.abs(w - second[m]!));
  return {
    first: household.circuits[a]!.id,
    second: household.circuits[b]!.id,
    worstSumW: sums[highestAt(sums)]!,
    worstDifferenceW: differences[highestAt(differences)]!,
  };
}

export function joinPairs(parts: readonly ObservedPair[]): ObservedPair {
  return {
    ...parts[0]!,
    worstSumW: Math.max(...parts.map((p) => p.worstSumW)),
    worstDifferenceW: Math.max(...parts.map((p) => p.worstDifferenceW)),
  };
}
