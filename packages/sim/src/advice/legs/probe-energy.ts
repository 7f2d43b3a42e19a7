/** What each circuit takes, and what each unit has, in the days that matter: a short run of a few draws. */
import { streamsOf } from '../../chance/streams.ts';
import type { HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import { feedsLeg } from '../../scenario/feeds-leg.ts';
import { groupBooks, unitBooks } from '../../step/ledger.ts';
import { liveDraw } from '../../trials/live-draw.ts';
import { prepareStudy } from '../../trials/study.ts';
import { LEGS } from './leg-limits.ts';

/** Mean watts over the window, one value per draw. */
export interface ProbedEnergy {
  readonly draws: number;
  readonly windowDays: number;
  /** Per circuit of the household. */
  readonly servedW: readonly Float64Array[];
  /** Per leg, L1 first: usable solar, and what the bank holds above its cut-off at the start, Wh. */
  readonly solarW: readonly Float64Array[];
  readonly storedWh: readonly Float64Array[];
}

/** @param household with the one strategy that is followed @param windowDays how far to look, ≤ the horizon */
export function probeEnergy(
  scenario: Scenario,
  household: HouseholdSpec,
  { seed, draws, windowDays }: { seed: string; draws: number; windowDays: number },
): ProbedEnergy {
  const { circuits, units } = household;
  const study = prepareStudy(
    {
      ...scenario,
      ladder: undefined,
      outage: { ...scenario.outage, horizonDays: windowDays },
      alternatives: [{ id: 'probe', title: 'probe', household: circuitByCircuit(household) }],
    },
    { seed },
  );
  const series = (count: number) => Array.from({ length: count }, () => new Float64Array(draws));
  const probed = {
    servedW: series(circuits.length),
    solarW: series(LEGS.length),
    storedWh: series(LEGS.length),
  };
  const unitOf = LEGS.map((leg) => units.findIndex((unit) => feedsLeg(unit.leg, leg)));
  for (let draw = 0; draw < draws; draw++) {
    const run = liveDraw(study, streamsOf(seed, draw), { alternative: 0, strategy: 0 });
    run.household.circuits.forEach(({ group }, c) => {
      probed.servedW[c]![draw] = groupBooks(run, group).servedWh / (24 * windowDays);
    });
    unitOf.forEach((u, leg) => {
      const books = unitBooks(run, u);
      const cutOffWh = units[u]!.battery.cutOffFraction * run.household.capacityWh[u]!;
      probed.solarW[leg]![draw] = books.solarUsableWh / (24 * windowDays);
      probed.storedWh[leg]![draw] = books.storedStartWh - cutOffWh;
    });
  }
  return { draws, windowDays, ...probed };
}

/** The books are kept for circuits that are switched together; a second strategy, never lived, parts them all. */
function circuitByCircuit(household: HouseholdSpec): HouseholdSpec {
  const rules = household.circuits.map(({ id }) => ({ by: 'outage' as const, circuits: { ids: [id] } }));
  const parting = { id: 'parting', title: 'parting', carriedOutBy: 'switch' as const, rules };
  return { ...household, strategies: [household.strategies[0]!, parting] };
}
