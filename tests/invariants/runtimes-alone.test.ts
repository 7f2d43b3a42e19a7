/** Asked only how long a run lasts, it is left early, and the answer is that of the whole run. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy, RUNTIME_COLUMNS, runShard } from '../../packages/sim/src/index.ts';
import { liveToEnd } from '../../packages/sim/src/step/live-to-end.ts';
import { REPEATABLE, SEED, startRuns } from './every-minute.ts';
import { randomScenario } from './random-scenario.ts';

const RUNS = 150;
const DRAWS = 2;

describe('a study that is asked for runtimes alone', () => {
  it('gives the same bits as whole outcomes do', () => {
    let ended = 0;
    fc.assert(
      fc.property(fc.oneof(randomScenario(), randomScenario({ sources: true })), (scenario) => {
        const whole = runShard(prepareStudy(scenario, { seed: SEED }), 0, DRAWS);
        const alone = runShard(prepareStudy(scenario, { seed: SEED, rows: 'runtimes' }), 0, DRAWS);
        expect(Object.keys(alone.columns)).toEqual([...RUNTIME_COLUMNS]);
        for (const name of RUNTIME_COLUMNS)
          expect([name, alone.columns[name]]).toStrictEqual([name, whole.columns[name]]);
        ended += whole.columns['censored']!.filter((censored) => censored === 0).length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(ended).toBeGreaterThan(RUNS);
  });

  it('is left within a day of its end', () => {
    let left = 0;
    fc.assert(
      fc.property(randomScenario({ horizonHours: [72, 240] }), (scenario) => {
        for (const run of startRuns(scenario).runs) {
          liveToEnd(run);
          if (run.end.minute === Infinity) {
            expect(run.minute).toBe(run.draw.minutes);
            continue;
          }
          expect(run.minute - run.end.minute).toBeLessThan(1440);
          if (run.minute < run.draw.minutes) left++;
        }
      }),
      { ...REPEATABLE, numRuns: 40 },
    );
    expect(left).toBeGreaterThan(20);
  });
});
