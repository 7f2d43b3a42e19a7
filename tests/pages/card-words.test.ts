/** What the card by the panel says, line by line; card-by-the-panel.test.ts has the page. */
import { describe, expect, it } from 'vitest';
import {
  bridgeCautions,
  GENERATOR_CAUTION,
  VEHICLE_CAUTION,
  type HouseholdSpec,
  type Scenario,
} from '@rideout/sim';
import { cutOffs } from '../../packages/notebooks/src/charts/cold-cut-off.ts';
import { sourceLines } from '../../packages/notebooks/src/page/card-sources.ts';
import { cardPlan } from '../../packages/notebooks/src/page/card-steps.ts';
import {
  afterTripSteps,
  coldestOutdoorsC,
  cutOffWords,
  emptyWords,
  whoWords,
} from '../../packages/notebooks/src/page/card-words.ts';
import { CAUTIONS, cautionsFor } from '../../packages/notebooks/src/page/cautions.ts';
import { drawableFraction, floorFraction } from '../../packages/sim/src/power/cold.ts';
import { energyBackHouse, fullHouse, smallHouse } from './houses.ts';

const small = smallHouse();
const full = fullHouse();
const energyBack = energyBackHouse();
type Strategy = HouseholdSpec['strategies'][number];

const householdOf = (scenario: Scenario) => scenario.alternatives[0]!.household;
const strategyOf = (scenario: Scenario, id: string) =>
  householdOf(scenario).strategies.find((s) => s.id === id)!;
const titles = (household: HouseholdSpec, ...ids: string[]) =>
  ids.map((id) => household.circuits.find((c) => c.id === id)!.title!);

/** So that names stand alone; breakers have a test of their own. */
function withoutBreakers(household: HouseholdSpec): HouseholdSpec {
  const circuits = household.circuits.map((circuit) => {
    const bare = { ...circuit };
    delete bare.breakerA;
    return bare;
  });
  return { ...household, circuits };
}

describe('cardPlan(household, strategy)', () => {
  const house = withoutBreakers(householdOf(full));

  it('lists circuits by leg in the order in which they go, and what never goes', () => {
    const { steps, staysOn, rules } = cardPlan(house, strategyOf(full, 'tiers-by-hand'));
    const thresholds = steps.map(({ when, backOn }) =>
      [when, backOn].map((text) => Number(/\d+/.exec(text)![0])),
    );
    expect(thresholds.map(([off]) => off)).toEqual(thresholds.map(([off]) => off!).sort((a, b) => b - a));
    for (const [off, on] of thresholds) expect(on).toBeGreaterThan(off!);
    expect(steps[0]!.off.L1).toEqual(titles(house, 'dishwasher'));
    expect(steps.at(-1)!.off.both).toEqual(titles(house, 'well'));
    expect(staysOn.L1).toEqual(titles(house, 'fridge', 'night-light'));
    expect(rules).toEqual([]);
    const told = [...steps.map((s) => s.off), staysOn].flatMap(({ L1, L2, both }) => [...L1, ...L2, ...both]);
    expect(new Set(told)).toEqual(new Set(house.circuits.map((c) => c.title)));
    expect(told).toHaveLength(house.circuits.length);
  });

  it('puts what is off from the first moment first, once, and not until the grid is back', () => {
    const { steps } = cardPlan(house, strategyOf(full, 'frugal'));
    expect(steps[0]).toMatchObject({ when: 'At once', backOn: '' });
    expect(steps[0]!.off.L2).toContain(titles(house, 'bathroom')[0]);
    for (const step of steps.slice(1)) expect(step.off.L2).not.toContain(titles(house, 'bathroom')[0]);
  });

  it('says clock windows, ration, sun and a sleeping unit in plain words', () => {
    const frugal = cardPlan(house, strategyOf(full, 'frugal')).rules.join('\n');
    expect(frugal).toContain('Well pump (240 V) on only from 07:00 to 08:00 and from 18:00 to 19:00');
    expect(frugal).toContain(
      'Chest freezer (L1) on for the first 20 minutes, off for the rest. Overnight leave it on.',
    );
    expect(frugal).toContain('on only while all panels together give 600 W or more');
    const sleeping = (rule: object) =>
      cardPlan(house, { id: 's', title: 's', carriedOutBy: 'person', rules: [rule] } as unknown as Strategy);
    const atNight = sleeping({ by: 'sleep', unit: 'west', during: ['22:30-06:30'], circuits: 'moved' });
    expect(atNight.rules[0]).toContain(
      'unit “west” (L2) sleeps from 22:30 to 06:30. Its L2 circuits move to the other unit, by listed transfer equipment only; 240 V is off meanwhile.',
    );
    expect(atNight.staysOn.both).toEqual([]);
    const low = sleeping({
      by: 'sleep',
      unit: 'west',
      sleepBelowFraction: 0.4,
      wakeAboveFraction: 0.6,
      circuits: 'dropped',
    });
    expect(low.rules[0]).toMatch(
      /while its battery is below 40.%, until it is above 60.%\. Its L2 circuits are off/,
    );
    expect(low.staysOn.L2).toEqual([]);
  });

  it('gives a breaker’s amperes where the file does, and the leg whose reading counts', () => {
    const circuits = house.circuits.map((c) => (c.id === 'well' ? { ...c, breakerA: 20 } : c));
    const own = {
      by: 'charge',
      circuits: { ids: ['well'] },
      dropBelowFraction: 0.3,
      restoreAboveFraction: 0.5,
      reads: 'own',
    };
    const { steps } = cardPlan({ ...house, circuits }, { rules: [own] } as unknown as Strategy);
    expect(steps).toEqual([
      {
        when: 'Below 30\u00a0% (own leg)',
        off: { L1: [], L2: [], both: ['Well pump [20\u00a0A]'] },
        backOn: 'above 50\u00a0%',
      },
    ]);
  });
});

describe('sourceLines(household, strategy)', () => {
  const versionOf = (id: string) => energyBack.alternatives.find((a) => a.id === id)!.household;
  const withGenerator = versionOf('generator');
  const generator = withGenerator.sources!.generator!;
  const told = (household: HouseholdSpec, strategy = household.strategies[0]!, clock: 12 | 24 = 24) =>
    Object.fromEntries(
      sourceLines(household, strategy, clock).map(({ what, how }) => [what, how.replaceAll('\u00a0', ' ')]),
    );
  const toldOf = (changes: Partial<typeof generator>, strategy?: Strategy) =>
    told({ ...withGenerator, sources: { generator: { ...generator, ...changes } } }, strategy);

  it('says nothing of a household without any', () => {
    expect(told(householdOf(full))).toEqual({});
    expect(told(versionOf('two-modules'))).toEqual({});
  });

  it('says when a generator is started and stopped, how it is refilled, and that its exhaust kills', () => {
    const lines = told(withGenerator, undefined, 12);
    expect(lines['Start the generator']).toBe(
      'When the lower of the two batteries’ readings is below 40 %, never in the quiet hours from 10:00 pm to 7:00 am.',
    );
    expect(lines['Stop it']).toBe(
      'When both batteries have reached 90 %; whatever the reading when the quiet hours begin and at bedtime.',
    );
    expect(lines['Refill it']).toMatch(
      /20 L in the tank.*40 L in cans.*switch it off, let it cool down, fill it outdoors, away from openings.*allow 20 minutes/,
    );
    expect(Object.keys(lines)[0]).toBe('Before the generator runs');
    expect(lines['Before the generator runs']).toBe(GENERATOR_CAUTION);
    expect(lines['What it carries']).toMatch(/up to 3500 W on each leg/);
  });

  it('goes by the strategy’s own rule for the generator where it has one', () => {
    const strategy = (run: object) =>
      ({ ...withGenerator.strategies[0]!, generator: run }) as unknown as Strategy;
    expect(toldOf({}, strategy({ by: 'never' }))).toEqual({
      Generator: 'Leave it off: this strategy does not run it.',
    });
    expect(
      toldOf({}, strategy({ by: 'hours', hoursPerDay: 3, during: ['17:00-21:00'] }))['Run the generator'],
    ).toBe(
      'The first 3 hours of every day in which it may run, only from 17:00 to 21:00, never in the quiet hours from 22:00 to 07:00. Off at bedtime, and while you are asleep.',
    );
    const bounded = { by: 'charge', startBelowFraction: 0.2, stopAboveFraction: 0.5, mostHoursPerDay: 4 };
    const lines = toldOf({}, strategy(bounded));
    expect(lines['Start the generator']).toContain('below 20 %');
    expect(lines['Stop it']).toMatch(/reached 50 %; .*at bedtime and after 4 hours in a day/);
  });

  it('knows a generator that starts by itself, one that feeds one unit, and one that makes no 240 V', () => {
    const byItself = toldOf({ starts: 'automatic' });
    expect(byItself['The generator starts by itself']).toMatch(
      /below 40 %.*Look now and then whether it has/,
    );
    expect(byItself['It stops by itself']).not.toContain('bedtime');
    const one = toldOf({ feeds: ['west'] });
    expect(one['Start the generator']).toContain('the reading of unit “west” (L2) is below 40 %');
    expect(one['What it carries']).toContain('No 240 V while it runs: nothing for Well pump.');
    expect(toldOf({ volts: 120 })['What it carries']).toMatch(/up to 7000 W in all.*No 240 V while it runs/);
    expect(toldOf({})['What it carries']).not.toContain('No 240 V');
    expect(toldOf({ passesThrough: false })['What it carries']).toContain('It only charges');
  });

  it('says what to do in hours of grid, and what to stop before', () => {
    const lines = told(versionOf('rolling'));
    expect(lines['Grid back for a while']).toMatch(
      /about 4 hours of it after about 20 hours without\. Switch everything on again, one circuit at a time.*Both batteries charge.*anew by the readings/,
    );
    const all = {
      ...versionOf('rolling').sources,
      ...withGenerator.sources,
      ...versionOf('vehicle').sources,
    };
    const together = told({ ...withGenerator, sources: all });
    expect(together['Grid back for a while']).toContain('First stop the generator and unplug the car.');
    expect(together['Plug in the car']).toContain(
      'Not while the grid is back or the generator feeds that unit.',
    );
  });

  it('says when the car is plugged in, and which panels are carried out when', () => {
    const car = told(versionOf('vehicle'))['Plug in the car']!;
    expect(car).toContain(
      'From 08:00 to 20:00, the first 6 hours of that each day, to charge unit “west” (L2) with 300 W.',
    );
    expect(car).toContain(VEHICLE_CAUTION);
    const panels = told(versionOf('portable'))['Carry panels out']!;
    expect(panels).toMatch(
      /^400 W for unit “west” \(L2\): out from 08:30 to 16:30, facing south, tilted 60°\. Then in again\./,
    );
    expect(panels).toContain('live in any light');
  });
});

describe('the card’s other sentences', () => {
  it('say who does it: a person at their hours, or a switch to keep an eye on', () => {
    expect(whoWords(householdOf(full), strategyOf(full, 'tiers-by-hand'))).toMatch(
      /awake 06:30 to 22:30: every hour read the lower of the two/,
    );
    expect(whoWords(householdOf(full), strategyOf(full, 'tiers-by-switch'))).toMatch(
      /^An automatic switch does this/,
    );
    expect(whoWords(householdOf(small), strategyOf(small, 'tiers'))).toContain('read the battery’s reading');
  });

  it('say by which reading: the lower one, or each leg by its own unit’s where the line says so', () => {
    const who = (reads: readonly ('own' | 'lowest')[]) =>
      whoWords(householdOf(full), {
        id: 's',
        title: 's',
        carriedOutBy: 'person',
        rules: reads.map((of) => ({
          by: 'charge',
          circuits: { tiers: [3] },
          dropBelowFraction: 0.3,
          restoreAboveFraction: 0.5,
          reads: of,
        })),
      });
    expect(who(['lowest'])).not.toContain('own leg');
    expect(who(['own', 'lowest'])).toMatch(
      /by the lower of the two; where the line says “own leg”, each leg by its own unit’s reading/,
    );
    expect(who(['own'])).toContain('read both batteries’ readings, each leg by its own unit’s reading');
    expect(who(['own'])).not.toContain('lower of the two');
  });

  it('say that an empty battery wants no reset, and of a pair that stops together what stops it', () => {
    const house = householdOf(full);
    expect(emptyWords(house)).toMatch(
      /^Do not reset that unit: .*comes back by itself.*leave off what you can/,
    );
    expect(emptyWords(householdOf(small))).toMatch(/^Do not reset it/);
    expect(emptyWords(house)).not.toContain('together');
    expect(emptyWords({ ...house, pair: { ...house.pair, stopsTogether: true } })).toContain(
      'The two stop together',
    );
  });

  it('say what to do after a trip: the least essential off, the reset, the wait', () => {
    const stepsOf = (scenario: Scenario, id: string, household = householdOf(scenario)) =>
      afterTripSteps(household, cardPlan(household, strategyOf(scenario, id)));
    const steps = stepsOf(full, 'tiers-by-hand');
    expect(steps[0]).toMatch(
      /^Switch off the next .*of the list .*still on, on the leg of the unit that stopped and on 240.V\./,
    );
    expect(steps.join(' ')).toMatch(/Reset the unit.*Wait an hour.*one at a time/);
    expect(stepsOf(small, 'tiers')[0]).toMatch(/starts again by itself after 5 minutes, up to 3 times/);
  });

  it('name circuits leg by leg after a trip where no list goes by the reading, less those that are off', () => {
    const house = withoutBreakers(householdOf(full));
    const steps = (rules: object[]) =>
      afterTripSteps(house, cardPlan(house, { rules } as unknown as Strategy))[0]!;
    expect(steps([])).toMatch(/On the leg of the unit that stopped.*L1: Dishwasher.*\. L2: Bathroom sockets/);
    const dishwasherOff = steps([{ by: 'outage', circuits: { ids: ['dishwasher'] } }]);
    expect(dishwasherOff).not.toContain('Dishwasher');
    expect(dishwasherOff).toContain('L2: Bathroom sockets');
  });

  it('say at which reading a unit stops itself: sooner in the cold, by the curve the simulator goes by', () => {
    const look = { temperature: 'C' } as const;
    const [east] = householdOf(full).units;
    expect(cutOffWords(householdOf(full), 30, look)).toMatch(
      /^Each unit stops itself at 10.% and comes back at 20.%\.$/,
    );
    expect(cutOffWords(householdOf(full), -2, look)).toMatch(
      /10.% and comes back at 20.% while its modules are warm \(25.°C\).*at 0.°C at 24.%, back at 34.%; .*at −10.°C at 33.%, back at 43.%\.$/,
    );
    for (const { moduleC, stopsFraction } of cutOffs(east!.battery, -40)) {
      const drawable = drawableFraction(east!.battery.coldCapacity, moduleC);
      expect(stopsFraction).toBeCloseTo(floorFraction(east!.battery.cutOffFraction, drawable), 12);
    }
    const january = { ...full, outage: { ...full.outage, months: [1] } };
    expect(coldestOutdoorsC(january)).toBeLessThan(
      coldestOutdoorsC({ ...full, outage: { ...full.outage, months: [7] } }),
    );
  });
});

describe('cautionsFor(household, beside)', () => {
  const house = householdOf(full);

  it('warns of a bridge as it concerns the household, and of exhaust once', () => {
    expect(cautionsFor(house, [])).toEqual(CAUTIONS);
    const bridged = { ...house, units: [{ ...house.units[0]!, leg: 'both' as const }] };
    expect(cautionsFor(bridged, [])).toEqual(expect.arrayContaining(bridgeCautions(bridged)));
    expect(cautionsFor(bridged, [])).toHaveLength(CAUTIONS.length - 1 + bridgeCautions(bridged).length);
    expect(cautionsFor(house, [GENERATOR_CAUTION])).toHaveLength(CAUTIONS.length - 1);
  });
});
