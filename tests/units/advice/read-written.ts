/** Scenarios given as data, read and resolved as a file would be. */
import { readScenario, resolveScenario } from '../../../packages/sim/src/index.ts';
import type { Scenario, ScenarioSpec } from '../../../packages/sim/src/index.ts';
import { tinySpec, type TinyHouse } from '../step/tiny-house.ts';

export function scenarioOf(spec: ScenarioSpec): Scenario {
  const read = readScenario(JSON.stringify(spec), 'house.json', new Map());
  return resolveScenario(read, { normals: new Map(), years: new Map(), profiles: new Map() });
}

/** A tiny house without panels: how long it lasts is capacity over load. */
export function darkSpec(house: TinyHouse): ScenarioSpec {
  const spec = tinySpec(house);
  return { ...spec, units: spec.units.map((unit) => ({ ...unit, solar: undefined })) };
}
