/** The page "Describe your house": what it says of faults, of what is not saved, and of a list that is no longer of the form. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '@rideout/sim';
import { faultWords, type FaultyField } from '../../packages/notebooks/src/page/fault-words.ts';
import { noBrowser } from './browser.ts';
import { fileOf, fullHouse, smallHouse, studyInNode } from './houses.ts';
import { pageBench, savedFrom, unfoldAll } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const small = smallHouse();
const full = fullHouse();

describe('faultWords(finding, field)', () => {
  const words = (
    of: Partial<Finding>,
    unit?: string,
    neighbours: Readonly<Record<string, { label: string; value: unknown }>> = {},
  ) => {
    const finding: Finding = {
      file: '',
      line: 1,
      path: 'a.b',
      found: '1',
      expected: '',
      hint: undefined,
      ...of,
    };
    const field: FaultyField = { unit, neighbour: (key) => neighbours[key] };
    return faultWords(finding, field).replaceAll('\u00a0', ' ');
  };
  const below = { dropBelowFraction: { label: 'Off below, %', value: 0.25 } };

  it('tells values and limits in the unit of the field, without a word on how a file writes them', () => {
    const most = { found: '65.5556', expected: 'a number of at most 40' };
    expect(words(most, '°F')).toBe('Found 150 °F; expected at most 104 °F.');
    expect(words(most, '°C')).toBe('Found 65.56 °C; expected at most 40 °C.');
    expect(words(most, 'W')).toBe('Found 65.5556; expected at most 40.');
    const share = { found: '1.2', expected: 'a number of at most 1', hint: 'For 1.2 percent write 0.012.' };
    expect(words(share, '%')).toBe('Found 120 %; expected at most 100 %.');
  });

  it('calls neighbouring keys by their labels, with what stands there', () => {
    expect(words({ found: '0.2', expected: 'a fraction above dropBelowFraction' }, '%', below)).toBe(
      'Found 20 %; expected a level above “Off below, %”, 25 %.',
    );
    const start = { cutOffFraction: { label: 'Stops itself at, %', value: 0.1 } };
    expect(words({ found: '0.05', expected: 'at least cutOffFraction, 0.1' }, '%', start)).toBe(
      'Found 5 %; expected at least “Stops itself at, %”, 10 %.',
    );
    const watts = { continuousW: { label: 'Continuous, W', value: 9000 } };
    expect(words({ found: '6000', expected: 'at least continuousW, 9000' }, 'W', watts)).toBe(
      'Found 6000; expected at least “Continuous, W”, 9000.',
    );
  });

  it('says of an empty field and of an empty list what to fill in', () => {
    expect(words({ found: 'nothing', expected: 'a fraction above dropBelowFraction' }, '%', below)).toBe(
      'Fill in a level above 25 %.',
    );
    expect(words({ found: 'nothing', expected: 'a number' }, '%')).toBe('Fill in a percentage.');
    expect(words({ found: 'nothing', expected: 'a number' })).toBe('Fill in a number.');
    const none = { found: '[]', expected: 'a list with a length of at least 1' };
    expect(words({ ...none, path: 'circuits' })).toBe('Add at least one circuit.');
  });
});

describe.skipIf(noBrowser())('the page "Describe your house", of what is wrong', () => {
  const bench = pageBench();
  const files: Record<string, PublishedFile> = {};

  beforeAll(async () => {
    for (const [house, scenario] of Object.entries({ small, full })) {
      const { summary } = studyInNode(scenario, { seed: 'wrong', draws: 12 });
      files[house] = await published('describe-your-house', { scenario, summary });
    }
  }, 60_000);
  const opened = async (house: 'small' | 'full', options = {}) => {
    const open = await bench.open(files[house]!, options);
    await open.page.locator('#survival-curves').waitFor();
    return open;
  };
  const troubles = async (page: Page) =>
    (await page.locator('.trouble').allInnerTexts()).join(' ').replace(/\s+/g, ' ');

  it('tells a fault in the reader’s degrees and in per cent, as they were filled in', async () => {
    const { page } = await opened('small', { locale: 'en-US' });
    await page.getByLabel('Room temperature').fill('150');
    await expect.poll(() => troubles(page)).toContain('Found 150 °F; expected at most 104 °F.');
    await page.getByLabel('Room temperature').fill('70');
    await unfoldAll(page);
    await page.getByLabel('Kept for outages while the grid is up').fill('120');
    await expect.poll(() => troubles(page)).toContain('Found 120 %; expected at most 100 %.');
    expect(await troubles(page)).not.toMatch(/write|°F/);
  });

  it('says what to do where a list is empty or nothing is kept longest, at the field that does it', async () => {
    const { page } = await opened('small');
    const tiers = page.getByLabel('Tier', { exact: true });
    for (const tier of await tiers.all()) await tier.selectOption('3');
    await expect.poll(() => troubles(page)).toContain('Give one circuit tier 1: the days end when');
    expect(await tiers.first().getAttribute('aria-invalid')).toBe('true');
    for (let left = await tiers.count(); left > 0; left -= 1) {
      await page.locator('.house-circuits > li').last().locator('summary').first().click();
      await page.getByRole('button', { name: 'Take this circuit away' }).last().click();
    }
    await expect.poll(() => troubles(page)).toContain('Add at least one circuit.');
    expect(await troubles(page)).not.toContain('circuits:');
  });

  it('says over what to look into that it is of the household as it was, and takes links to what is gone out of use', async () => {
    const { page } = await opened('full');
    const findings = page.locator('.house-findings');
    await findings.locator('.provenance').waitFor({ timeout: 60_000 });
    const held = findings.locator('.findings-held');
    const toWest = findings.getByRole('button', { name: /^Go to it units\.west/, includeHidden: true });
    expect(await held.innerText()).toBe('');
    expect(await toWest.count()).toBeGreaterThan(0);
    expect(await toWest.first().isEnabled()).toBe(true);
    await page.getByRole('button', { name: 'Take the second unit away' }).click();
    await expect
      .poll(() => held.innerText())
      .toBe(
        'This is of the household as it was: what you have changed is looked over once its days are worked out.',
      );
    for (const button of await toWest.all()) expect(await button.isDisabled()).toBe(true);
    await page.getByLabel('Continuous').first().fill('-1');
    await expect.poll(() => held.innerText()).toContain('as it was: one thing is to be mended');
    expect(await held.innerText()).toBe(await page.locator('.house-answer .house-held').innerText());
    await page.getByLabel('Continuous').first().fill('3000');
    await expect.poll(() => held.innerText(), { timeout: 60_000 }).toBe('');
    await findings.locator('.provenance').waitFor({ timeout: 60_000 });
    expect(await toWest.count()).toBe(0);
    const link = findings.getByRole('button', { name: /^Go to it units\.east/ }).first();
    await link.click();
    expect(await page.evaluate(() => document.activeElement?.closest('.house-form') !== null)).toBe(true);
  }, 120_000);

  it('says what is not saved yet, and asks before it is lost', async () => {
    const { page } = await opened('small');
    const unsaved = page.locator('.house-unsaved');
    const asked = (): Promise<boolean> =>
      page.evaluate(() => !dispatchEvent(new Event('beforeunload', { cancelable: true })));
    expect([await unsaved.innerText(), await asked()]).toEqual(['', false]);
    await page.getByLabel('Battery modules').fill('3');
    expect([await unsaved.innerText(), await asked()]).toEqual([
      'Not saved yet. This browser keeps a draft.',
      true,
    ]);
    await savedFrom(page, 'main', 'Save as YAML');
    expect([await unsaved.innerText(), await asked()]).toEqual(['', false]);
    const said = page.locator('.house-open .house-said').last();
    const name = /Saved as (\S+\.yaml)\./.exec(await said.innerText())![1]!;
    await page.getByLabel('Battery modules').fill('4');
    expect(await unsaved.innerText()).toBe(`Changed since ${name} was saved. This browser keeps a draft.`);
    expect([await said.innerText(), await asked()]).toEqual(['', true]);
    await page.getByLabel('Open a household’s file').setInputFiles(fileOf('../../data/small-house.yaml'));
    await expect.poll(() => unsaved.innerText()).toBe('');
    await page.getByLabel('Battery modules').fill('5');
    expect(await unsaved.innerText()).toBe(
      'Changed since small-house.yaml was opened. This browser keeps a draft.',
    );
  });
});
