/** Stopping a run anywhere and going on changes no bit. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { advance } from '../../packages/sim/src/step/advance.ts';
import { writeOutcome } from '../../packages/sim/src/step/outcome.ts';
import { now, type Run } from '../../packages/sim/src/step/run.ts';
import {
  isRunning,
  runMinutes,
  signedC,
  wantedMinutes,
} from '../../packages/sim/src/step/step-thermostat.ts';
import { REPEATABLE, startRuns } from './every-minute.ts';
import { randomScenario } from './random-scenario.ts';

const RUNS = 80;

/** Everything a run has come to, the outcome row included. */
function ending(run: Run): Record<string, unknown> {
  const row: Record<string, number> = {};
  const stored = run.units.map(({ state, mode, cause, resetAt, downMinutes }) => ({
    state: { ...state },
    mode,
    cause,
    resetAt,
    downMinutes,
  }));
  writeOutcome(run, (column, value) => (row[column] = value));
  const thermostats = run.thermostatStates.map((state, i) => {
    const place = run.draw.thermostatPlaces[i]!;
    const { waitBefore, gracePassedAt, beyondMinutes, beyondFirst, waitedTooLongMinutes } = state;
    return {
      ran: runMinutes(place, state, now(run)),
      wanted: wantedMinutes(place, state, now(run)),
      signedC: signedC(place, state, now(run)),
      running: isRunning(state),
      ...{ waitBefore, gracePassedAt, beyondMinutes, beyondFirst, waitedTooLongMinutes },
    };
  });
  const { generator, feeds } = run.sources ?? {};
  const sources = {
    sums: feeds?.map(({ sums }) => Array.from(sums)),
    generator: generator && { ...generator, compiled: undefined, plan: undefined },
  };
  return { row, stored, sources, control: run.control, thermostats };
}

describe('a run that is stopped and goes on', () => {
  it('ends in the same bits as one in a single go, wherever it was stopped', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.oneof(randomScenario(), randomScenario({ sources: true })),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (scenario, shares) => {
          const inOneGo = startRuns(scenario);
          const { minutes } = inOneGo.study;
          const stops = shares.map((share) => Math.floor(share * minutes)).sort((a, b) => a - b);
          const endings = inOneGo.runs.map((run) => {
            advance(run, minutes);
            return ending(run);
          });
          startRuns(scenario).runs.forEach((run, s) => {
            for (const stop of stops) advance(run, stop);
            advance(run, minutes);
            expect(ending(run)).toStrictEqual(endings[s]);
            compared++;
          });
        },
      ),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThanOrEqual(RUNS);
  });

  it('ends in the same bits when it is stopped after every single minute', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          randomScenario({ horizonHours: [2, 40] }),
          randomScenario({ horizonHours: [2, 40], sources: true }),
        ),
        (scenario) => {
          const inOneGo = startRuns(scenario);
          const { minutes } = inOneGo.study;
          const endings = inOneGo.runs.map((run) => {
            advance(run, minutes);
            return ending(run);
          });
          startRuns(scenario).runs.forEach((run, s) => {
            for (let m = 1; m <= minutes; m++) advance(run, m);
            expect(ending(run)).toStrictEqual(endings[s]);
            compared++;
          });
        },
      ),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThanOrEqual(RUNS);
  });
});
