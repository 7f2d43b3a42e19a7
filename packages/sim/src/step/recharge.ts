/** How long a household's banks take to fill from their cut-off, once a source is there. MODEL.md E6. */
import { rechargeHours } from '../power/recharge-time.ts';
import { generatorShare } from '../power/source-feed.ts';
import { bankCapacityWh } from '../power/unit-parameters.ts';
import type { HouseholdSpec } from '../scenario/scenario.ts';

/** Hours until the slowest bank is full, nothing being drawn and no sun; null where that source charges no bank. */
export interface RechargeTimes {
  readonly gridHours: number | null;
  readonly generatorHours: number | null;
}

export function rechargeFromCutOff({
  units,
  sources,
}: Pick<HouseholdSpec, 'units' | 'sources'>): RechargeTimes {
  const generator = sources?.generator;
  const fed = units.filter((unit) => generator?.feeds?.includes(unit.id) ?? unit.charger !== undefined);
  const shareW = generator === undefined ? 0 : generator.ratedW * generatorShare(generator.volts, fed.length);
  return {
    gridHours: slowest(units, Infinity),
    generatorHours: generator === undefined ? null : slowest(fed, shareW),
  };
}

/** @param sourceW what the source gives each unit */
function slowest(units: HouseholdSpec['units'], sourceW: number): number | null {
  const hours = units.flatMap(({ battery, charger, inverter }) => {
    if (charger === undefined) return [];
    const { module, modules } = battery;
    const capacityWh = bankCapacityWh(battery);
    return rechargeHours({
      capacityWh,
      storedWh: capacityWh * battery.cutOffFraction,
      chargerW: Math.min(charger.maxW, Math.max(0, sourceW - inverter.idleW)),
      chargerEfficiency: charger.efficiency,
      maxChargeW: modules * module.maxChargeW,
      chargeEfficiency: module.chargeEfficiency,
    });
  });
  return hours.length === 0 ? null : Math.max(...hours);
}
