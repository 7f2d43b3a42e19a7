/** The card by the panel: what it says, and that it is one side of paper. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { HouseholdSpec, Scenario } from '@rideout/sim';
import { cardPlan } from '../../packages/notebooks/src/page/card-steps.ts';
import {
  afterTripSteps,
  coldestOutdoorsC,
  cutOffWords,
  whoWords,
} from '../../packages/notebooks/src/page/card-words.ts';
import { cutOffs } from '../../packages/notebooks/src/charts/cold-cut-off.ts';
import { drawableFraction, floorFraction } from '../../packages/sim/src/power/cold.ts';
import { noBrowser } from './browser.ts';
import { fullHouse, smallHouse } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const small = smallHouse();
const full = fullHouse();
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

describe.skipIf(noBrowser())('the page "The card by the panel"', () => {
  const bench = pageBench();
  const files: Record<string, PublishedFile> = {};

  beforeAll(async () => {
    files['small'] = await published('card-by-the-panel', { scenario: small });
    files['full'] = await published('card-by-the-panel', { scenario: full });
  }, 60_000);

  const opened = async (house: 'small' | 'full', hash = '', options = {}) => {
    const open = await bench.open(files[house]!, { hash, ...options });
    await open.page.locator('.card[data-type-pt]').waitFor();
    return open;
  };

  for (const [house, scenario] of [
    ['small', small],
    ['full', full],
  ] as const) {
    it(`prints as exactly one side of Letter and of A4, for every strategy (${house} house)`, async () => {
      let printed = 0;
      for (const strategy of householdOf(scenario).strategies) {
        const { page, troubles } = await opened(house, `#strategies=${strategy.id}`);
        expect(await page.locator('.card h2').innerText()).toContain(strategy.title);
        expect(Number(await page.locator('.card').getAttribute('data-type-pt'))).toBeGreaterThanOrEqual(10);
        for (const format of ['Letter', 'A4'] as const) {
          const pdf = (await page.pdf({ format })).toString('latin1');
          expect(pdf.match(/\/Type\s*\/Page\b/g), `${strategy.id}, ${format}`).toHaveLength(1);
          printed++;
        }
        expect(troubles).toEqual([]);
        await page.close();
      }
      expect(printed).toBe(householdOf(scenario).strategies.length * 2);
    }, 60_000);
  }

  it('prints the card in black on white and nothing else, whatever the screen is like', async () => {
    const { page } = await opened('full', '', { colorScheme: 'dark' });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const { ink, paper } = await page.locator('.card').evaluate((card) => {
      const { color, backgroundColor } = getComputedStyle(card);
      return { ink: color, paper: backgroundColor };
    });
    expect([ink, paper]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    for (const hidden of ['h1', 'select', 'button'])
      expect(await page.locator(hidden).first().isVisible()).toBe(false);
    const all = await page.locator('body').innerText();
    expect(all.trim().startsWith('Power is out')).toBe(true);
  });

  it('changes with the strategy chosen and keeps the choice in the link', async () => {
    const { page } = await opened('full');
    await page.getByLabel('Strategy on the card').selectOption({ label: 'Frugal from the first hour' });
    await expect.poll(() => page.locator('.card h2').innerText()).toContain('Frugal');
    expect(page.url()).toContain('strategies=frugal');
    const odd = await opened('full', '#strategies=nonsense');
    expect(await odd.page.locator('.trouble').innerText()).toContain('strategies = “nonsense”');
    const unused = await opened('full', '#draws=50&modules=3');
    expect(await unused.page.locator('.trouble p').allInnerTexts()).toEqual([
      'The link says modules = “3”, draws = “50”: this page has no such setting, and they are left aside.',
    ]);
  });

  it('writes its hours as asked, on screen and on paper, and keeps that in the link', async () => {
    const { page } = await opened('full', '#strategies=frugal', { locale: 'en-GB' });
    expect(await page.locator('.card').innerText()).toContain('from 18:00 to 19:00');
    await page.getByLabel('Clock').selectOption({ label: '12 hours (6:30 pm)' });
    await expect.poll(() => page.locator('.card').innerText()).toContain('from 6:00\u00a0pm to 7:00\u00a0pm');
    expect(page.url()).toContain('clock=12');
    const linked = await opened('full', new URL(page.url()).hash, { locale: 'en-GB' });
    await linked.page.emulateMedia({ media: 'print' });
    expect(await linked.page.locator('.card-who').innerText()).toMatch(/awake 6:30\sam to 10:30\spm/);
  });

  it('says when a household is too much for one readable side', async () => {
    const house = householdOf(full);
    const long = house.circuits.map((c) => ({ ...c, title: `${c.title} ${'and much besides '.repeat(6)}` }));
    const circuits = [...long, ...long.map((c) => ({ ...c, id: `${c.id}-b` }))];
    const scenario = {
      ...full,
      alternatives: [{ ...full.alternatives[0]!, household: { ...house, circuits } }],
    };
    const { page } = await bench.open(await published('card-by-the-panel', { scenario }));
    await page.locator('.trouble').waitFor();
    expect(await page.locator('.trouble').innerText()).toMatch(
      /too long for one readable side.*print on both sides/s,
    );
  });

  it('carries the cautions and where it comes from', async () => {
    const { page, requests } = await opened('small');
    const text = (await page.locator('.card').innerText()).toLowerCase();
    for (const word of [
      'licensed electrician',
      'transfer equipment',
      'interlock',
      'backfeed',
      'outdoors',
      'life-supporting',
      'local code',
    ])
      expect(text).toContain(word);
    expect(text).toMatch(/scenario [0-9a-f]{12}, rideout \d/);
    expect(requests).toEqual([]);
  });

  it('shows hostile names as text', async () => {
    const bad = '</script><script>globalThis.harm = 1</script><img src=x onerror="globalThis.harm = 2">';
    const house = householdOf(small);
    const named = {
      ...house,
      circuits: house.circuits.map((c) => ({ ...c, title: bad })),
      strategies: house.strategies.map((s) => ({ ...s, title: bad })),
    };
    const file = await published('card-by-the-panel', {
      scenario: {
        ...small,
        title: bad,
        alternatives: [{ ...small.alternatives[0]!, title: bad, household: named }],
      },
    });
    const { page, troubles } = await bench.open(file);
    await page.locator('.card').waitFor();
    expect(await page.locator('.card').innerText()).toContain('<img src=x');
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(troubles).toEqual([]);
  });

  for (const [screen, viewport] of [
    ['phone', { width: 320, height: 700 }],
    ['desktop', { width: 1280, height: 900 }],
  ] as const)
    it(`has nothing an accessibility check objects to, and fits the screen (${screen})`, async () => {
      for (const colorScheme of ['light', 'dark'] as const) {
        const { page } = await opened('full', '#strategies=frugal', { viewport, colorScheme });
        expect((await accessibility(page)).objections).toEqual([]);
        expect(await widthTaken(page)).toBeLessThanOrEqual(viewport.width);
      }
    });
});
