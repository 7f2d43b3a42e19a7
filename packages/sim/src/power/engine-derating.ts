/** What height and heat take from an engine that breathes for itself. MODEL.md E3. */
import type { GeneratorSpec } from '../scenario/schema-sources.ts';

const FREE_FEET = 500;
const PER_1000_FEET = 0.03;
const METRES_PER_FOOT = 0.3048;
const FREE_FAHRENHEIT = 85;
const FAHRENHEIT_PER_PERCENT = { spark: 10, diesel: 5 };

/** Share of the power left at a height: 3 % less for each 1,000 ft above the first 500 ft; not below 0. */
export function heightFactor(elevationM: number): number {
  const feetAbove = Math.max(0, elevationM / METRES_PER_FOOT - FREE_FEET);
  return Math.max(0, 1 - (PER_1000_FEET * feetAbove) / 1000);
}

/** Share left in heat: 1 % less for each 10 °F above 85 °F (spark ignition) or each 5 °F (diesel); not below 0. */
export function heatFactor(outdoorC: number, fuel: GeneratorSpec['fuel']): number {
  const above = Math.max(0, (outdoorC * 9) / 5 + 32 - FREE_FAHRENHEIT);
  return Math.max(0, 1 - (0.01 * above) / FAHRENHEIT_PER_PERCENT[fuel === 'diesel' ? 'diesel' : 'spark']);
}

/**
 * Share of the rated power that a generator gives. Field & Solie, Introduction to Agricultural Engineering Technology,
 * chapter on engines (title from memory; rules and examples read): naturally aspirated engines, the two effects
 * multiplied.
 */
export function deratedShare(
  { derating, fuel }: Pick<GeneratorSpec, 'derating' | 'fuel'>,
  elevationM: number,
  outdoorC: number,
): number {
  return derating === 'none' ? 1 : heightFactor(elevationM) * heatFactor(outdoorC, fuel);
}
