import { expect, it } from 'vitest';
import { prepareStudy } from '../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../packages/sim/src/node.ts';
import { summariseSources } from '../../../packages/sim/src/trials/summarise-sources.ts';

it('fuel that is left at the horizon is told as at least the horizon', () => {
  const study = prepareStudy(loadScenario('data/energy-back.yaml').scenario, { seed: 'fuel' });
  const generator = study.alternatives.findIndex(({ id }) => id === 'generator');
  const told = (gone: number) =>
    summariseSources(study, generator, (name) =>
      Float64Array.from({ length: 20 }, (_, i) =>
        name !== 'fuelGoneMinute' ? 0 : i < gone ? 2 * 1440 : NaN,
      ),
    )!.generator!;
  expect(told(1).nineInTenFuelDays.value).toBeNull();
  expect(told(3).nineInTenFuelDays.value).toBe(2);
  expect(told(3).medianFuelDays.value).toBeNull();
  expect(told(1).fuelOnHandL).toBe(20 + 40); // the file’s tank and its cans
});
