/** What the search may touch, and how its answer is told. */
import { describe, expect, it } from 'vitest';
import { askHere } from '../../../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../../../packages/sim/src/index.ts';
import { findLegs } from '../../../../packages/sim/src/advice/legs/find-legs.ts';
import { legLoad, withinLimits } from '../../../../packages/sim/src/advice/legs/leg-limits.ts';
import { legsTable } from '../../../../packages/sim/src/advice/legs/legs-table.ts';
import { nameplateOf } from '../../../../packages/sim/src/advice/legs/nameplate.ts';
import { panelOf } from '../../../../packages/sim/src/advice/legs/panel.ts';
import type { TinyHouse } from '../../step/tiny-house.ts';
import { darkSpec, scenarioOf } from '../read-written.ts';

const QUESTION = { seed: 'legs', choosingDraws: 2, draws: 3 };
const PAIR: NonNullable<TinyHouse['units']> = [{}, {}];
const LOADS = {
  a: { watts: 300 },
  b: { watts: 200 },
  c: { watts: 100 },
  pump: { watts: 0, leg: 'both' as const },
};

function specOf(changes: Partial<TinyHouse> = {}): ScenarioSpec {
  return darkSpec({ units: PAIR, circuits: LOADS, hours: 48, ...changes });
}

function withCircuit(spec: ScenarioSpec, id: string, more: object): ScenarioSpec {
  return { ...spec, circuits: spec.circuits.map((c) => (c.id === id ? { ...c, ...more } : c)) };
}

describe('the best legs', () => {
  it('of 300, 200 and 100 W are 300 against 300, told as a gain of ten hours with no trips', async () => {
    const answer = await findLegs(scenarioOf(specOf()), QUESTION, askHere);
    expect(24 * answer.present.days.value!).toBeCloseTo(10, 9);
    expect(24 * answer.best.days.value!).toBeCloseTo(20, 9);
    expect(24 * answer.gainDays.value!).toBeCloseTo(10, 9);
    expect(answer.told).toBe('clear');
    expect(answer.moves).toEqual([{ id: 'a', title: 'a', from: 'L1', to: 'L2' }]);
    expect(answer.gainTrips.value).toBe(0);
    expect(answer.provenance).toMatchObject({ seed: 'legs', choosingDraws: QUESTION.choosingDraws });
    expect(answer.freshSeed).toBe('legs/fresh');
  });

  it('leave fixed circuits where they are, and circuits that share a neutral', async () => {
    const fixed = withCircuit(specOf(), 'a', { legFixed: true });
    expect(panelOf(scenarioOf(fixed).alternatives[0]!.household).movable).toEqual([1, 2]);
    const { legs } = await findLegs(scenarioOf(fixed), QUESTION, askHere);
    expect(legs[0]!.circuits.find((c) => c.id === 'a')).toMatchObject({ kept: 'fixed', moved: false });
    const paired = withCircuit(withCircuit(specOf(), 'b', { leg: 'L2' }), 'a', { sharedNeutralWith: 'b' });
    expect(panelOf(scenarioOf(paired).alternatives[0]!.household).movable).toEqual([2]);
  });

  it('are written as a panel schedule: breakers, watts, 240 V on both', async () => {
    const spec = withCircuit(specOf(), 'b', { breakerA: 15, title: 'Bedroom' });
    const answer = await findLegs(scenarioOf(spec), QUESTION, askHere);
    expect(answer.legs.map((leg) => [leg.leg, leg.unitId, leg.nameplateW, leg.continuousW])).toEqual([
      ['L1', 'east', 300, 50_000],
      ['L2', 'west', 300, 50_000],
    ]);
    expect(answer.across.map((c) => [c.id, c.kept])).toEqual([['pump', '240 V']]);
    const table = legsTable(answer);
    expect(table.array('circuit')).toEqual(['b', 'c', 'a', 'pump']);
    expect(table.array('leg')).toEqual(['L1', 'L1', 'L2', 'both']);
    expect(table.array('breakerA')).toEqual([15, null, null, null]);
  });

  it('stay as they are when nothing better is found', async () => {
    const spec = withCircuit(specOf(), 'a', { leg: 'L2' });
    const answer = await findLegs(scenarioOf(spec), QUESTION, askHere);
    expect(answer.moves).toEqual([]);
    expect(answer.told).toBe('not told from zero');
    expect(answer.gainDays.value).toBe(0);
  });

  it('are those of the strategy that lasts longest, unless another is asked for', async () => {
    const spec = specOf({ circuits: { ...LOADS, a: { watts: 300, tier: 5 } } });
    const two: ScenarioSpec = {
      ...spec,
      strategies: [
        { id: 'all', title: 'All' },
        { id: 'less', title: 'Less', rules: [{ by: 'outage', circuits: { tiers: [5] } }] },
      ],
    };
    expect((await findLegs(scenarioOf(two), QUESTION, askHere)).strategyId).toBe('less');
    expect((await findLegs(scenarioOf(two), { ...QUESTION, strategy: 0 }, askHere)).strategyId).toBe('all');
  });

  it('repeat to the last bit', async () => {
    const once = await findLegs(scenarioOf(specOf()), QUESTION, askHere);
    expect(await findLegs(scenarioOf(specOf()), QUESTION, askHere)).toEqual(once);
  });

  it('are no question for one unit, nor where nothing may move', async () => {
    const one = specOf({ units: [{}], circuits: { a: { watts: 300 } } });
    await expect(findLegs(scenarioOf(one), QUESTION, askHere)).rejects.toThrow('one unit feeds whatever');
    const spec = specOf();
    const stuck = { ...spec, circuits: spec.circuits.map((c) => ({ ...c, legFixed: true })) };
    await expect(findLegs(scenarioOf(stuck), QUESTION, askHere)).rejects.toThrow('no circuit may change');
  });
});

describe('nameplates', () => {
  it('count what runs by itself apart from what somebody switches on', () => {
    const spec = specOf({
      circuits: {
        a: {
          appliances: [
            { kind: 'steady', runningW: 40, count: 2 },
            { kind: 'duty-cycled', runningW: 120, startingW: 700, onMinutes: 15, dutyFraction: 0.4 },
            { kind: 'events', runningW: 1500, startingW: 1600, usesPerDay: 4, minutesPerUse: 3 },
          ],
        },
      },
    });
    const { circuits } = scenarioOf(spec).alternatives[0]!.household;
    expect(nameplateOf(circuits[0]!)).toEqual({ allW: 1700, unattendedW: 200, startExtraW: 580 });
    expect(legLoad(circuits, 'L1')).toEqual({ leg: 'L1', allW: 1700, unattendedW: 200, startExtraW: 580 });
    expect(legLoad(circuits, 'L2').allW).toBe(0);
  });

  it('keep assignments out that ask more of a leg than unit and breaker carry for hours', () => {
    const inverter = { continuousW: 450, surgeW: 900 };
    const units = [{ inverter }, { inverter }];
    const panel = panelOf(
      scenarioOf(withCircuit(specOf({ units }), 'a', { leg: 'L2' })).alternatives[0]!.household,
    );
    const allowed = withinLimits(panel);
    expect(allowed('211')).toBe(true); // 300 and 300 W, as now
    expect(allowed('221')).toBe(false); // 500 W on L2
    const spec = specOf();
    const onBreaker = spec.units.map((unit) => ({ ...unit, wiring: { breakerA: 5 } }));
    const behind = panelOf(
      scenarioOf(withCircuit({ ...spec, units: onBreaker }, 'a', { leg: 'L2' })).alternatives[0]!.household,
    );
    expect(withinLimits(behind)('112')).toBe(false); // 500 W; 80 % of 5 A at 120 V are 480 W
    expect(withinLimits(behind)('121')).toBe(true);
  });

  it('allow as much as is asked now, for want of anything better', () => {
    const inverter = { continuousW: 250, surgeW: 900 };
    const panel = panelOf(
      scenarioOf(specOf({ units: [{ inverter }, { inverter }] })).alternatives[0]!.household,
    );
    expect(withinLimits(panel)(panel.present)).toBe(true);
  });
});
