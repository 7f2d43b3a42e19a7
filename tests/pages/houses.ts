/** The invented households of data/, and what Node works out about them. */
import { fileURLToPath } from 'node:url';
import { prepareStudy, runShard, summarise, type Scenario } from '@rideout/sim';
import { loadScenario } from '@rideout/sim/node';

/** A file by its path from this folder. */
export function fileOf(path: string): string {
  return fileURLToPath(new URL(path, import.meta.url));
}

/** One unit, two alternatives; resolved. */
export function smallHouse(): Scenario {
  return loadScenario(fileOf('../../data/small-house.yaml')).scenario;
}

/** A pair of units, a ladder, every kind of appliance; resolved. */
export function fullHouse(): Scenario {
  return loadScenario(fileOf('../../data/full-house.yaml')).scenario;
}

/** The pair with a generator, hours of grid, a car’s outlet and portable panels, an alternative each; resolved. */
export function energyBackHouse(): Scenario {
  return loadScenario(fileOf('../../data/energy-back.yaml')).scenario;
}

/** The study that a page makes, made here. */
export function studyInNode(scenario: Scenario, { seed, draws }: { seed: string; draws: number }) {
  const study = prepareStudy(scenario, { seed });
  const rows = runShard(study, 0, draws);
  return { study, rows, summary: summarise(study, rows) };
}
