/** The search and its bound against every assignment tried one by one. */
import { beforeAll, describe, expect, it } from 'vitest';
import { askHere } from '../../../../packages/sim/src/index.ts';
import type { Scenario } from '../../../../packages/sim/src/index.ts';
import { findLegs } from '../../../../packages/sim/src/advice/legs/find-legs.ts';
import { liveToTheirEnds } from '../../../../packages/sim/src/advice/legs/try-sides.ts';
import { planBound } from '../../../../packages/sim/src/advice/legs/leg-bound.ts';
import { alwaysOn, pooledHousehold } from '../../../../packages/sim/src/advice/legs/bare-household.ts';
import { panelOf, type Panel, type Sides } from '../../../../packages/sim/src/advice/legs/panel.ts';
import { tinySpec, type TinyUnit } from '../../step/tiny-house.ts';
import { scenarioOf } from '../read-written.ts';
import { DROPPING, everyRuntime, nineInTenDays, sunnyPanel } from './small-panels.ts';

const DRAWS = 20;
const SEED = 'brute';
const QUESTION = { seed: SEED, choosingDraws: DRAWS, draws: DRAWS };

const trippy = { continuousW: 1200, surgeW: 2000, idleW: 15, lossPerW: 0.03 };
const PANELS: readonly (readonly [string, Scenario])[] = [
  ['everything on', sunnyPanel()],
  ['tiers dropped by a switch', sunnyPanel({ rules: DROPPING })],
  [
    'tiers dropped by hand',
    sunnyPanel({ rules: DROPPING, carriedOutBy: 'person', person: { awake: '07:00-22:00' }, hours: 144 }),
  ],
  ['a bank twice the other', sunnyPanel({ units: [{ capacityWh: 4000 }, { capacityWh: 2000 }] })],
  [
    'units that trip',
    sunnyPanel({
      units: [
        { capacityWh: 2500, inverter: trippy },
        { capacityWh: 2500, inverter: trippy },
      ],
    }),
  ],
  ['one stop stopping both', sunnyPanel({ pair: { stopsTogether: true } })],
];

describe.each(PANELS)('a panel of six circuits, %s', (_, scenario) => {
  const { horizonDays } = scenario.outage;
  let panel: Panel;
  let runtimes: Map<Sides, number[]>;
  let best: number;
  beforeAll(async () => {
    ({ panel, runtimes } = await everyRuntime(scenario, SEED, DRAWS));
    const days = [...runtimes.values()].map(nineInTenDays);
    best = Math.max(...days);
    // Something to find: assignments differ, and the horizon hides none.
    expect(best).toBeLessThan(horizonDays);
    expect(best).toBeGreaterThan(1.2 * Math.min(...days));
  });

  it('gets the very best of its 64 assignments when every one is simulated', async () => {
    const { search, moves } = await findLegs(scenario, QUESTION, askHere);
    expect(search).toMatchObject({ how: 'every one simulated', assignments: 64, movableCircuits: 6 });
    expect(search.bestDays ?? horizonDays).toBeCloseTo(best, 9);
    expect(moves.length).toBeLessThanOrEqual(6);
  });

  it('is searched by guesses to within a tenth of the very best, and never past the bound', async () => {
    const { search, bound } = await findLegs(
      scenario,
      { ...QUESTION, everyOneUpTo: 0, bestGuesses: 6 },
      askHere,
    );
    expect(search.how).toBe('best guesses of all');
    expect(search.simulated).toBeLessThan(64);
    expect(search.bestDays ?? horizonDays).toBeGreaterThan(0.9 * best);
    expect(search.bestDays ?? horizonDays).toBeLessThanOrEqual(best + 1e-9);
    expect(bound!.days ?? horizonDays).toBeGreaterThanOrEqual(best - 1e-9);
    expect(bound!.drawsBeyond).toBe(0);
  });

  it('has no assignment that outlasts its bare household, or both banks as one, in any draw', async () => {
    const plan = planBound(panel)!;
    expect(plan.kind).toBe('placings');
    const question = { seed: SEED, draws: DRAWS };
    const bare = await liveToTheirEnds(scenario, plan.households, question, askHere);
    const [pooled] = await liveToTheirEnds(scenario, [pooledHousehold(panel)], question, askHere);
    let compared = 0;
    for (const [sides, minutes] of runtimes) {
      const most = bare[plan.classOf(sides)]!.times;
      minutes.forEach((minute, d) => {
        expect(minute).toBeLessThanOrEqual(most[d]! + 1e-6);
        expect(minute).toBeLessThanOrEqual(pooled!.times[d]! + 1e-6);
        compared++;
      });
    }
    expect(compared).toBe(64 * DRAWS);
  });
});

describe('the bound', () => {
  it('counts both banks as one where a strategy moves circuits to the other unit', async () => {
    const rules = [
      { by: 'sleep' as const, unit: 'west', during: ['23:00-05:00'], circuits: 'moved' as const },
    ];
    const scenario = sunnyPanel({ rules });
    const { runtimes } = await everyRuntime(scenario, SEED, DRAWS);
    const { bound } = await findLegs(scenario, { ...QUESTION, everyOneUpTo: 0, bestGuesses: 6 }, askHere);
    expect(bound!.kind).toBe('pooled');
    const best = Math.max(...[...runtimes.values()].map(nineInTenDays));
    expect(bound!.days ?? scenario.outage.horizonDays).toBeGreaterThanOrEqual(best - 1e-9);
    expect(bound!.drawsBeyond).toBe(0);
  });

  const leg = (battery: object): TinyUnit => ({ capacityWh: 3000, battery });
  const sunAtNoon = (_: number, minute: number) => (minute % 1440 > 600 && minute % 1440 < 900 ? 1500 : 0);

  it.each([
    ['outdoors', 'indoors'],
    ['indoors', 'outdoors'],
  ] as const)(
    'charges as the warmer of two banks does, whichever is written first (%s, %s)',
    (first, second) => {
      const house = tinySpec({
        units: [leg({ place: first, minChargeC: 0 }), leg({ place: second, minChargeC: 0 })],
        circuits: { fridge: { watts: 60 } },
        solarW: sunAtNoon,
      });
      const panel = panelOf(scenarioOf(house).alternatives[0]!.household);
      const [pooled] = pooledHousehold(panel).units;
      expect(pooled!.battery.minChargeC).toBeLessThan(-60);
      const alike = panelOf(
        scenarioOf({ ...house, units: house.units.map((u) => ({ ...u, battery: house.units[0]!.battery })) })
          .alternatives[0]!.household,
      );
      expect(pooledHousehold(alike).units[0]!.battery).toMatchObject({ place: first, minChargeC: 0 });
    },
  );

  it('leaves out what a unit put to sleep takes with it', () => {
    const kept = (circuits: 'dropped' | 'moved') => {
      const rules = [{ by: 'sleep' as const, unit: 'west', during: ['23:00-05:00'], circuits }];
      const { household } = sunnyPanel({
        rules,
        circuits: { fridge: { watts: 60 }, well: { watts: 90, leg: 'both' }, talk: { watts: 25, leg: 'L2' } },
      }).alternatives[0]!;
      return alwaysOn(household).map((c) => household.circuits[c]!.id);
    };
    expect(kept('dropped')).toEqual([]);
    expect(kept('moved')).toEqual(['fridge', 'talk']);
  });

  it('is not told where the strategy can switch everything off', async () => {
    const rules = [{ ...DROPPING[0]!, circuits: { tiers: [1, 2, 3, 4] } }];
    const answer = await findLegs(
      sunnyPanel({ rules }),
      { ...QUESTION, draws: 2, choosingDraws: 2 },
      askHere,
    );
    expect(answer.bound).toBeNull();
  });
});
