/** Alternatives with different units: columns by position in the study's own list of units. */
import { describe, expect, it } from 'vitest';
import { askHere, outcomesTable, summarise } from '../../../packages/sim/src/index.ts';
import { darkSpec, scenarioOf } from '../advice/read-written.ts';

const circuits = { a: { watts: 100 }, b: { watts: 400, leg: 'L2' as const } };
const [pair] = scenarioOf(darkSpec({ units: [{}, {}], circuits, hours: 24 })).alternatives;
const { household } = pair!;
const westAlone = {
  id: 'west-alone',
  title: 'West alone',
  household: { ...household, units: [{ ...household.units[1]!, leg: 'both' as const }] },
};
const eastAlone = {
  id: 'east-alone',
  title: 'East alone',
  household: { ...household, units: [{ ...household.units[0]!, leg: 'both' as const }] },
};
const scenario = scenarioOf(darkSpec({ units: [{}, {}], circuits, hours: 24 }));

describe('a study whose alternatives have different units', () => {
  it('lists the units of all of them, in order of first mention', async () => {
    const study = { ...scenario, alternatives: [westAlone, pair!] };
    expect((await askHere(study, { seed: 'x', draws: 1 })).outline.unitIds).toEqual(['west', 'east']);
  });

  it('tells each row’s units by that list, whichever position they have at home', async () => {
    const study = { ...scenario, alternatives: [westAlone, eastAlone, pair!] };
    const { outline, rows } = await askHere(study, { seed: 'x', draws: 1 });
    const column = (name: string) => Array.from(rows.columns[name]!);
    // 6 kWh: alone 500 W and 12 hours; of the pair, west with 400 W is the first to stop, after 15 hours.
    expect(column('runtimeMinutes')).toEqual([720, 720, 900]);
    expect(column('endUnit')).toEqual([0, 1, 0]);
    expect(column('minutesUnit0Down')).toEqual([720, NaN, 540]);
    expect(column('minutesUnit1Down')).toEqual([NaN, 720, 0]);
    const summary = summarise(outline, rows);
    expect(summary.strategies.map((s) => s.ends[0]!.unitId)).toEqual(['west', 'east', 'west']);
    expect(outcomesTable(outline, rows).array('endUnit')).toEqual(['west', 'east', 'west']);
  });

  it('leaves rows alone when every household has the same units', async () => {
    const { rows } = await askHere({ ...scenario, alternatives: [pair!] }, { seed: 'x', draws: 1 });
    expect(rows.columns['endUnit']![0]).toBe(1);
    expect(rows.columns['minutesUnit0Down']![0]).toBe(0);
  });
});

describe('circuits on other legs', () => {
  it('share the usage of a draw, and their wants apart', async () => {
    const moved = household.circuits.map((c) => (c.id === 'b' ? { ...c, leg: 'L1' as const } : c));
    const other = { id: 'moved', title: 'Moved', household: { ...household, circuits: moved } };
    const { rows } = await askHere({ ...scenario, alternatives: [pair!, other] }, { seed: 'x', draws: 1 });
    expect(Array.from(rows.columns['runtimeMinutes']!)).toEqual([900, 720]);
  });
});
