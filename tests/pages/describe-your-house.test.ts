/** The page "Describe your house": the form, its checks, its answer, and the file it saves. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkScenario, readScenario, scenarioHash, type Scenario } from '@rideout/sim';
import { loadScenario, readDataFile } from '@rideout/sim/node';
import { houseText } from '../../packages/notebooks/src/page/house-file.ts';
import { withoutCircuit, withoutSecondUnit } from '../../packages/notebooks/src/page/house-removals.ts';
import { writtenHouse } from '../../packages/notebooks/src/page/house-from-scenario.ts';
import { houseTables } from '../../packages/notebooks/src/page/house-tables.ts';
import { noBrowser } from './browser.ts';
import { fileOf, fullHouse, smallHouse, studyInNode } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, savedFrom, settled, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const tables = houseTables(readDataFile('appliances.csv'), readDataFile('normals.csv'));
const small = smallHouse();
const full = fullHouse();
const MEASURED =
  'time,watts\n' + Array.from({ length: 24 }, (_, h) => `${h}:00,${h === 18 ? 900 : 40}\n`).join('');

describe.skipIf(noBrowser())('the page "Describe your house"', () => {
  const SEED = 'described';
  const DRAWS = 12;
  const folder = mkdtempSync(join(tmpdir(), 'rideout-describe-'));
  const bench = pageBench();
  /** With their answers: each is worked out anew when something changes. */
  const files: Record<string, PublishedFile> = {};

  beforeAll(async () => {
    for (const [house, scenario] of Object.entries({ small, full })) {
      const { summary } = studyInNode(scenario, { seed: SEED, draws: DRAWS });
      files[house] = await published('describe-your-house', { scenario, summary });
    }
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const opened = async (house: 'small' | 'full', options = {}) => {
    const open = await bench.open(files[house]!, options);
    await open.page.locator('#survival-curves').waitFor();
    return open;
  };
  const saved = async (page: Page, name = 'house.yaml', kind = 'YAML'): Promise<Scenario> => {
    const path = join(folder, name);
    writeFileSync(path, await savedFrom(page, 'main', `Save as ${kind}`));
    return loadScenario(path).scenario;
  };
  const provenance = (page: Page) => page.locator('#survival-curves .provenance').innerText();
  const rowsOf = (scenario: Scenario) => studyInNode(scenario, { seed: SEED, draws: DRAWS }).rows.columns;

  for (const [house, scenario] of [
    ['small', small],
    ['full', full],
  ] as const)
    it(`saves, untouched, a file that the command line reads as the same household: same rows for a seed (${house})`, async () => {
      const { page, requests, troubles } = await bench.open(
        await published('describe-your-house', { scenario, seed: SEED, draws: DRAWS }),
      );
      await settled(page);
      const rows = rowsOf(scenario);
      for (const kind of ['YAML', 'JSON']) {
        const again = await saved(page, `${house}.${kind.toLowerCase()}`, kind);
        expect(scenarioHash(again)).toBe(scenarioHash(scenario));
        expect(rowsOf(again)).toEqual(rows);
      }
      expect([...requests, ...troubles]).toEqual([]);
    }, 60_000);

  it('works the answer out anew when a field changes, and saves what it simulated', async () => {
    const { page } = await opened('small');
    const before = await provenance(page);
    await page.getByLabel('Battery modules').fill('3');
    await page.getByLabel('Name of the household').fill('Fern Street, thrice');
    await expect.poll(() => provenance(page), { timeout: 30_000 }).not.toBe(before);
    await settled(page);
    const scenario = await saved(page);
    expect(scenario.title).toBe('Fern Street, thrice');
    expect(scenario.alternatives[0]!.household.units[0]!.battery.modules).toBe(3);
    await expect
      .poll(() => provenance(page), { timeout: 30_000 })
      .toContain(scenarioHash(scenario).slice(0, 12));
    const best = studyInNode(scenario, { seed: SEED, draws: DRAWS }).summary.strategies[0]!;
    expect(await page.locator('#survival-curves').innerText()).toContain(best.strategyTitle);
  }, 60_000);

  it('offers to leave out a part of the file that it has no fields for, once that no longer fits', async () => {
    const { page } = await opened('full');
    await page.locator('details.house-set', { hasText: 'Everything stays on' }).locator('> summary').click();
    await page.getByRole('button', { name: 'Take this strategy away Everything stays on' }).click();
    const leave = page.getByRole('button', { name: 'Leave out the ladder' });
    await leave.waitFor();
    await leave.click();
    await expect.poll(() => leave.count()).toBe(0);
    expect(await page.locator('.trouble').allInnerTexts()).not.toContain('ladder');
  });

  it('tells what the checks find, each with what to do and its rule, and leads to the field', async () => {
    const { page, troubles } = await opened('full', { locale: 'en-GB' });
    const findings = page.locator('.house-findings');
    const report = checkScenario(full, { seed: SEED, draws: 8 }); // while the page does the same
    await findings.locator('.provenance').waitFor({ timeout: 60_000 });
    expect(report.findings.length).toBeGreaterThan(3);
    const said = (await findings.textContent())!.replace(/\s+/g, ' ');
    for (const { found, todo, rule } of report.findings)
      for (const part of [found, todo, rule.source]) expect(said).toContain(part.replace(/\s+/g, ' '));
    expect(said).toContain(report.caution.replace(/\s+/g, ' '));
    await findings
      .getByRole('button', { name: /^Go to it units\.(east|west)/ })
      .first()
      .click();
    expect(await page.evaluate(() => document.activeElement?.closest('.house-form') !== null)).toBe(true);
    expect(troubles).toEqual([]);
  }, 90_000);

  it('says at the field what is wrong, keeps the last answer, and goes on once it is mended', async () => {
    const { page } = await opened('small');
    const field = page.getByLabel('Continuous');
    const answer = await page.locator('.house-answer .answer').innerText();
    await field.fill('9000');
    const fault = page.locator('.house-fault');
    await fault.first().waitFor();
    expect(await fault.first().innerText()).toMatch(/Found 6000; expected at least “Continuous, W”, 9000/);
    await field.fill('-5');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    const describedBy = (await field.getAttribute('aria-describedby'))!;
    expect(await page.locator(`[id="${describedBy}"]`).innerText()).toMatch(/Found -5; expected/);
    expect(await page.locator('.house-held').innerText()).toContain('one thing is to be mended');
    expect(await page.locator('.house-answer .answer').innerText()).toBe(answer);
    await page.locator('.trouble li button').click();
    expect(await field.evaluate((input) => input === document.activeElement)).toBe(true);
    await field.fill('3000');
    await expect.poll(() => page.locator('.house-fault').count()).toBe(0);
    expect(await page.locator('.house-held').innerText()).toBe('');
  });

  it('builds up a household: circuit from the table, second unit, ready-made strategy, another household', async () => {
    const { page } = await opened('small');
    await page.getByLabel('A new circuit with').selectOption({ label: 'Ceiling fan' });
    await page.getByRole('button', { name: 'Add a circuit' }).click();
    await page.getByRole('button', { name: 'Add a second unit' }).click();
    await page.getByLabel('A new circuit with').selectOption('well-pump-half-hp');
    await page.getByRole('button', { name: 'Add a circuit' }).click();
    await page.getByLabel('A ready-made strategy').selectOption('One unit sleeps at night');
    await page.getByRole('button', { name: 'Add this strategy' }).click();
    await page.getByLabel('Also with').selectOption('4');
    await page.getByRole('button', { name: 'Compare with this too' }).click();
    await expect.poll(() => page.locator('.trouble').count()).toBe(0);
    const scenario = await saved(page, 'built.yaml');
    const { household } = scenario.alternatives[0]!;
    expect(household.circuits.at(-2)).toMatchObject({ id: 'ceiling-fan', leg: 'L1', tier: 3 });
    expect(household.circuits.at(-1)).toMatchObject({ title: 'Well pump', leg: 'both' });
    expect(household.units.map((unit) => unit.leg)).toEqual(['L1', 'L2']);
    expect(household.strategies.at(-1)!.rules[0]).toMatchObject({ by: 'sleep', unit: 'second' });
    expect(scenario.alternatives.at(-1)!.household.units.map((u) => u.battery.modules)).toEqual([4, 4]);
    await settled(page);
  }, 60_000);

  it('leads the keyboard to what was added, and to what stands next when something is taken away', async () => {
    const { page } = await opened('small');
    const focused = () => page.evaluate(() => document.activeElement?.id ?? '');
    const press = async (name: string | RegExp) => {
      await page.getByRole('button', { name }).first().focus();
      await page.keyboard.press('Enter');
      return focused();
    };
    const circuits = small.alternatives[0]!.household.circuits.length;
    const strategies = small.alternatives[0]!.household.strategies.length;
    expect(await press('Add a circuit')).toBe(`house-circuits-${circuits}-title`);
    expect(await press('Add this strategy')).toBe(`house-strategies-${strategies}-title`);
    expect(await press('Compare with this too')).toBe('house-alternatives-2-title');
    expect(await press('Take away Two modules')).toBe('house-alternatives-1-title');
    expect(await press('Add panels facing another way')).toMatch(/^house-units-0-solar-arrays-1-/);
    expect(await press('Take away panels 2')).toMatch(/^house-units-0-solar-arrays-0-/);
    expect(await press('Take away panels 1')).toBe('house-units-0-leg');
    expect(await press('Add panels to this unit')).toBe('house-units-0-solar-inputLimitW');
    await page.locator('.house-circuits details').last().locator('> summary').click();
    const last = page.locator('.house-circuits > li').last();
    await last.getByRole('button', { name: 'Take this circuit away' }).focus();
    await page.keyboard.press('Enter');
    expect(await focused()).toBe(`house-circuits-${circuits - 1}-title`);
  });

  it('takes the second unit away without leaving a circuit that nothing feeds, and says what became of them', async () => {
    const { spec } = writtenHouse(full, tables);
    const at120V = { ...spec, circuits: spec.circuits.filter(({ leg }) => leg !== 'both') };
    const moved = withoutSecondUnit(at120V);
    expect(moved.spec.circuits.map(({ leg }) => leg)).toEqual(at120V.circuits.map(() => 'L1'));
    expect(moved.note).toMatch(/^Moved to L1.*Internet and phones, .* and /);
    const { page } = await opened('full');
    await page.getByRole('button', { name: 'Take the second unit away' }).click();
    expect(await page.locator('.house-moved').innerText()).toMatch(
      /One unit makes no 240 V: Well pump gets nothing now.*“Feeds leg”.*now says both.*licensed electrician/,
    );
    expect(await page.getByLabel('Feeds leg').inputValue()).toBe('both');
    const beside = page.locator('.house-field', { has: page.getByLabel('Feeds leg') }).locator('.house-hint');
    expect(await beside.innerText()).toMatch(
      /^One 120 V unit joined to both legs.*neutral.*licensed electrician/,
    );
    expect(withoutSecondUnit(spec).note).toContain(
      'Do not bridge as it is: Kitchen sockets and Dishwasher share a neutral.',
    );
    await page.waitForTimeout(400); // longer than a change waits for its check
    expect(await page.locator('.trouble li').allInnerTexts()).toEqual([]);
  });

  it('takes what was to be bought for a unit or a circuit off the ladder with it', () => {
    const { spec } = writtenHouse(full, tables);
    const ids = (of: typeof spec) => of.ladder!.steps.map(({ id }) => id);
    const single = withoutSecondUnit(spec).spec;
    const gone = ['second-unit', 'second-panels', 'second-module'];
    expect(ids(single)).toEqual(ids(spec).filter((id) => !gone.includes(id)));
    expect(JSON.stringify(single.ladder)).not.toContain('units.west');
    expect(single.ladder!.start.without).toEqual(['units.east.solar']);
    const fridge = spec.circuits.findIndex(({ id }) => id === 'fridge');
    expect(ids(withoutCircuit(spec, fridge))).toEqual(ids(spec).filter((id) => id !== 'refrigerator'));
  });

  it('names the circuit that a fault is of, and never shows a block of the file', async () => {
    const { page } = await opened('small');
    await page.getByLabel('Leg', { exact: true }).nth(1).selectOption('L2');
    const name = small.alternatives[0]!.household.circuits[1]!.title!;
    await expect.poll(() => page.locator('.trouble li button').allInnerTexts()).toContain(`${name}: Leg`);
    await page.getByLabel('Leg', { exact: true }).nth(1).selectOption('L1');
    await expect.poll(() => page.locator('.trouble').count()).toBe(0);
    for (const box of await page.locator('.house-ticks', { hasText: 'Jan' }).locator('input').all())
      await box.setChecked(false);
    await page.locator('.trouble').waitFor();
    const said = await page.locator('.trouble').innerText();
    expect(said).toContain('Tick at least one month, or give a date and time.');
    expect(said).not.toContain('{');
  });

  it('says in words what a household that is compared has, and shows the usual hours whole', async () => {
    const { page } = await opened('full', { locale: 'en-US' });
    const compared = page.locator('section', { hasText: 'Households compared' }).locator('.house-hint');
    expect(await compared.allInnerTexts()).toEqual([
      'As described above.',
      '2 battery modules on each unit.',
    ]);
    const awake = page.getByLabel('Awake', { exact: true });
    await awake.fill('');
    const room = await awake.evaluate((input: HTMLInputElement) => {
      const style = getComputedStyle(input);
      const pen = document.createElement('canvas').getContext('2d')!;
      pen.font = style.font;
      const needed = pen.measureText(input.placeholder).width;
      return input.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - needed;
    });
    expect(room).toBeGreaterThanOrEqual(0);
  });

  it('writes times and degrees as asked, and the file keeps 24 hours and °C', async () => {
    const { page } = await opened('small', { locale: 'en-US' });
    const room = page.getByLabel('Room temperature');
    const awake = page.getByLabel('Awake', { exact: true });
    expect(await room.getAttribute('placeholder')).toContain('69.8 (usual)');
    expect(await awake.getAttribute('placeholder')).toMatch(/6:30\sam-10:30\spm/);
    await room.fill('77');
    await awake.fill('7 am to 11:15 pm');
    const scenario = await saved(page, 'american.yaml');
    expect(scenario.site.indoorC).toBe(25);
    expect(scenario.alternatives[0]!.household.person.awake).toBe('07:00-23:15');
    await page.getByLabel('Temperatures').selectOption({ label: '°C' });
    await page.getByLabel('Clock').selectOption({ index: 0 });
    expect(await room.inputValue()).toBe('25');
    expect(await awake.inputValue()).toBe('07:00-23:15');
    expect(page.url()).toMatch(/clock=24.*degrees=C|degrees=C.*clock=24/);
  });

  it('changes a ready-made threshold in per cent and saves it as a fraction', async () => {
    const { page } = await opened('small');
    await page
      .locator('details.house-set', { hasText: 'Comfort off below half' })
      .locator('> summary')
      .click();
    await page.getByLabel('Off when the reading falls below').first().fill('35');
    await page.getByLabel('On again when it rises above').first().fill('30');
    await page.locator('.house-fault').first().waitFor();
    expect(await page.locator('.trouble').innerText()).toMatch(/above “Off when the reading falls below/);
    await page.getByLabel('On again when it rises above').first().fill('60');
    await expect.poll(() => page.locator('.trouble').count()).toBe(0);
    const scenario = await saved(page, 'threshold.yaml');
    expect(scenario.alternatives[0]!.household.strategies[1]!.rules[0]).toMatchObject({
      dropBelowFraction: 0.35,
      restoreAboveFraction: 0.6,
    });
  });

  it('takes a measured load for a circuit, says to keep it beside the file, and gives the same rows with it there', async () => {
    writeFileSync(join(folder, 'my load.csv'), MEASURED);
    const { page } = await opened('small');
    await page.locator('.house-circuits details').nth(5).locator('> summary').click();
    await page
      .locator('.house-circuits > li')
      .nth(5)
      .locator('input[type=file]')
      .setInputFiles(join(folder, 'my load.csv'));
    await expect
      .poll(() => page.locator('.house-circuits').innerText())
      .toContain('24 readings, 1 days, repeated to the end. Keep my load.csv beside');
    const scenario = await saved(page, 'measured.yaml');
    expect(await page.locator('.house-open .house-said').last().innerText()).toContain(
      'Keep my load.csv in the same folder',
    );
    expect(scenario.alternatives[0]!.household.circuits[5]!.appliances[0]).toMatchObject({
      kind: 'measured',
      file: 'my load.csv',
    });
    await expect
      .poll(() => provenance(page), { timeout: 30_000 })
      .toContain(scenarioHash(scenario).slice(0, 12));
    await page.locator('.house-circuits details').nth(4).locator('> summary').click();
    writeFileSync(join(folder, 'bad.csv'), 'time,watts\n0:00,abc\n');
    await page
      .locator('.house-circuits > li')
      .nth(4)
      .locator('input[type=file]')
      .setInputFiles(join(folder, 'bad.csv'));
    await expect
      .poll(() => page.locator('.house-circuits').innerText())
      .toMatch(/Nothing was changed\. bad\.csv cannot be used.*line 2: the watts are "abc"/s);
  }, 60_000);

  it('opens a file, asks for the records it names, and says by line what is wrong with one it cannot open', async () => {
    const { page } = await opened('small');
    const open = page.getByLabel('Open a household’s file');
    await open.setInputFiles(fileOf('../../data/full-house.yaml'));
    await expect
      .poll(() => page.getByLabel('Name of the household').inputValue())
      .toBe('Alder Row, a pair of units');
    expect(scenarioHash(await saved(page, 'reopened.yaml'))).toBe(scenarioHash(full));
    const text = houseText(writtenHouse(small, tables).spec, 'yaml');
    writeFileSync(join(folder, 'broken.yaml'), text.replace('tier: 1', 'teir: 1'));
    await open.setInputFiles(join(folder, 'broken.yaml'));
    await expect
      .poll(() => page.locator('.house-open .house-said').innerText())
      .toMatch(/Nothing was changed.*broken\.yaml:\d+.*Did you mean tier\?/s);
    expect(await page.getByLabel('Name of the household').inputValue()).toBe('Alder Row, a pair of units');
    const named = text.replace('- typical: television', '- {kind: measured, file: tv.csv}');
    writeFileSync(join(folder, 'named.yaml'), named);
    writeFileSync(join(folder, 'tv.csv'), MEASURED);
    await open.setInputFiles(join(folder, 'named.yaml'));
    await page.getByLabel('Choose tv.csv').setInputFiles(join(folder, 'tv.csv'));
    await expect.poll(() => page.locator('.trouble').count()).toBe(0);
    await saved(page, 'with-tv.yaml');
    expect(
      readScenario(readFileSync(join(folder, 'with-tv.yaml'), 'utf8'), 'x', tables.typical).scenario.title,
    ).toBe(small.title);
  }, 60_000);

  it('shows hostile names as text', async () => {
    const bad = '</script><script>globalThis.harm = 1</script><img src=x onerror="globalThis.harm = 2">';
    const { household } = small.alternatives[0]!;
    const named = {
      ...household,
      circuits: household.circuits.map((c) => ({ ...c, title: bad })),
      strategies: household.strategies.map((s) => ({ ...s, title: bad })),
    };
    const file = await published('describe-your-house', {
      scenario: {
        ...small,
        title: bad,
        alternatives: [{ ...small.alternatives[0]!, title: bad, household: named }],
      },
      draws: 5,
    });
    const { page, troubles } = await bench.open(file);
    await settled(page);
    expect(await page.locator('.house').innerText()).toContain('<img src=x');
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(troubles).toEqual([]);
  });

  for (const [screen, viewport] of [
    ['phone', { width: 320, height: 740 }],
    ['desktop', { width: 1280, height: 900 }],
  ] as const)
    for (const colorScheme of ['light', 'dark'] as const)
      it(`has nothing an accessibility check objects to, and fits the screen (${screen}, ${colorScheme})`, async () => {
        const whole = (screen === 'phone') === (colorScheme === 'light'); // each screen and each scheme once in full
        const { page } = await opened(whole ? 'full' : 'small', { viewport, colorScheme });
        await page.getByLabel('Continuous').first().fill('-1');
        await page.locator('.house-fault').waitFor();
        expect((await accessibility(page)).objections).toEqual([]);
        expect(await widthTaken(page)).toBeLessThanOrEqual(viewport.width);
      }, 60_000);

  it('keeps the focus where it was when the form is drawn anew, and prints the answer without the form', async () => {
    const { page } = await opened('small');
    await page.getByLabel('Feeds leg').focus();
    await page.getByLabel('Feeds leg').selectOption('L2');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('house-units-0-leg');
    await page.getByLabel('Feeds leg').selectOption('L1');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.house-form').isVisible()).toBe(false);
    expect(await page.locator('.house-answer .answer').isVisible()).toBe(true);
    expect(await page.locator('.cautions').isVisible()).toBe(true);
  });
});
