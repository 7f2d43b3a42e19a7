import { describe, expect, it } from 'vitest';
import { generatorRun } from '../../../packages/sim/src/scenario/schema-sources.ts';
import { scenarioSchema } from '../../../packages/sim/src/scenario/schema.ts';
import { planGenerator, wantsGenerator } from '../../../packages/sim/src/shedding/generator-plan.ts';

const person = scenarioSchema.shape.person.parse({ awake: '06:30-22:30', looksEveryMinutes: 60 });
const at = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
const plan = (run: object, starts: 'hand' | 'automatic' = 'hand', quietHours?: string[]) =>
  planGenerator(generatorRun.parse(run), { starts, quietHours }, person)!;
const hours = (allowed: Uint8Array) => allowed.reduce((a, b) => a + b, 0) / 60;

describe('when a generator may run', () => {
  it('by hand: while somebody is awake, but for the last minute of the day, in which it is switched off', () => {
    const { allowed } = plan({ by: 'charge' });
    expect(hours(allowed)).toBeCloseTo(16 - 1 / 60, 9);
    expect([allowed[at('06:29')], allowed[at('06:30')], allowed[at('22:28')], allowed[at('22:29')]]).toEqual([
      0, 1, 1, 0,
    ]);
  });

  it('by itself: at any hour outside the quiet ones and inside its windows', () => {
    expect(hours(plan({ by: 'charge' }, 'automatic').allowed)).toBe(24);
    expect(hours(plan({ by: 'charge' }, 'automatic', ['21:00-08:00']).allowed)).toBe(13);
    expect(
      hours(
        plan({ by: 'hours', hoursPerDay: 2, during: ['07:00-10:00'] }, 'automatic', ['21:00-08:00']).allowed,
      ),
    ).toBe(2);
  });

  it('never, where the strategy says so', () => {
    expect(planGenerator({ by: 'never' }, { starts: 'hand' }, person)).toBeUndefined();
  });
});

describe('when it is thought of', () => {
  it('by hand and charge: on waking, at every look, and when a window opens or closes', () => {
    const { nextThought } = plan({ by: 'charge', during: ['09:45-12:00'] });
    expect(nextThought[at('06:30')]).toBe(60);
    expect(nextThought[at('09:30')]).toBe(15);
    expect(nextThought[at('11:30')]).toBe(30);
  });

  it('by itself: only when a window opens or closes, and at midnight; the charge it sees all the time', () => {
    const { nextThought } = plan({ by: 'charge' }, 'automatic', ['22:00-06:00']);
    expect(nextThought[at('06:00')]).toBe(16 * 60);
    expect(nextThought[at('22:00')]).toBe(120);
  });
});

describe('whether it is wanted', () => {
  it('hangs on the charge with hysteresis', () => {
    const p = plan({ by: 'charge', startBelowFraction: 0.3, stopAboveFraction: 0.8 });
    expect(wantsGenerator(p, false, 0.31)).toBe(false);
    expect(wantsGenerator(p, false, 0.29)).toBe(true);
    expect(wantsGenerator(p, true, 0.79)).toBe(true);
    expect(wantsGenerator(p, true, 0.8)).toBe(false);
  });

  it('is always so when it runs by hours', () => {
    const p = plan({ by: 'hours', hoursPerDay: 3 });
    expect([wantsGenerator(p, false, 1), wantsGenerator(p, true, 1)]).toEqual([true, true]);
    expect(p.mostMinutesPerDay).toBe(180);
  });
});
