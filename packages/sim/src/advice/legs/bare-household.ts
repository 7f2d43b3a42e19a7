/**
 * Households that no assignment can outlast: only what the strategy never switches off and must not go without, no
 * ratings, nothing that stops a unit but an empty bank. MODEL.md §21.
 */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { chosenCircuits } from '../../shedding/compile-rules.ts';
import type { Panel, Sides } from './panel.ts';
import { circuitsOn } from './panel.ts';

/** Beyond any household's watts; the schema's own limit. */
const NO_LIMIT_W = 1_000_000;
/** Below any place's temperature. */
const COLDEST_C = -100;

/**
 * Positions of tier-1 circuits that no rule of the strategy switches off, whichever leg they are on. A unit put to sleep
 * takes 240 V with it, and the others of its circuits unless they are moved.
 */
export function alwaysOn({ circuits, strategies }: HouseholdSpec): number[] {
  const { rules } = strategies[0]!;
  return circuits.flatMap((circuit, i) => {
    const wheres =
      circuit.leg === 'both' ? [circuit] : (['L1', 'L2'] as const).map((leg) => ({ ...circuit, leg }));
    const named = rules.some((rule) =>
      rule.by === 'sleep'
        ? circuit.leg === 'both' || rule.circuits === 'dropped'
        : chosenCircuits(rule.circuits, wheres).includes(1),
    );
    return circuit.tier === 1 && !named ? i : [];
  });
}

/** The strategy lets one unit feed the other's circuits: the legs cannot be looked at apart. */
export function movesCircuits({ strategies }: HouseholdSpec): boolean {
  return strategies[0]!.rules.some((rule) => rule.by === 'sleep');
}

/** The two units as they are, with the always-on circuits alone. */
export function bareHousehold(panel: Panel, sides: Sides): HouseholdSpec {
  const { household } = panel;
  const circuits = circuitsOn(panel, sides);
  return {
    ...household,
    units: household.units.map(withoutRatings),
    pair: { ...household.pair, stopsTogether: false },
    circuits: alwaysOn(household).map((i) => circuits[i]!),
    strategies: [{ ...household.strategies[0]!, carriedOutBy: 'switch', rules: [] }],
  };
}

function withoutRatings(unit: UnitSpec): UnitSpec {
  const { inverter, battery } = unit;
  return {
    ...unit,
    inverter: { ...inverter, continuousW: NO_LIMIT_W, surgeW: NO_LIMIT_W },
    battery: { ...battery, module: { ...battery.module, maxDischargeW: NO_LIMIT_W } },
  };
}

/**
 * Both banks and all panels as one unit that feeds both legs, with the better of every two figures. Its 240 V circuits
 * get nothing, which lasts no less long than feeding them.
 */
export function pooledHousehold(panel: Panel): HouseholdSpec {
  const bare = bareHousehold(panel, panel.present);
  return {
    ...bare,
    units: [pooledUnit(bare.units)],
    circuits: bare.circuits.filter((circuit) => circuit.leg !== 'both'),
  };
}

function pooledUnit(units: readonly UnitSpec[]): UnitSpec {
  const first = units[0]!;
  const least = (of: (unit: UnitSpec) => number) => Math.min(...units.map(of));
  const most = (of: (unit: UnitSpec) => number) => Math.max(...units.map(of));
  const sum = (of: (unit: UnitSpec) => number) => units.reduce((total, unit) => total + of(unit), 0);
  const { inverter, battery } = first;
  return {
    ...first,
    leg: 'both',
    inverter: {
      ...inverter,
      idleW: least((u) => u.inverter.idleW),
      standbyW: least((u) => u.inverter.standbyW),
      lossPerW: least((u) => u.inverter.lossPerW),
      // Shared evenly, the square of the watts is halved.
      lossPerW2: least((u) => u.inverter.lossPerW2) / units.length,
    },
    battery: {
      ...battery,
      modules: 1,
      healthFraction: 1,
      module: {
        ...battery.module,
        capacityWh: sum((u) => u.battery.modules * u.battery.module.capacityWh * u.battery.healthFraction),
        maxChargeW: sum((u) => u.battery.modules * u.battery.module.maxChargeW),
        chargeEfficiency: most((u) => u.battery.module.chargeEfficiency),
        dischargeEfficiency: most((u) => u.battery.module.dischargeEfficiency),
        selfDischargePerMonthFraction: least((u) => u.battery.module.selfDischargePerMonthFraction),
      },
      startFraction: most((u) => u.battery.startFraction ?? 1),
      cutOffFraction: least((u) => u.battery.cutOffFraction),
      restartFraction: least((u) => u.battery.restartFraction),
      ...warmestBank(units),
    },
    solar: {
      inputLimitW: Math.max(
        1,
        sum((u) => u.solar?.inputLimitW ?? 0),
      ),
      arrays: units.flatMap((u) => u.solar?.arrays ?? []),
    },
  };
}

/** Banks in different places, or that bear cold differently, count as warm. */
function warmestBank(
  units: readonly UnitSpec[],
): Pick<UnitSpec['battery'], 'place' | 'coldCapacity' | 'minChargeC'> {
  const [{ battery: first }, ...others] = units as [UnitSpec, ...UnitSpec[]];
  const alike = others.every(
    ({ battery }) =>
      battery.place === first.place &&
      battery.minChargeC === first.minChargeC &&
      JSON.stringify(battery.coldCapacity) === JSON.stringify(first.coldCapacity),
  );
  if (alike) return { place: first.place, coldCapacity: first.coldCapacity, minChargeC: first.minChargeC };
  return {
    place: first.place,
    coldCapacity: [
      [COLDEST_C, 1],
      [-COLDEST_C, 1],
    ],
    minChargeC: COLDEST_C,
  };
}
