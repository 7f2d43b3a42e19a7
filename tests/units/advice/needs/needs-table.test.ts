import { describe, expect, it } from 'vitest';
import { askDrawsHere } from '../../../../packages/sim/src/advice/draw-job.ts';
import { askNeeds } from '../../../../packages/sim/src/advice/needs/ask-needs.ts';
import { needsEnduranceTable } from '../../../../packages/sim/src/advice/needs/needs-table.ts';
import { loadScenario } from '../../../../packages/sim/src/node/load-scenario.ts';

describe('the table of needs', () => {
  it('names the unit of every depth and extreme beside it: food in degrees, water in litres, power in none', async () => {
    const { scenario } = loadScenario('data/full-house.yaml');
    const answer = await askNeeds(scenario, { seed: 'units', draws: 1 }, askDrawsHere);
    const rows = needsEnduranceTable(answer).objects() as Record<string, unknown>[];
    const units = new Map(rows.map((row) => [row.measure, [row.depthUnit, row.extremeUnit]]));
    expect(Object.fromEntries(units)).toEqual({
      cold: ['°C·h', '°C'],
      water: ['L', 'L'],
      warmth: ['°C·h', '°C'],
      power: [null, null],
    });
    for (const row of rows) {
      expect(row.depthMean === null).toBe(row.depthUnit === null);
      expect(row.extremeOneInTen === null).toBe(row.extremeUnit === null);
    }
  });
});
