/** One 120 V unit on both legs: said wherever it is, of versions and of ladders, sharper where a neutral is shared. */
import { describe, expect, it } from 'vitest';
import {
  BRIDGE_CAUTION,
  bridgeCautions,
  scenarioBridgeCautions,
} from '../../../packages/sim/src/advice/bridge-caution.ts';
import { householdCautions, scenarioCautions } from '../../../packages/sim/src/advice/engine-caution.ts';
import type { Scenario } from '../../../packages/sim/src/index.ts';
import { fullHouse } from '../../pages/houses.ts';

const scenario = fullHouse();
const [first, second] = scenario.alternatives[0]!.household.units;
const { household } = scenario.alternatives[0]!;
/** Its kitchen sockets and its dishwasher share a neutral. */
const sharing = { ...household, units: [{ ...first!, leg: 'both' as const }] };
const apart = household.circuits.map((c) => ({ ...c, sharedNeutralWith: undefined }));
const bridged = { ...sharing, circuits: apart };
const without = (changed: Partial<Scenario>): Scenario => ({ ...scenario, ladder: undefined, ...changed });
const versionOf = (of: typeof household) => [{ ...scenario.alternatives[0]!, household: of }];

describe('bridgeCautions(household)', () => {
  it('is silent where each unit has a leg of its own, and where one unit feeds one', () => {
    expect(bridgeCautions(household)).toEqual([]);
    expect(bridgeCautions({ ...household, units: [second!] })).toEqual([]);
  });

  it('warns of a shared neutral where one unit feeds both, by name where one is known', () => {
    expect(bridgeCautions(bridged)).toEqual([BRIDGE_CAUTION]);
    expect(BRIDGE_CAUTION).toMatch(/neutral.*licensed electrician.*local code decides/);
    const [sharp, usual] = bridgeCautions(sharing);
    expect(sharp).toMatch(/^Kitchen sockets and Dishwasher share a neutral: .*never have them on at once/);
    expect(usual).toBe(BRIDGE_CAUTION);
  });
});

describe('all that must be said', () => {
  it('holds it for a household, and for any version of a scenario, once', () => {
    expect(householdCautions(bridged)).toEqual([BRIDGE_CAUTION]);
    const twice = without({ alternatives: [...versionOf(bridged), ...versionOf(bridged)] });
    expect(scenarioCautions(twice)).toEqual([BRIDGE_CAUTION]);
    expect(scenarioCautions(without({}))).toEqual([]);
  });

  it('holds it for a ladder that begins with one unit on both legs, or comes to it', () => {
    expect(scenarioBridgeCautions(scenario)).toEqual(bridgeCautions(sharing)); // its start: units.east.leg both
    const ladder = { ...scenario.ladder!, household: { ...household, circuits: apart } };
    const pair = { ...ladder, without: [], startMoves: [] };
    expect(scenarioBridgeCautions({ ...scenario, ladder: pair })).toEqual([]);
    const join = { ...pair.steps[0]!, moves: [{ set: 'units.east.leg', value: 'both' }] };
    expect(scenarioBridgeCautions({ ...scenario, ladder: { ...pair, steps: [join] } })).toEqual([
      BRIDGE_CAUTION,
    ]);
  });
});
