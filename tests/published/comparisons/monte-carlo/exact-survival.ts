/**
 * Survival that is known exactly: chances of the states carried forward day by day (Feller, An Introduction to
 * Probability Theory and its Applications vol. 1, ch. XIII runs, XIV ruin, XV chains).
 */

/** Where a state goes in a day and how likely; state -1 is the end. */
export type Moves = (state: number) => readonly (readonly [to: number, chance: number])[];

/** Chance of not having ended by the end of day k, k = 0 … days. @param start chance of each state before day 1 */
export function exactCurve(start: readonly number[], moves: Moves, days: number): number[] {
  let law = [...start];
  const curve = [1];
  for (let day = 1; day <= days; day++) {
    const after = law.map(() => 0);
    law.forEach((mass, state) => {
      if (mass === 0) return;
      for (const [to, chance] of moves(state)) if (to >= 0) after[to]! += mass * chance;
    });
    law = after;
    curve.push(law.reduce((sum, mass) => sum + mass, 0));
  }
  return curve;
}

const onlyState = (state: number, count: number) =>
  Array.from({ length: count }, (_, s) => (s === state ? 1 : 0));

/** A store of `size` days' load that gains a day with chance p, spills what it cannot hold, and ends at 0. */
export function ceilingStore(p: number, size: number, start: number, days: number): number[] {
  const moves: Moves = (level) => [
    [Math.min(size, level + 1), p],
    [level === 1 ? -1 : level - 1, 1 - p],
  ];
  return exactCurve(onlyState(start, size + 1), moves, days);
}

/** Ends when `run` cloudy days come in a row. @param firstCloudy chance that day 1 is cloudy */
export function cloudyRuns(
  afterCloudy: number,
  afterClear: number,
  run: number,
  days: number,
  firstCloudy = afterClear / (1 - afterCloudy + afterClear),
): number[] {
  const moves: Moves = (row) => {
    const cloudy = row > 0 ? afterCloudy : afterClear;
    return [
      [0, 1 - cloudy],
      [row + 1 === run ? -1 : row + 1, cloudy],
    ];
  };
  const dayOne = Array.from({ length: run }, (_, row) => [1 - firstCloudy, firstCloudy][row] ?? 0);
  return [1, ...exactCurve(dayOne, moves, days - 1)];
}

/**
 * The same where days are taken from a round of `cloudy.length` days: the next day of the round, or with chance
 * `jump` any of them (the stationary bootstrap of Politis & Romano 1994).
 */
export function cloudyRunsOfBlocks(
  cloudy: readonly boolean[],
  jump: number,
  run: number,
  days: number,
): number[] {
  const round = cloudy.length;
  const state = (day: number, row: number) => day * run + row;
  const goTo = (day: number, row: number) =>
    cloudy[day]! ? (row + 1 === run ? -1 : state(day, row + 1)) : state(day, 0);
  const moves: Moves = (s) => {
    const [day, row] = [Math.floor(s / run), s % run];
    const anyDay = cloudy.map((_, d) => [goTo(d, row), jump / round] as const);
    return [...anyDay, [goTo((day + 1) % round, row), 1 - jump]];
  };
  const start = new Array<number>(round * run).fill(0);
  cloudy.forEach((dull, day) => (start[state(day, dull ? 1 : 0)] = 1 / round));
  return [1, ...exactCurve(start, moves, days - 1)];
}

/**
 * Depth of discharge when every day takes one load and brings sun with an exponential law of mean 1/ρ: the waiting
 * time of the queue M/D/1 (Erlang 1909). Chance that it lies above x ≥ 0.
 */
export function depthAbove(rho: number, x: number): number {
  let below = 0;
  let factorial = 1;
  for (let k = 0; k <= Math.floor(x); k++) {
    if (k > 0) factorial *= k;
    below += ((-rho * (x - k)) ** k / factorial) * Math.exp(rho * (x - k));
  }
  return 1 - (1 - rho) * below;
}
