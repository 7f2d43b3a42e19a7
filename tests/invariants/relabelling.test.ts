/** Nothing depends on what a leg is called or which unit is written first. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import type { OutcomeRows, ScenarioSpec } from '../../packages/sim/src/index.ts';
import { REPEATABLE, SEED } from './every-minute.ts';
import { randomSpec, resolve } from './random-scenario.ts';

const RUNS = 60;
const OTHER = { L1: 'L2', L2: 'L1', both: 'both' } as const;

/** The same household with the two sides of the panel called by each other's name. */
function legsSwapped(spec: ScenarioSpec): ScenarioSpec {
  return {
    ...spec,
    units: spec.units.map((unit) => ({ ...unit, leg: unit.leg === 'L1' ? 'L2' : 'L1' })),
    circuits: spec.circuits.map((circuit) => ({ ...circuit, leg: OTHER[circuit.leg] })),
    strategies: spec.strategies.map((strategy) => ({
      ...strategy,
      rules: strategy.rules?.map((rule) =>
        'circuits' in rule && typeof rule.circuits === 'object' && rule.circuits.legs !== undefined
          ? { ...rule, circuits: { ...rule.circuits, legs: rule.circuits.legs.map((leg) => OTHER[leg]) } }
          : rule,
      ),
    })),
  };
}

function rowsOf(spec: ScenarioSpec): OutcomeRows {
  return runShard(prepareStudy(resolve(spec), { seed: SEED }), 0, 2);
}

/** Columns that name a unit by its position, told from the other side. */
function unitsSwapped({ length, columns }: OutcomeRows): OutcomeRows {
  const { endUnit, minutesUnit0Down, minutesUnit1Down } = columns;
  return {
    length,
    columns: {
      ...columns,
      endUnit: endUnit!.map((u) => 1 - u),
      minutesUnit0Down: minutesUnit1Down!,
      minutesUnit1Down: minutesUnit0Down!,
    },
  };
}

describe('a household', () => {
  it('has the same outcomes, bit for bit, when L1 and L2 change names', () => {
    let rows = 0;
    fc.assert(
      fc.property(randomSpec({ horizonHours: [3, 30] }), (spec) => {
        const as = rowsOf(spec);
        expect(rowsOf(legsSwapped(spec))).toStrictEqual(as);
        rows += as.length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(rows).toBeGreaterThan(2 * RUNS);
  });

  it('has the same outcomes, bit for bit, when its units are written in the other order; of two that trip in one minute, either is named', () => {
    let rows = 0;
    fc.assert(
      fc.property(randomSpec({ horizonHours: [3, 30], units: 2 }), (spec) => {
        const as = rowsOf(spec);
        const swapped = unitsSwapped(rowsOf({ ...spec, units: [...spec.units].reverse() }));
        // trips fall on whole minutes, so that two can fall together; banks do not run empty on one
        const inOneMinute = (row: number) => Number.isInteger(as.columns['runtimeMinutes']![row]);
        for (const [name, values] of Object.entries(as.columns)) {
          const named = name === 'endUnit' || name === 'endCause';
          const other = swapped.columns[name]!.map((value, row) =>
            named && inOneMinute(row) ? values[row]! : value,
          );
          expect(other, name).toStrictEqual(values);
        }
        rows += as.length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(rows).toBeGreaterThan(2 * RUNS);
  });

  it('has the same outcomes when its circuits are written in another order', () => {
    let rows = 0;
    fc.assert(
      fc.property(randomSpec({ horizonHours: [3, 30] }), (spec) => {
        const as = rowsOf(spec);
        const turned = rowsOf({ ...spec, circuits: [...spec.circuits].reverse() });
        for (const [name, values] of Object.entries(as.columns)) {
          values.forEach((value, row) => {
            const other = turned.columns[name]![row]!;
            const same = Object.is(value, other) || Math.abs(value - other) <= 1e-9 * (1 + Math.abs(value));
            // of two circuits that go without in the same moment, the one written first is named
            if (!same && name !== 'endCause' && name !== 'endUnit')
              throw new Error(`${name}: ${value} and ${other}`);
          });
        }
        rows += as.length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(rows).toBeGreaterThan(2 * RUNS);
  });
});
