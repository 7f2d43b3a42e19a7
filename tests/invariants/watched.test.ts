/** What a watcher is shown of a run is what stopping after every minute would show. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { watchRun } from '../../packages/sim/src/advice/needs/watch-run.ts';
import { advance } from '../../packages/sim/src/step/advance.ts';
import { groupOnMinutes } from '../../packages/sim/src/step/ledger.ts';
import type { Run } from '../../packages/sim/src/step/run.ts';
import { runMinutes, signedC, wantedMinutes } from '../../packages/sim/src/step/step-thermostat.ts';
import { REPEATABLE, startRuns } from './every-minute.ts';
import { randomScenario } from './random-scenario.ts';

const RUNS = 60;

/** Per minute: of each circuit the minutes with power so far, of each thermostat those run and wanted, and its °C. */
function stopping(run: Run, minutes: number): number[][] {
  return Array.from({ length: minutes }, (_, m) => {
    advance(run, m + 1);
    return [
      ...run.household.circuits.map(({ group }) => groupOnMinutes(run, group)),
      ...run.thermostatStates.flatMap((state, i) => {
        const place = run.draw.thermostatPlaces[i]!;
        const { sign } = run.draw.usage.thermostats[i]!;
        return [
          runMinutes(place, state, m + 1),
          wantedMinutes(place, state, m + 1),
          sign * signedC(place, state, m + 1),
        ];
      }),
    ];
  });
}

/** The same from what a watcher is shown, its shares added up. */
function watching(run: Run, minutes: number): number[][] {
  const shown: number[][] = [];
  const circuits = run.household.circuits.map(() => 0);
  const ran = run.thermostatStates.map(() => 0);
  const wanted = run.thermostatStates.map(() => 0);
  watchRun(run, minutes, (sight) => {
    expect(sight.minute).toBe(shown.length);
    for (let m = 0; m < sight.count; m++) {
      circuits.forEach((_, c) => (circuits[c]! += sight.poweredShare(c)));
      ran.forEach((_, i) => (ran[i]! += sight.ranShares(i)[m]!));
      wanted.forEach((_, i) => (wanted[i]! += sight.wantedShares(i)[m]!));
      shown.push([...circuits, ...ran.flatMap((so, i) => [so, wanted[i]!, sight.temperaturesC(i)[m]!])]);
    }
  });
  return shown;
}

function furthestApart(shown: number[][], expected: number[][]): number {
  let most = 0;
  shown.forEach((values, m) =>
    values.forEach((value, k) => {
      const apart = Math.abs(value - expected[m]![k]!);
      if (!(apart <= most)) most = apart; // what is no number is the furthest
    }),
  );
  return most;
}

/** The power of one of so many circuits came or went inside a minute: its sum is not whole. */
function isInParts(values: number[], circuits: number): boolean {
  return values.slice(0, circuits).some((sum) => Math.abs(sum - Math.round(sum)) > 1e-6);
}

describe('a run that is watched', () => {
  it('shows in every minute what stopping after it shows, and ends alike', () => {
    let runsInParts = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          randomScenario({ horizonHours: [2, 60] }),
          randomScenario({ horizonHours: [2, 60], sources: true }),
        ),
        (scenario) => {
          const stopped = startRuns(scenario);
          const { minutes } = stopped.study;
          const expected = stopped.runs.map((run) => stopping(run, minutes));
          startRuns(scenario).runs.forEach((run, s) => {
            const shown = watching(run, minutes);
            expect(shown.length).toBe(minutes);
            expect(furthestApart(shown, expected[s]!)).toBeLessThan(1e-7);
            expect(run.units.map(({ state }) => state)).toStrictEqual(
              stopped.runs[s]!.units.map(({ state }) => state),
            );
            if (isInParts(shown.at(-1)!, run.household.circuits.length)) runsInParts++;
          });
        },
      ),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(runsInParts).toBeGreaterThan(10);
  });
});
