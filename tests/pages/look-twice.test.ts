/** What is odd about a site, its clock and its weather is told beside the figures, on every page. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OUR_PAGES, publishPages } from '@rideout/notebooks/publish';
import { loadScenario } from '@rideout/sim/node';
import { noteWords } from '../../packages/notebooks/src/page/look-twice.ts';
import { sizeNotes } from '../../packages/sim/src/scenario/size-notes.ts';
import { noBrowser } from './browser.ts';
import { fileOf, fullHouse } from './houses.ts';
import { pageBench } from './page-bench.ts';
import { published, type PageName } from './published.ts';

const folder = mkdtempSync(join(tmpdir(), 'rideout-twice-'));
/** The demo house with the sign of its longitude lost. */
const file = join(folder, 'east.yaml');
writeFileSync(
  file,
  readFileSync(fileOf('../../data/full-house.yaml'), 'utf8').replace(/longitudeDeg: -/, 'longitudeDeg: '),
);
const { scenario, notes } = loadScenario(file);
const SAID = [
  /^The sun at longitude \d+(\.\d+)? is \d+ hours off the clock of America\/New_York; is the sign of longitude right\? East is positive\.$/,
  /^The weather is that of “boston”, \d+ km from the site; is it the right place, and are latitude and longitude right\?$/,
];

describe('what is to be looked at twice', () => {
  it('is told in words, not in keys of the file', () => {
    expect(notes.map(noteWords)).toEqual(SAID.map((said) => expect.stringMatching(said) as string));
    expect(noteWords('desk.csv: times are an hour apart')).toBe('Desk.csv: times are an hour apart');
    const small = structuredClone(scenario.alternatives[0]!.household.units[0]!);
    small.battery.module.capacityWh = 4.8;
    small.solar!.arrays[0]!.peakW = 2.4;
    expect(sizeNotes([small]).map(noteWords)).toEqual([
      'Unit “east”, capacity of a module: 4.8 Wh is very little; if kilowatt-hours were meant, write 4800.',
      'Unit “east”, peak of its panels: 2.4 W is very little; if kilowatts were meant, write 2400.',
    ]);
  });

  it('is published with a page, and leaves no trace where there is nothing', async () => {
    const textOf = async (about: { notes?: readonly string[] }) => {
      const outFile = join(folder, 'card.html');
      await publishPages({ scenario, pages: [OUR_PAGES['card-by-the-panel']], outFile, ...about });
      return readFileSync(outFile, 'utf8');
    };
    expect(await textOf({ notes })).toContain(`"notes":["site: the sun at longitudeDeg`);
    expect(await textOf({ notes: [] })).toBe(await textOf({}));
  }, 60_000);

  describe.skipIf(noBrowser())('on each page', () => {
    const bench = pageBench();

    for (const name of Object.keys(OUR_PAGES) as PageName[])
      it(`${name}: stands beside the figures, and only where there is something`, async () => {
        const hash = { 're-seed': '#rows=20&seeds=2' }[name as string] ?? '';
        const odd = await bench.open(await published(name, { scenario, notes, draws: 4 }), { hash });
        const note = odd.page.locator('.look-twice');
        await note.waitFor();
        const said = await note.locator('p').allInnerTexts();
        expect(said.slice(1)).toEqual(SAID.map((words) => expect.stringMatching(words) as string));
        const plain = await bench.open(await published(name, { scenario: fullHouse(), draws: 4 }), { hash });
        await plain.page.locator('figure.chart, .card[data-type-pt]').first().waitFor();
        expect(await plain.page.locator('.look-twice').count()).toBe(0);
      }, 120_000);

    it('follows what is filled in, on the form', async () => {
      const { page } = await bench.open(
        await published('describe-your-house', { scenario: fullHouse(), draws: 4 }),
      );
      await page.getByLabel('Longitude').fill('71');
      await page.locator('.look-twice', { hasText: 'hours off the clock' }).waitFor();
      await page.getByLabel('Longitude').fill('-71');
      await page.locator('.look-twice').waitFor({ state: 'detached' });
    }, 60_000);
  });
});
