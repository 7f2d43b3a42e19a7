/** Looking further ahead does not change what comes first. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy } from '../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../packages/sim/src/index.ts';
import { traceDraw, type DrawTrace } from '../../packages/sim/src/trials/trace-draw.ts';
import { REPEATABLE, SEED } from './every-minute.ts';
import { randomSpec, resolve } from './random-scenario.ts';

function traceOf(spec: ScenarioSpec): DrawTrace {
  return traceDraw(prepareStudy(resolve(spec), { seed: SEED }), { draw: 3, alternative: 0, strategy: 0 });
}

/** Every column of the trace, cut to its first minutes. */
function firstMinutes(trace: DrawTrace, minutes: number): Record<string, unknown[]> {
  const cut = (values: ArrayLike<unknown>) => Array.from({ length: minutes }, (_, m) => values[m]);
  const columns: Record<string, unknown[]> = {
    ghi: cut(trace.ghiWm2),
    dryBulb: cut(trace.dryBulbC),
    local: cut(trace.localMinuteOfDay),
    neutral: cut(trace.neutralA),
  };
  for (const { id, ...unit } of trace.units)
    for (const [name, values] of Object.entries(unit)) columns[`${id}.${name}`] = cut(values);
  for (const { id, temperatureC, ...rest } of trace.circuits) {
    for (const [name, values] of Object.entries(rest)) columns[`${id}.${name}`] = cut(values);
    if (temperatureC !== undefined) columns[`${id}.temperatureC`] = cut(temperatureC);
  }
  return columns;
}

describe('a longer horizon', () => {
  it('leaves every column of the minutes before as it is, bit for bit', () => {
    let minutes = 0;
    fc.assert(
      fc.property(
        fc.oneof(randomSpec({ horizonHours: [1, 40] }), randomSpec({ horizonHours: [1, 40], sources: true })),
        fc.integer({ min: 1, max: 5 * 1440 }),
        (spec, more) => {
          const trace = traceOf(spec);
          const longer = {
            ...spec,
            outage: { ...spec.outage, horizonDays: spec.outage.horizonDays! + more / 1440 },
          };
          const before = firstMinutes(trace, trace.minutes);
          const after = firstMinutes(traceOf(longer), trace.minutes);
          for (const [name, values] of Object.entries(before)) {
            // what is done as the next minute begins is not seen at the horizon's last
            const seen = /mode|allowed/.test(name) ? trace.minutes - 1 : trace.minutes;
            const differs = values.findIndex((value, m) => m < seen && !Object.is(value, after[name]![m]));
            if (differs >= 0)
              throw new Error(
                `${name} at minute ${differs} of ${trace.minutes}: ${String(values[differs])}, then ${String(after[name]![differs])}`,
              );
          }
          minutes += trace.minutes;
        },
      ),
      { ...REPEATABLE, numRuns: 40 },
    );
    expect(minutes).toBeGreaterThan(20_000);
  });
});
