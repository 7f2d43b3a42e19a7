/** How long a bank takes to fill once a source is there. MODEL.md E6. */

/** What one bank and its charger are, while nothing is drawn from it. */
export interface Recharge {
  readonly capacityWh: number;
  readonly storedWh: number;
  /** AC watts that the charger takes: its own limit, or what the source leaves it. */
  readonly chargerW: number;
  readonly chargerEfficiency: number;
  /** Most DC watts into the modules; 0 when too cold. */
  readonly maxChargeW: number;
  readonly chargeEfficiency: number;
}

/** Watt-hours a charger stores in an hour. */
function storedWPer({ chargerW, chargerEfficiency, maxChargeW, chargeEfficiency }: Recharge): number {
  return Math.min(chargerW * chargerEfficiency, maxChargeW) * chargeEfficiency;
}

/**
 * Hours until the bank holds `toFraction` of its capacity, 0…1: what is missing over what is stored an hour. The last
 * tenth goes slower than this in most banks, which hold their current back near full (common practice, no source).
 *
 * @returns 0 when it holds that much, Infinity when nothing charges it
 */
export function rechargeHours(bank: Recharge, toFraction = 1): number {
  const missingWh = bank.capacityWh * toFraction - bank.storedWh;
  return missingWh <= 0 ? 0 : missingWh / storedWPer(bank);
}
