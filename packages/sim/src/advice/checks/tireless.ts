/** The household with everything switched on and nothing that could stop it: what its circuits want, undisturbed. */
import type { HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';

/** Beyond any household's watts and watt-hours. */
const AMPLE = 1_000_000;

/** The scenario with one alternative, which never trips, never runs dry and never sheds, watched for some days. */
export function tirelessScenario(scenario: Scenario, household: HouseholdSpec, days: number): Scenario {
  const tireless: HouseholdSpec = {
    ...household,
    units: household.units.map(tirelessUnit),
    sources: undefined,
    strategies: [{ id: 'everything-on', title: 'Everything on', carriedOutBy: 'switch', rules: [] }],
  };
  return {
    ...scenario,
    outage: { ...scenario.outage, horizonDays: Math.min(days, scenario.outage.horizonDays) },
    alternatives: [{ id: 'watched', title: 'Watched', household: tireless }],
  };
}

function tirelessUnit(unit: UnitSpec): UnitSpec {
  const { inverter, battery } = unit;
  const module = { ...battery.module, capacityWh: AMPLE, maxChargeW: AMPLE, maxDischargeW: AMPLE };
  return {
    ...unit,
    inverter: { ...inverter, continuousW: AMPLE, surgeW: AMPLE },
    battery: {
      ...battery,
      module,
      modules: 1,
      healthFraction: 1,
      startFraction: 1,
      coldCapacity: [
        [-60, 1],
        [60, 1],
      ],
    },
  };
}
