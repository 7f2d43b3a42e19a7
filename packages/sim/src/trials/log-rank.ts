/** Log-rank comparison of two independent groups. */
export interface LogRank {
  readonly observedFirst: number;
  readonly expectedFirst: number;
  readonly observedSecond: number;
  readonly expectedSecond: number;
  /** Hypergeometric variance of observedFirst − expectedFirst. */
  readonly variance: number;
  /** (observed − expected)² / variance, one degree of freedom: 3.841 is the 5 % point. 0 when nothing can be told. */
  readonly chiSquare: number;
}

/**
 * Log-rank test (Mantel–Haenszel form with hypergeometric variance): Mantel 1966, Cancer Chemother. Rep. 50:163–170;
 * Klein & Moeschberger 2003, §7.3 with unit weights.
 *
 * It takes the groups as independent. Strategies of one study meet the same draws, so compare those with
 * `compareRuntimes`; this is for studies with different seeds or sites.
 *
 * @param first, second times of any unit with their censoring flags (1 = cut off).
 */
export function logRank(
  first: { readonly times: ArrayLike<number>; readonly censored: ArrayLike<number> },
  second: { readonly times: ArrayLike<number>; readonly censored: ArrayLike<number> },
): LogRank {
  const watched = [...entries(first, 1), ...entries(second, 0)].sort((a, b) => a.time - b.time);
  let atRisk = watched.length;
  let atRiskFirst = first.times.length;
  let [observedFirst, observedAll, expectedFirst, variance] = [0, 0, 0, 0];
  for (let i = 0; i < watched.length;) {
    const same = sameTime(watched, i);
    if (same.events > 0) {
      const share = atRiskFirst / atRisk;
      observedFirst += same.eventsFirst;
      observedAll += same.events;
      expectedFirst += same.events * share;
      if (atRisk > 1) variance += (same.events * share * (1 - share) * (atRisk - same.events)) / (atRisk - 1);
    }
    atRisk -= same.count;
    atRiskFirst -= same.countFirst;
    i += same.count;
  }
  const gap = observedFirst - expectedFirst;
  return {
    observedFirst,
    expectedFirst,
    observedSecond: observedAll - observedFirst,
    expectedSecond: observedAll - expectedFirst,
    variance,
    chiSquare: variance > 0 ? (gap * gap) / variance : 0,
  };
}

interface Watched {
  readonly time: number;
  readonly event: number;
  readonly first: number;
}

function entries(
  group: { readonly times: ArrayLike<number>; readonly censored: ArrayLike<number> },
  first: number,
): Watched[] {
  return Array.from(group.times, (time, i) => ({ time, event: group.censored[i] === 1 ? 0 : 1, first }));
}

function sameTime(watched: readonly Watched[], from: number) {
  const totals = { count: 0, countFirst: 0, events: 0, eventsFirst: 0 };
  for (let i = from; i < watched.length && watched[i]!.time === watched[from]!.time; i += 1) {
    const { event, first } = watched[i]!;
    totals.count += 1;
    totals.countFirst += first;
    totals.events += event;
    totals.eventsFirst += event * first;
  }
  return totals;
}
