/** How long a household's banks take to fill from their cut-off, once a source is there. MODEL.md E6. */
import { rechargeHours } from '../power/recharge-time.ts';
import { generatorShare } from '../power/source-feed.ts';
import { bankCapacityWh } from '../power/unit-parameters.ts';
import { unitsFedBy } from '../scenario/fed-units.ts';
import type { HouseholdSpec } from '../scenario/scenario.ts';

/**
 * Hours until the slowest bank is full, nothing being drawn and no sun; null where the household has no such source, or
 * it charges no bank. The vehicle's are hours plugged in.
 */
export interface RechargeTimes {
  readonly gridHours: number | null;
  readonly generatorHours: number | null;
  readonly vehicleHours: number | null;
}

type Unit = HouseholdSpec['units'][number];
type Charger = Pick<NonNullable<Unit['charger']>, 'maxW' | 'efficiency'>;

/** By the sources that the household has. */
export function rechargeFromCutOff({
  units,
  sources,
}: Pick<HouseholdSpec, 'units' | 'sources'>): RechargeTimes {
  const { grid, generator, vehicle } = sources ?? {};
  const fed = generator === undefined ? [] : unitsFedBy(generator, units);
  const shareW = generator === undefined ? 0 : generator.ratedW * generatorShare(generator.volts, fed.length);
  const plugged = units.filter((unit) => unit.id === vehicle?.unit);
  return {
    gridHours: grid === undefined ? null : slowest(units, (unit) => passed(unit, Infinity)),
    generatorHours: generator === undefined ? null : slowest(fed, (unit) => passed(unit, shareW)),
    vehicleHours:
      vehicle === undefined
        ? null
        : slowest(plugged, () => ({ maxW: vehicle.outletW, efficiency: vehicle.efficiency })),
  };
}

/** What the unit's own charger takes of a source that carries the idling inverter too. */
function passed({ charger, inverter }: Unit, sourceW: number): Charger | undefined {
  return charger && { ...charger, maxW: Math.min(charger.maxW, Math.max(0, sourceW - inverter.idleW)) };
}

function slowest(units: readonly Unit[], chargerOf: (unit: Unit) => Charger | undefined): number | null {
  const hours = units.flatMap((unit) => {
    const charger = chargerOf(unit);
    if (charger === undefined) return [];
    const { module, modules, cutOffFraction } = unit.battery;
    const capacityWh = bankCapacityWh(unit.battery);
    return rechargeHours({
      capacityWh,
      storedWh: capacityWh * cutOffFraction,
      chargerW: charger.maxW,
      chargerEfficiency: charger.efficiency,
      maxChargeW: modules * module.maxChargeW,
      chargeEfficiency: module.chargeEfficiency,
    });
  });
  return hours.length === 0 ? null : Math.max(...hours);
}
