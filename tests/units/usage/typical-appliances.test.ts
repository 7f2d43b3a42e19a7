import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTypicalAppliances } from '../../../packages/sim/src/usage/typical-appliances.ts';
import { circuitOf, drawOf, wattHours } from './household-under-test.ts';

const shipped = readFileSync(new URL('../../../data/appliances.csv', import.meta.url), 'utf8');

describe('readTypicalAppliances', () => {
  it('reads the shipped table: at least 35 appliances, each of which can be drawn', () => {
    const table = readTypicalAppliances(shipped);
    expect(table.size).toBeGreaterThanOrEqual(35);
    for (const [id, written] of table) {
      expect(id).toMatch(/^[a-z][a-z0-9-]{0,39}$/);
      const draw = drawOf([circuitOf('x', written)], { days: 5 });
      expect(wattHours(draw) > 0 || draw.thermostats.length === 1).toBe(true);
    }
  });

  it('holds only keys that may be written in a scenario, so that overrides can stand beside them', () => {
    const refrigerator = readTypicalAppliances(shipped).get('refrigerator');
    expect(Object.keys(refrigerator ?? {})).not.toContain('source');
    expect(() => circuitOf('x', { ...refrigerator, setC: 2, count: 2 })).not.toThrow();
  });

  it('reads lists and quoted cells', () => {
    const table = readTypicalAppliances(
      'id,title,kind,runningW,windows\npump,"Pump, pool",scheduled,600,08:00-10:00 20:00-21:00',
    );
    expect(table.get('pump')).toEqual({
      title: 'Pump, pool',
      kind: 'scheduled',
      runningW: 600,
      windows: ['08:00-10:00', '20:00-21:00'],
    });
  });

  it('names every row that cannot be', () => {
    const text =
      'id,kind,runningW,startingW,usesPerDay,minutesPerUse\na,events,-5,,1,1\nb,steady,ten,,,\nc,events,50,10,1,1\nc,steady,5,,,';
    expect(() => readTypicalAppliances(text, 'mine.csv')).toThrowErrorMatchingInlineSnapshot(`
      [Error: mine.csv holds appliances that cannot be:
        row "a": runningW: Too small: expected number to be >0
        row "b": runningW: Invalid input: expected number, received NaN
        row "c": its startingW (10 W) is below its runningW (50 W): give the whole draw of a start, not what it adds
        row "c" is there twice]
    `);
  });
});
