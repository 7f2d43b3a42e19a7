/** A draw depends on nothing but the scenario, the seed and its number. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinRows, prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import type { OutcomeRows, Scenario, ScenarioSpec } from '../../packages/sim/src/index.ts';
import { traceDraw } from '../../packages/sim/src/trials/trace-draw.ts';
import { REPEATABLE, SEED, startRuns } from './every-minute.ts';
import { randomSpec, resolve } from './random-scenario.ts';

const RUNS = 25;
const study = (scenario: Scenario) => prepareStudy(scenario, { seed: SEED });
const short = { horizonHours: [2, 30] as const };

/** Columns of the rows that `keep` keeps, without the positions that an added strategy or alternative moves. */
function columnsWhere(rows: OutcomeRows, keep: (row: number) => boolean): Record<string, number[]> {
  const kept = Array.from({ length: rows.length }, (_, row) => row).filter(keep);
  const columns = Object.entries(rows.columns).filter(
    ([name]) => name !== 'strategy' && name !== 'alternative',
  );
  return Object.fromEntries(columns.map(([name, values]) => [name, kept.map((row) => values[row]!)]));
}

describe('a draw', () => {
  it('is the same in any shard, whichever ran before, in a fresh study or a used one', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        randomSpec(short),
        fc.shuffledSubarray([0, 1, 2], { minLength: 3, maxLength: 3 }),
        (spec, order) => {
          const scenario = resolve(spec);
          const whole = runShard(study(scenario), 0, 6);
          const used = study(scenario);
          const shards: OutcomeRows[] = [];
          for (const k of order) shards[k] = runShard(used, [0, 2, 5][k]!, [2, 5, 6][k]!);
          expect(joinRows(shards)).toStrictEqual(whole);
          expect(
            joinRows([
              runShard(study(scenario), 0, 2),
              runShard(study(scenario), 2, 5),
              runShard(study(scenario), 5, 6),
            ]),
          ).toStrictEqual(whole);
          compared += whole.length;
        },
      ),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThanOrEqual(6 * RUNS);
  });

  it('is not disturbed by traces written in between', () => {
    fc.assert(
      fc.property(randomSpec(short), (spec) => {
        const used = study(resolve(spec));
        const before = runShard(used, 3, 5);
        const trace = traceDraw(used, { draw: 9, alternative: 0, strategy: 0 });
        expect(runShard(used, 3, 5)).toStrictEqual(before);
        expect(traceDraw(used, { draw: 9, alternative: 0, strategy: 0 })).toStrictEqual(trace);
      }),
      { ...REPEATABLE, numRuns: 10 },
    );
  });

  it('has another seed’s or another draw’s numbers nowhere', () => {
    const scenario = resolve(
      fc.sample(randomSpec({ horizonHours: [24, 24], units: 2 }), { ...REPEATABLE, numRuns: 1 })[0]!,
    );
    const traces = [0, 1].map((draw) => traceDraw(study(scenario), { draw, alternative: 0, strategy: 0 }));
    const other = traceDraw(prepareStudy(scenario, { seed: `${SEED}!` }), {
      draw: 0,
      alternative: 0,
      strategy: 0,
    });
    expect(traces[0]!.dryBulbC).not.toStrictEqual(traces[1]!.dryBulbC);
    expect(traces[0]!.dryBulbC).not.toStrictEqual(other.dryBulbC);
  });

  it('gives a strategy the same rows whatever other strategies are tried beside it', () => {
    let compared = 0;
    fc.assert(
      fc.property(randomSpec(short), randomSpec({ units: 1 }), (spec, other) => {
        const added = { ...other.strategies[0]!, id: 'added', rules: rulesThatFit(other, spec) };
        const alone = runShard(study(resolve(spec)), 0, 3);
        const together = runShard(study(resolve({ ...spec, strategies: [...spec.strategies, added] })), 0, 3);
        const own = columnsWhere(
          together,
          (row) => together.columns['strategy']![row]! < spec.strategies.length,
        );
        expectSame(
          own,
          columnsWhere(alone, () => true),
        );
        compared += alone.length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThanOrEqual(3 * RUNS);
  });

  it('gives an alternative the same rows whatever other alternatives are tried beside it', () => {
    let compared = 0;
    fc.assert(
      fc.property(randomSpec(short), (spec) => {
        const alone = runShard(study(resolve(spec)), 0, 3);
        const alternatives = [
          { id: 'as-is', title: 'As it is' },
          {
            id: 'more',
            title: 'More',
            change: { 'units.*.battery.modules': 4, 'person.looksEveryMinutes': 11 },
          },
          {
            id: 'busier',
            title: 'Busier',
            change: {
              'circuits.*.appliances.0': { kind: 'events', runningW: 300, usesPerDay: 9, minutesPerUse: 12 },
            },
          },
        ];
        const together = runShard(study(resolve({ ...spec, alternatives })), 0, 3);
        const first = columnsWhere(together, (row) => together.columns['alternative']![row] === 0);
        expectSame(
          first,
          columnsWhere(alone, () => true),
        );
        compared += alone.length;
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThanOrEqual(3 * RUNS);
  });

  it('gives a circuit the same wants whatever else is plugged in elsewhere', () => {
    let compared = 0;
    fc.assert(
      fc.property(randomSpec(short), (spec) => {
        const added = {
          id: 'added',
          leg: 'L1' as const,
          tier: 3,
          appliances: [
            { kind: 'events' as const, runningW: 700, usesPerDay: 20, minutesPerUse: 7 },
            { kind: 'duty-cycled' as const, runningW: 90, onMinutes: 9, dutyFraction: 0.4 },
            { kind: 'lights' as const, runningW: 30, darkBelowElevationDeg: -4 },
          ],
        };
        const [plain, fuller] = [spec, { ...spec, circuits: [added, ...spec.circuits] }].map(
          (s) => startRuns(resolve(s), 4).runs[0]!.draw.usage,
        );
        spec.circuits.forEach((_, c) => {
          expect(fuller!.circuits[c + 1]!.demandW).toStrictEqual(plain!.circuits[c]!.demandW);
          expect(fuller!.circuits[c + 1]!.startExtraW).toStrictEqual(plain!.circuits[c]!.startExtraW);
          compared++;
        });
        const withoutCircuit = (want: { circuitIndex: number }, shift: number) => ({
          ...want,
          circuitIndex: want.circuitIndex + shift,
        });
        expect(fuller!.thermostats.map((t) => withoutCircuit(t, 0))).toStrictEqual(
          plain!.thermostats.map((t) => withoutCircuit(t, 1)),
        );
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(RUNS);
  });
});

/** Rules of another household, as far as they make sense here: for all circuits instead of its own. */
function rulesThatFit(
  other: ScenarioSpec,
  spec: ScenarioSpec,
): NonNullable<ScenarioSpec['strategies'][number]['rules']> {
  const circuits = { ids: [spec.circuits[0]!.id] };
  return (other.strategies[0]!.rules ?? []).flatMap((rule) =>
    rule.by === 'sleep' ? [] : [{ ...rule, circuits }],
  );
}

/** Bit for bit; but for energies, whose sums are taken in another order when circuits are grouped otherwise. */
function expectSame(actual: Record<string, number[]>, expected: Record<string, number[]>): void {
  expect(Object.keys(actual)).toEqual(expect.arrayContaining(Object.keys(expected)));
  for (const [name, values] of Object.entries(expected)) {
    if (!name.endsWith('Wh')) expect(actual[name], name).toStrictEqual(values);
    else
      values.forEach((wh, i) =>
        expect(Math.abs(actual[name]![i]! - wh), name).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(wh))),
      );
  }
}
