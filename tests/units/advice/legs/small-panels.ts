/** Panels small enough to try every assignment by hand. */
import { askHere } from '../../../../packages/sim/src/index.ts';
import type { Scenario, ScenarioSpec } from '../../../../packages/sim/src/index.ts';
import {
  householdOn,
  panelOf,
  everySides,
  type Panel,
  type Sides,
} from '../../../../packages/sim/src/advice/legs/panel.ts';
import { tinySpec, type TinyHouse } from '../../step/tiny-house.ts';
import { scenarioOf } from '../read-written.ts';

type Spec = ScenarioSpec;

const uses = (runningW: number, usesPerDay: number, minutesPerUse: number) => [
  { kind: 'events' as const, runningW, usesPerDay, minutesPerUse },
];

/** Six movable circuits, one 240 V one; sun, weather and habits as they fall. */
export function sunnyPanel(changes: Partial<TinyHouse> = {}, spoil: Partial<Spec> = {}): Scenario {
  const unit = { capacityWh: 2500, inverter: { idleW: 15, lossPerW: 0.03, continuousW: 3000, surgeW: 6000 } };
  const spec = tinySpec({
    units: [unit, unit],
    circuits: {
      fridge: { watts: 60 },
      talk: { watts: 25, leg: 'L2' },
      lights: { appliances: [{ kind: 'lights', runningW: 60 }], graceMinutes: 30 },
      kitchen: { appliances: uses(1400, 6, 6), tier: 3 },
      living: { appliances: uses(150, 3, 90), tier: 3 },
      desk: { watts: 40, tier: 4 },
      well: { leg: 'both', appliances: uses(900, 8, 3), tier: 2 },
    },
    hours: 72,
    startLocal: '2026-11-10T17:00',
    ...changes,
  });
  return scenarioOf({ ...spec, ...spoil });
}

/** A rule that drops tiers as the bank sinks. */
export const DROPPING = [
  { by: 'charge' as const, circuits: { tiers: [3, 4] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.8 },
  { by: 'charge' as const, circuits: { tiers: [2] }, dropBelowFraction: 0.3, restoreAboveFraction: 0.5 },
];

/** Runtime in minutes of every assignment, one value per draw. */
export async function everyRuntime(
  scenario: Scenario,
  seed: string,
  draws: number,
): Promise<{ panel: Panel; runtimes: Map<Sides, number[]> }> {
  const panel = panelOf(scenario.alternatives[0]!.household);
  const all = [...everySides(panel.movable.length)];
  const alternatives = all.map((sides) => ({
    id: sides,
    title: sides,
    household: householdOn(panel, sides),
  }));
  const { rows } = await askHere({ ...scenario, alternatives }, { seed, draws });
  const runtimes = new Map(all.map((sides) => [sides, [] as number[]]));
  for (let row = 0; row < rows.length; row++)
    runtimes.get(all[rows.columns['alternative']![row]!]!)!.push(rows.columns['runtimeMinutes']![row]!);
  return { panel, runtimes };
}

/** Days that nine in ten reach, by counting. */
export function nineInTenDays(minutes: readonly number[]): number {
  const sorted = [...minutes].sort((a, b) => a - b);
  return sorted[Math.floor(0.1 * sorted.length + 1e-9)]! / 1440;
}
