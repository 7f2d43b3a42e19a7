/** Which assignments to simulate: the best by the guess. */
import type { GuessedSides, GuessSides } from './guess-sides.ts';
import { everySides, flipped, type Panel, type Sides } from './panel.ts';

/** With more movable circuits than this, not every assignment is guessed at: the search goes move by move instead. */
export const MOST_EVERY_ONE = 20;

/** The `most` best guesses among all assignments within the limits, best first. */
export function bestGuesses(
  panel: Panel,
  guess: GuessSides,
  allowed: (sides: Sides) => boolean,
  most: number,
): GuessedSides[] {
  const count = panel.movable.length;
  return count <= MOST_EVERY_ONE
    ? bestOfEvery(count, guess, allowed, most)
    : bestByMoves(panel, guess, allowed, most);
}

function bestOfEvery(
  count: number,
  guess: GuessSides,
  allowed: (sides: Sides) => boolean,
  most: number,
): GuessedSides[] {
  let best: GuessedSides[] = [];
  for (const sides of everySides(count)) {
    const one = guess(sides);
    if (best.length >= most && !isLonger(one, best[best.length - 1]!)) continue;
    if (!allowed(one.sides)) continue;
    best = [...best, one].sort(longerFirst).slice(0, most);
  }
  return best;
}

/** From the present one, the best single change or exchange again and again; every one met is remembered. */
function bestByMoves(
  panel: Panel,
  guess: GuessSides,
  allowed: (sides: Sides) => boolean,
  most: number,
): GuessedSides[] {
  const met = new Map<Sides, GuessedSides>();
  const look = (sides: Sides) => {
    if (!met.has(sides) && allowed(sides)) met.set(sides, guess(sides));
  };
  let at = guess(panel.present);
  for (;;) {
    for (const sides of neighbours(at.sides)) look(sides);
    const best = [...met.values()].reduce((a, b) => (isLonger(b, a) ? b : a), at);
    if (best.sides === at.sides) break;
    at = best;
  }
  return [...met.values()].sort(longerFirst).slice(0, most);
}

function neighbours(sides: Sides): Sides[] {
  const singles = Array.from(sides, (_, i) => flipped(sides, i));
  const exchanges = Array.from(sides, (_, i) => i).flatMap((i) =>
    Array.from({ length: sides.length - i - 1 }, (_, j) => i + j + 1)
      .filter((j) => sides[i] !== sides[j])
      .map((j) => flipped(flipped(sides, i), j)),
  );
  return [...singles, ...exchanges];
}

function isLonger(a: GuessedSides, b: GuessedSides): boolean {
  return a.hours > b.hours || (a.hours === b.hours && a.meanHours > b.meanHours);
}

const longerFirst = (a: GuessedSides, b: GuessedSides) => (isLonger(a, b) ? -1 : isLonger(b, a) ? 1 : 0);
