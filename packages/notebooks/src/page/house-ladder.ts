/** The ladder back in the words of its file: what is paid stands as a price, incentives already taken off. */
import type { Scenario } from '@rideout/sim';

type Ladder = NonNullable<Scenario['ladder']>;
type Moves = Ladder['startMoves'];

/** @param written how a value that a step puts in place is written */
export function ladderWritten(ladder: Ladder, written: (path: string, value: unknown) => unknown): object {
  const { startTitle, startStrategyId, without, startMoves, steps, budget, confidence } = ladder;
  return {
    start: {
      title: startTitle,
      ...(without.length > 0 ? { without } : {}),
      ...(startMoves.length > 0 ? { change: setsOf(startMoves, written) } : {}),
      strategy: startStrategyId,
    },
    steps: steps.map(({ id, title, price, brings, moves, strategyId, needs, atMost }) => ({
      id,
      title,
      price,
      ...(brings.length > 0 ? { brings } : {}),
      ...some('change', setsOf(moves, written)),
      ...some('add', addsOf(moves)),
      ...(strategyId === undefined ? {} : { strategy: strategyId }),
      ...(needs.length > 0 ? { needs: needs.map((at) => steps[at]!.id) } : {}),
      ...(atMost === 1 ? {} : { atMost }),
    })),
    ...(budget === undefined ? {} : { budget }),
    ...(confidence === 0.9 ? {} : { confidence }),
  };
}

function setsOf(moves: Moves, written: (path: string, value: unknown) => unknown): Record<string, unknown> {
  return Object.fromEntries(
    moves.flatMap((move) => ('set' in move ? [[move.set, written(move.set, move.value)]] : [])),
  );
}

function addsOf(moves: Moves): Record<string, number> {
  return Object.fromEntries(moves.flatMap((move) => ('add' in move ? [[move.add, move.amount]] : [])));
}

function some(key: string, changes: object): object {
  return Object.keys(changes).length > 0 ? { [key]: changes } : {};
}
