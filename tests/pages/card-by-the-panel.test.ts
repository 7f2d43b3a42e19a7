/** The card by the panel as a page: what it shows, and that it is one side of paper. */
import { beforeAll, describe, expect, it } from 'vitest';
import { GENERATOR_CAUTION, type Scenario } from '@rideout/sim';
import { noBrowser } from './browser.ts';
import { energyBackHouse, fullHouse, smallHouse } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const small = smallHouse();
const full = fullHouse();
const energyBack = energyBackHouse();

const householdOf = (scenario: Scenario) => scenario.alternatives[0]!.household;

describe.skipIf(noBrowser())('the page "The card by the panel"', () => {
  const bench = pageBench();
  const files: Record<string, PublishedFile> = {};

  beforeAll(async () => {
    files['small'] = await published('card-by-the-panel', { scenario: small });
    files['full'] = await published('card-by-the-panel', { scenario: full });
    files['energyBack'] = await published('card-by-the-panel', { scenario: energyBack });
  }, 60_000);

  const opened = async (house: 'small' | 'full' | 'energyBack', hash = '', options = {}) => {
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

  it('prints as one side with whatever brings energy back, and keeps to a phone', async () => {
    for (const { id } of energyBack.alternatives) {
      const { page } = await opened('energyBack', `#strategies=frugal&household=${id}`, {
        viewport: { width: 320, height: 700 },
      });
      expect(await widthTaken(page)).toBeLessThanOrEqual(320);
      expect(Number(await page.locator('.card').getAttribute('data-type-pt'))).toBeGreaterThanOrEqual(8.5);
      const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g), id).toHaveLength(1);
      await page.close();
    }
  }, 60_000);

  it('tells an empty battery from a trip, and of the generator’s exhaust once and in full', async () => {
    const { page } = await opened('energyBack', '#household=generator');
    const stopped = await page.locator('.card-stopped').innerText();
    expect(stopped).toMatch(
      /its battery is empty\..*Do not reset.*Well above that, it has tripped:.*Reset the unit/s,
    );
    const text = await page.locator('.card').innerText();
    expect(text).toContain(GENERATOR_CAUTION);
    expect(text.match(/Exhaust kills|it kills within/g)).toHaveLength(1);
    const without = await opened('energyBack', '#household=two-modules');
    expect(await without.page.locator('.card-sources').count()).toBe(0);
    expect(await without.page.locator('.card').innerText()).toContain('Exhaust kills within minutes');
  });

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
      'bridged to both legs',
      'limits of temperature and current',
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
