/** Watches a household with everything switched on, minute by minute, over some draws. MODEL.md §23. */
import { minutesInWindows } from '../../clock/clock-windows.ts';
import type { AlternativeSpec, Scenario } from '../../scenario/scenario.ts';
import { prepareStudy } from '../../trials/study.ts';
import { traceDraw } from '../../trials/trace-draw.ts';
import {
  circuitOfDraw,
  joinCircuits,
  joinPairs,
  pairOfDraw,
  sharedPairs,
  startLoadW,
} from './observe-circuit.ts';
import { observeNights } from './observe-nights.ts';
import { joinUnits, unitOfDraw } from './observe-unit.ts';
import type { Observed } from './observed.ts';
import { tirelessScenario } from './tireless.ts';
import { highestAt, watchedDraw, type WatchedDraw } from './watched-draw.ts';

export interface ObserveOptions {
  readonly seed: string;
  /** ≥ 1. */
  readonly draws: number;
  /** Days of each draw, cut at the scenario's horizon. */
  readonly days: number;
}

export function observe(scenario: Scenario, alternative: AlternativeSpec, options: ObserveOptions): Observed {
  const { household } = alternative;
  const watched = tirelessScenario(scenario, household, options.days);
  const study = prepareStudy(watched, { seed: options.seed });
  const awake = minutesInWindows([household.person.awake]);
  const parts = Array.from({ length: options.draws }, (_, draw) => {
    const trace = traceDraw(study, { draw, alternative: 0, strategy: 0 });
    return observeDraw(watchedDraw(scenario, household, trace, awake));
  });
  const each = <T>(of: (part: DrawPart) => readonly T[], join: (all: readonly T[]) => T) =>
    of(parts[0]!).map((_, i) => join(parts.map((p) => of(p)[i]!)));
  return {
    draws: options.draws,
    days: watched.outage.horizonDays,
    units: each((p) => p.units, joinUnits),
    circuits: each((p) => p.circuits, joinCircuits),
    pairs: each((p) => p.pairs, joinPairs),
    worstNeutralA: Math.max(...parts.map((p) => p.neutralA)),
    worstAllOnOneUnitW: Math.max(...parts.map((p) => p.allOnOneUnitW)),
    lowestOutdoorC: Math.min(...parts.map((p) => p.lowestOutdoorC)),
    nights: observeNights(scenario, alternative, options),
  };
}

type DrawPart = ReturnType<typeof observeDraw>;

function observeDraw(draw: WatchedDraw) {
  const { household, trace } = draw;
  const circuits = household.circuits.map((_, c) => circuitOfDraw(draw, c));
  const onOneUnit = legsTogetherW(draw);
  return {
    units: household.units.map((_, u) => unitOfDraw(draw, u, largestStartW(draw, u))),
    circuits,
    pairs: sharedPairs(household.circuits).map((pair) => pairOfDraw(draw, pair)),
    neutralA: trace.neutralA[highestAt(trace.neutralA)]!,
    allOnOneUnitW: onOneUnit[highestAt(onOneUnit)]!,
    lowestOutdoorC: trace.dryBulbC.reduce((least, c) => Math.min(least, c), Infinity),
  };
}

/** Load of a unit with the largest single start of each minute; 0 where nothing starts. */
function largestStartW(draw: WatchedDraw, u: number): Float64Array {
  const largest = new Float64Array(draw.trace.minutes);
  draw.household.circuits.forEach((_, c) =>
    startLoadW(draw, c, u).forEach((w, m) => {
      if (w > largest[m]!) largest[m] = w;
    }),
  );
  return largest;
}

/** All 120 V circuits together: what one unit carries when both legs hang on it. */
function legsTogetherW({ household, trace, servedW }: WatchedDraw): Float64Array {
  const together = new Float64Array(trace.minutes);
  household.circuits.forEach(({ leg }, c) => {
    if (leg !== 'both') servedW[c]!.forEach((w, m) => (together[m]! += w));
  });
  return together;
}
