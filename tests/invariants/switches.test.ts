/** Who is on when: shed is off, down is dark, 240 V needs both, and nobody throws a switch in their sleep. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitBooks } from '../../packages/sim/src/step/ledger.ts';
import { ASLEEP, ON, TRIPPED, type Run } from '../../packages/sim/src/step/run.ts';
import { everyMinute, REPEATABLE } from './every-minute.ts';
import { randomScenario } from './random-scenario.ts';

const RUNS = 60;

/** Units whose power the group has now, by the rules and nothing else. */
function feedersOf(run: Run, group: number): number[] {
  const { unit, is240V } = run.household.groups[group]!;
  const up = (u: number) => run.units[u]?.mode === ON;
  if (is240V) return up(0) && up(1) ? [0, 1] : [];
  if (up(unit)) return [unit];
  const { moved, asleepUnit } = run.control;
  const handedOver = moved && asleepUnit === unit && run.units[unit]!.mode === ASLEEP && up(1 - unit);
  return handedOver ? [1 - unit] : [];
}

describe('power', () => {
  it('reaches a group of circuits exactly when the strategy allows every one of them and its units are up', () => {
    let looked = 0;
    fc.assert(
      fc.property(randomScenario(), (scenario) => {
        everyMinute(scenario, (run, minute) => {
          if (run.changed) return; // to be put into effect as the next minute begins
          run.groups.forEach(({ on }, g) => {
            const allowed = run.household.groups[g]!.circuits.map((c) => run.control.allowed[c] === 1);
            if (new Set(allowed).size > 1)
              throw new Error(`minute ${minute}: a group that is allowed in part`);
            if (on !== (allowed[0] && feedersOf(run, g).length > 0))
              throw new Error(`minute ${minute}: group ${g} is ${on ? 'on' : 'off'}`);
            looked++;
          });
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(looked).toBeGreaterThan(100_000);
  });

  it('does not leave a unit that is down', () => {
    let loaded = 0;
    fc.assert(
      fc.property(
        randomScenario({ units: 2, rules: ['charge', 'clock', 'sun', 'ration', 'outage'] }),
        (scenario) => {
          let before: number[] = [];
          everyMinute(scenario, (run, minute) => {
            if (minute === 0) before = run.units.map(() => 0);
            run.units.forEach((unit, u) => {
              const load = unitBooks(run, u, 0).loadWh;
              const down = unit.mode !== ON && minute > 0;
              if (load > before[u]!) loaded++;
              if (load < before[u]!) throw new Error(`minute ${minute}: unit ${u} took load back`);
              // down throughout: it was down before this minute and did not come back in it
              if (down && unit.downSince < minute && unit.onSince < unit.downSince && load !== before[u]) {
                throw new Error(`minute ${minute}: unit ${u} is down and carries a load`);
              }
              before[u] = load;
            });
          });
        },
      ),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(loaded).toBeGreaterThan(10_000);
  });
});

describe('a person', () => {
  const byHand = randomScenario({ carriedOutBy: 'person' });

  it('changes what is allowed only while awake; the outage’s first moment counts as set beforehand', () => {
    let changes = 0;
    fc.assert(
      fc.property(byHand, (scenario) => {
        let before = '';
        everyMinute(scenario, (run, minute) => {
          const allowed = run.control.allowed.join('') + String(run.control.asleepUnit);
          const awake = run.plan.day.awake[run.draw.clock.localMinuteOfDay[minute]!] === 1;
          if (minute > 0 && allowed !== before) {
            if (!awake) throw new Error(`minute ${minute}: a switch is thrown asleep`);
            changes++;
          }
          before = allowed;
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(changes).toBeGreaterThan(100);
  });

  it('resets a unit only while awake', () => {
    let resets = 0;
    fc.assert(
      fc.property(byHand, (scenario) => {
        let before: { mode: number; byPerson: boolean }[] = [];
        everyMinute(scenario, (run, minute) => {
          const awake = run.plan.day.awake[run.draw.clock.localMinuteOfDay[minute]!] === 1;
          if (minute > 0) {
            run.units.forEach((unit, u) => {
              if (before[u]!.mode !== TRIPPED || !before[u]!.byPerson || unit.onSince !== minute) return;
              if (!awake) throw new Error(`minute ${minute}: unit ${u} is reset asleep`);
              resets++;
            });
          }
          before = run.units.map(({ mode, resetByPerson }) => ({ mode, byPerson: resetByPerson }));
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(resets).toBeGreaterThan(20);
  });
});

describe('a switch', () => {
  it('acts in any minute of the day', () => {
    const acted = new Set<number>();
    fc.assert(
      fc.property(randomScenario({ carriedOutBy: 'switch' }), (scenario) => {
        let before = '';
        everyMinute(scenario, (run, minute) => {
          const allowed = run.control.allowed.join('');
          if (minute > 0 && allowed !== before) acted.add(run.draw.clock.localMinuteOfDay[minute]!);
          before = allowed;
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    const asleepByDefault = [...acted].filter((m) => m < 390 || m >= 1350);
    expect(acted.size).toBeGreaterThan(100);
    expect(asleepByDefault.length).toBeGreaterThan(40);
  });

  it('has every charge rule in step with the bank it reads, at the end of every minute', () => {
    let looked = 0;
    fc.assert(
      fc.property(randomScenario({ carriedOutBy: 'switch', rules: ['charge'] }), (scenario) => {
        everyMinute(scenario, (run, minute) => {
          if (minute + 1 === run.draw.minutes) return;
          const charges = run.units.map(
            (_, u) => unitBooks(run, u, 0).storedEndWh / run.household.capacityWh[u]!,
          );
          run.plan.strategy.rules.forEach((rule, r) => {
            if (rule.by !== 'charge') return;
            const charge = rule.reads < 0 ? Math.min(...charges) : charges[rule.reads]!;
            const allows = run.control.ruleAllows[r] === 1;
            const late = allows ? charge < rule.dropBelow - 1e-12 : charge > rule.restoreAbove + 1e-12;
            if (late)
              throw new Error(
                `minute ${minute}: the rule ${allows ? 'still allows' : 'still forbids'} at ${charge}`,
              );
            looked++;
          });
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(looked).toBeGreaterThan(50_000);
  });
});
