/** What each source brought in a part of an outage: hours, energy, fuel; in numbers and in words. */
import type { DrawTrace, HouseholdSpec } from '@rideout/sim';

export type SourceId = DrawTrace['sources'][number]['id'];

export interface SourceTotal {
  readonly id: SourceId;
  readonly hours: number;
  readonly kWh: number;
  /** Litres; 0 of what burns none here. */
  readonly fuelL: number;
}

/** Minutes [from, to). */
export function sourceTotals(
  { sources }: Pick<DrawTrace, 'sources'>,
  from: number,
  to: number,
): SourceTotal[] {
  const sum = (values: Float64Array | undefined) =>
    (values ?? new Float64Array()).subarray(from, to).reduce((total, value) => total + value, 0);
  return sources.map(({ id, inW, onMinutes, fuelL }) => ({
    id,
    hours: sum(onMinutes) / 60,
    kWh: sum(inW) / 60_000,
    fuelL: sum(fuelL),
  }));
}

export const SOURCE_NAMES: Readonly<Record<SourceId, string>> = {
  grid: 'Grid',
  generator: 'Generator',
  vehicle: 'Car',
};

const DOES: Readonly<Record<SourceId, { some: string; none: string }>> = {
  grid: { some: 'is back for', none: 'does not come back' },
  generator: { some: 'runs for', none: 'does not run' },
  vehicle: { some: 'is plugged in for', none: 'is not plugged in' },
};

/** "The generator runs for 31.2 hours and gives 58.0 kWh, for 34.1 of 60 L of fuel.", a sentence a source. */
export function sourceSentences(
  totals: readonly SourceTotal[],
  { sources }: Pick<HouseholdSpec, 'sources'>,
): string[] {
  return totals.map(({ id, hours, kWh, fuelL }) => {
    const does = `The ${SOURCE_NAMES[id].toLowerCase()} ${hours > 0 ? DOES[id].some : DOES[id].none}`;
    if (hours === 0) return `${does}.`;
    const { tankL = 0, cansL = 0 } = sources?.generator ?? {};
    const fuel = id === 'generator' ? `, for ${fuelL.toFixed(1)} of ${tankL + cansL}\u00a0L of fuel` : '';
    return `${does} ${hours.toFixed(1)}\u00a0hours and gives ${kWh.toFixed(1)}\u00a0kWh${fuel}.`;
  });
}
