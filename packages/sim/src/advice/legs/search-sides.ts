/** The search: guess at all, simulate the best few, better them move by move, then undo what does not matter. */
import { flipped, mirrored, movesBetween, type Panel, type Sides } from './panel.ts';
import { lastsLonger } from '../reach.ts';
import { steadiestOf, type Tried, type TrySides } from './try-sides.ts';

/** An assignment that lasts so much of the best one's days, with fewer circuits to move, is as good. */
const AS_GOOD = 0.99;
const MOST_ROUNDS = 8;
/** So many of the best single moves are tried in pairs. */
const TWO_BY_TWO = 5;

/** From the best of `candidates`, and from the panel as it is, the best change again and again until none helps. */
export async function improve(
  panel: Panel,
  candidates: readonly Sides[],
  allowed: (sides: Sides) => boolean,
  trySides: TrySides,
): Promise<Tried> {
  const [present, ...others] = await trySides([panel.present, ...candidates]);
  const starts = new Set([steadiestOf([present!, ...others]), present!]);
  const ends: Tried[] = [];
  for (const start of starts) ends.push(await improveFrom(start, panel.movable.length, allowed, trySides));
  return steadiestOf(ends);
}

/** Single moves, and the best few of them two by two: what trips a unit is often two circuits together. */
async function improveFrom(
  start: Tried,
  movable: number,
  allowed: (sides: Sides) => boolean,
  trySides: TrySides,
): Promise<Tried> {
  let best = start;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const moves = Array.from({ length: movable }, (_, i) => i).filter((i) => allowed(flipped(best.sides, i)));
    const moved = await trySides(moves.map((i) => flipped(best.sides, i)));
    const few = moves
      .map((move, i) => ({ move, shortestDays: moved[i]!.shortestDays }))
      .sort((a, b) => b.shortestDays - a.shortestDays)
      .slice(0, TWO_BY_TWO)
      .map(({ move }) => move);
    const pairs = few.flatMap((a, i) => few.slice(i + 1).map((b) => flipped(flipped(best.sides, a), b)));
    const next = steadiestOf([best, ...moved, ...(await trySides(pairs.filter(allowed)))]);
    if (next === best) break;
    best = next;
  }
  return best;
}

/** Of all that were tried and last no less than the best, the one with the fewest circuits to move. */
export function fewestMoves(panel: Panel, tried: readonly Tried[], best: Tried): Tried {
  const moves = (one: Tried) => movesBetween(panel.present, one.sides).length;
  return tried
    .filter((one) => !lastsLonger(best, one))
    .reduce((fewest, one) => (moves(one) < moves(fewest) ? one : fewest), best);
}

/** Moves that gain next to nothing are undone, one at a time: each is work at a panel. */
export async function simplify(
  panel: Panel,
  best: Tried,
  allowed: (sides: Sides) => boolean,
  trySides: TrySides,
): Promise<Tried> {
  let at = best;
  for (;;) {
    const undone = movesBetween(panel.present, at.sides).map((i) => flipped(at.sides, i));
    const wanted = [mirrored(at.sides), ...undone].filter(
      (sides) =>
        allowed(sides) &&
        movesBetween(panel.present, sides).length < movesBetween(panel.present, at.sides).length,
    );
    const kept = (await trySides(wanted)).filter((one) => isNearlyAsGood(one, best));
    if (kept.length === 0) return at;
    at = steadiestOf(kept);
  }
}

/** Within the hundredth that a search by guesses cannot tell. */
function isNearlyAsGood(one: Tried, best: Tried): boolean {
  return one.shortestDays >= AS_GOOD * best.shortestDays && one.meanDays >= AS_GOOD * best.meanDays;
}
