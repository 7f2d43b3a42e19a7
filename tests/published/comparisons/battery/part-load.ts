/** Part-load efficiency against the published loss model. */
import { prepareStudy } from '../../../../packages/sim/src/index.ts';
import { traceDraw } from '../../../../packages/sim/src/trials/trace-draw.ts';
import { bareCircuit, bareScenario, bareUnit, profile } from '../../bare-household.ts';
import { near, once, type Comparison } from '../comparison.ts';
import { lossesInW, partLoadOf, type PartLoad } from './part-load-model.ts';

const RATED_W = 6400;
const PART_LOADS = [0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1] as const;
const PUBLISHED_FORM = 'quadratic loss model, coefficients from three efficiencies (C)';

/** Efficiency minute by minute while the load follows the shares of the rating. */
function efficiencies(model: PartLoad, shares: readonly number[]): number[] {
  const { idleW, lossPerW, lossPerW2 } = lossesInW(model, RATED_W);
  const scenario = bareScenario({
    units: [bareUnit({ capacityWh: 1e6, inverter: { idleW, lossPerW: Math.max(0, lossPerW), lossPerW2 } })],
    circuits: [bareCircuit('load', 'L1', profile('ramp'))],
    days: shares.length / 1440,
    profiles: { ramp: { intervalMinutes: 1, watts: shares.map((p) => p * RATED_W) } },
  });
  // A fit may give a k1 a little below 0, which a scenario file may not.
  const { household } = scenario.alternatives[0]!;
  const units = household.units.map((u) => ({ ...u, inverter: { ...u.inverter, lossPerW } }));
  const alternatives = [{ ...scenario.alternatives[0]!, household: { ...household, units } }];
  const study = prepareStudy({ ...scenario, alternatives }, { seed: 'part load' });
  const unit = traceDraw(study, { draw: 0, alternative: 0, strategy: 0 }).units[0]!;
  return Array.from(unit.loadW, (watts, m) => watts / (watts + unit.inverterLossW[m]!));
}

export const partLoads: readonly Comparison[] = (
  [
    [0.9, 0.95, 0.93, [0.65305, 0.82362, 0.9, 0.93934, 0.94921, 0.95, 0.94146, 0.93], 0.3998],
    [0.925, 0.96, 0.945, [0.73008, 0.8682, 0.925, 0.95302, 0.95981, 0.96, 0.95355, 0.945], 0.39154],
  ] as const
).flatMap(([eta10, eta50, eta100, table, best]) => {
  const model = partLoadOf(eta10, eta50, eta100);
  const name = `an inverter of ${eta10}, ${eta50} and ${eta100} at a tenth, half and full load`;
  const grid = Array.from({ length: 1440 }, (_, m) => (m + 1) / 1440);
  const found = once(() => efficiencies(model, [...PART_LOADS, ...grid]));
  return [
    ...PART_LOADS.map((share, i) => ({
      claim: `${name}: efficiency at ${share} of its rating`,
      source: PUBLISHED_FORM,
      unit: 'share',
      band: near(table[i]!, 1e-5),
      ours: () => found()[i]!,
    })),
    {
      claim: `${name}: best at √(k0/k2) of its rating`,
      source: PUBLISHED_FORM,
      unit: 'share',
      band: near(best, 1 / 1440),
      ours: () => {
        const onGrid = found().slice(PART_LOADS.length);
        return grid[onGrid.indexOf(Math.max(...onGrid))]!;
      },
    },
  ];
});
