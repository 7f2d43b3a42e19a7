import { describe, expect, it } from 'vitest';
import { sourceLines } from '../../../packages/sim/src/cli/render-sources.ts';
import { styleFor, type TerminalLook } from '../../../packages/sim/src/cli/render-style.ts';
import {
  prepareStudy,
  runShard,
  scenarioCautions,
  sourcesTable,
  summarise,
} from '../../../packages/sim/src/index.ts';
import { renderStudy } from '../../../packages/sim/src/cli/render-study.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const LOOK: TerminalLook = { width: 60, colour: false };

const scenario = tinyScenario({
  units: [{ charger: { maxW: 3000, efficiency: 1 } }],
  circuits: { heater: { watts: 1000 } },
  sources: {
    generator: {
      ratedW: 4000,
      volts: 120,
      tankL: 1,
      cansL: 1,
      refuelMinutes: 0,
      starts: 'automatic',
      fuelUse: { halfLoadLPerHour: 1, fullLoadLPerHour: 1.5 },
    },
  },
  generator: { by: 'charge', startBelowFraction: 0.5, stopAboveFraction: 0.9 },
  hours: 24,
});
const study = prepareStudy(scenario, { seed: 'sources' });
const summary = summarise(study, runShard(study, 0, 3));

describe('energy back', () => {
  it('tells hours, runs, litres and fuel days, and how long recharging takes, within the width', () => {
    const lines = sourceLines(summary, LOOK, styleFor(LOOK)).map((line) => line.replaceAll('\u00a0', ' '));
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(60);
    const text = lines.join(' ').replaceAll(/ +/g, ' ');
    expect(text).toContain('2.0 of 2 L burnt');
    expect(text).toMatch(/generator 1\.\d hours \(1\.\d a day\) in \d\.0 runs/);
    expect(text).toMatch(/fuel for \d+ hours in nine outages of ten/);
    expect(text).toContain('From cut-off to full, nothing drawn and no sun: 2.0 hours on the generator.');
  });

  it('tells how long recharging takes by the sources that there are', () => {
    const told = (sources: object) => {
      const study = prepareStudy(
        tinyScenario({
          units: [{ charger: { maxW: 3000, efficiency: 1 } }],
          circuits: { heater: { watts: 10 } },
          sources,
          hours: 4,
        }),
        { seed: 'a' },
      );
      const lines = sourceLines(summarise(study, runShard(study, 0, 1)), LOOK, styleFor(LOOK));
      return lines
        .join(' ')
        .replaceAll(/\s+/g, ' ')
        .replace(/.*no sun: /, '');
    };
    const grid = { onHours: 1, offHours: 2 };
    const vehicle = { unit: 'east', outletW: 1500, efficiency: 1 };
    expect(told({ grid })).toBe('2.0 hours on the grid.');
    expect(told({ vehicle })).toBe('4.0 hours plugged into the vehicle.');
    expect(told({ grid, vehicle })).toBe('2.0 hours on the grid, 4.0 hours plugged into the vehicle.');
  });

  it('stands in the study’s block with the caution that a generator needs', () => {
    const text = renderStudy(summary, LOOK, scenarioCautions(scenario)).replaceAll('\n', ' ');
    expect(text).toContain('Energy back');
    expect(text).toContain('carbon monoxide');
    expect(text).toContain('licensed electrician');
    const without = prepareStudy(tinyScenario({ circuits: { talk: { watts: 10 } }, hours: 2 }), {
      seed: 'a',
    });
    const plain = renderStudy(
      summarise(without, runShard(without, 0, 2)),
      LOOK,
      scenarioCautions(without.scenario),
    );
    expect(plain).not.toMatch(/Energy back|carbon monoxide/);
  });

  it('is a table with a row for each version and strategy that has a source', () => {
    const [row] = sourcesTable(summary).objects() as Record<string, unknown>[];
    expect(row).toMatchObject({
      fuelOnHandL: 2,
      gridHours: 0,
      generatorTrips: 0,
      rechargeOnGridHours: null,
      rechargeOnGeneratorHours: 2,
      rechargeOnVehicleHours: null,
    });
  });
});
