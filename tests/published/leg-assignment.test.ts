/**
 * Which circuit on which leg, held to number partitioning: with steady loads, equal banks and no sun a household lasts
 * longest when its legs are most alike.
 */
import { describe, expect, it } from 'vitest';
import { askHere } from '../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../packages/sim/src/index.ts';
import { findLegs } from '../../packages/sim/src/advice/legs/find-legs.ts';
import { darkSpec, scenarioOf } from '../units/advice/read-written.ts';

const CAPACITY_WH = 6000;

/** Every load on L1 at first. */
function panelWith(hundredsOfWatts: readonly number[]): ScenarioSpec {
  const circuits = hundredsOfWatts.map((w, i) => [`load-${i + 1}`, { watts: 100 * w }] as const);
  return darkSpec({
    units: [{ capacityWh: CAPACITY_WH }, { capacityWh: CAPACITY_WH }],
    circuits: Object.fromEntries(circuits),
    hours: 24,
  });
}

const hours = (days: number | null) => 24 * days!;
const QUESTION = { seed: 'partition', choosingDraws: 1, draws: 2 };

describe('the best legs', () => {
  /**
   * Karmarkar & Karp 1982, The differencing method of set partitioning, as worked in Korf 1998, Artificial Intelligence
   * 106:181–203: of 4, 5, 6, 7, 8 the largest-first rule leaves the halves 4 apart, the differencing method 2, and the
   * best partition none (from memory; 4 + 5 + 6 = 7 + 8).
   */
  it.each([
    ['every assignment simulated', {}],
    ['best guesses of all', { everyOneUpTo: 0, bestGuesses: 3 }],
  ])('part 4, 5, 6, 7, 8 evenly: 15 and 15, by %s', async (how, options) => {
    const answer = await findLegs(
      scenarioOf(panelWith([4, 5, 6, 7, 8])),
      { ...QUESTION, ...options },
      askHere,
    );
    expect(answer.search.how.startsWith(how.slice(0, 10)) || how.startsWith('every')).toBe(true);
    expect(hours(answer.best.days.value)).toBeCloseTo(CAPACITY_WH / 1500, 9);
    expect(hours(answer.present.days.value)).toBeCloseTo(CAPACITY_WH / 3000, 9);
    expect(hours(answer.gainDays.value)).toBeCloseTo(2, 9);
    expect(answer.legs.map((leg) => leg.nameplateW).sort()).toEqual([1500, 1500]);
  });

  it('moves as few circuits as will do: of 4, 5, 6, 7, 8 the two largest', async () => {
    const answer = await findLegs(scenarioOf(panelWith([4, 5, 6, 7, 8])), QUESTION, askHere);
    expect(answer.moves.map((move) => move.id)).toEqual(['load-4', 'load-5']);
  });

  it('is bounded by itself where everything is always on', async () => {
    const options = { ...QUESTION, everyOneUpTo: 0, bestGuesses: 3 };
    const { bound, search } = await findLegs(scenarioOf(panelWith([4, 5, 6, 7, 8])), options, askHere);
    expect(hours(bound!.days)).toBeCloseTo(4, 9);
    expect(search.bestDays).toBe(bound!.days);
    expect(bound!.drawsBeyond).toBe(0);
    expect(bound!.ruledOutFraction).toBe(1);
  });
});
