/** Draws the picture of the README: the demo's survival curves as the page itself exports them. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { summarise } from '@rideout/sim';
import { loadScenario, runStudy } from '@rideout/sim/node';
import { publishPages } from '@rideout/notebooks/publish';
import { startBrowser } from '../tests/pages/browser.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const { scenario } = loadScenario(here('../data/full-house.yaml'));
const { study, rows } = await runStudy(scenario, { seed: 'rideout', draws: 400, workers: 2 });
const [page] = await publishPages({
  scenario,
  outFile: here('../out/picture.html'),
  summary: summarise(study, rows),
});

const browser = await startBrowser();
const tab = await browser.newPage({ viewport: { width: 900, height: 900 } });
await tab.goto(`file://${page!.file}`);
await tab
  .getByLabel('One of the households in the file')
  .selectOption({ label: study.alternatives[1]!.title });
const [download] = await Promise.all([
  tab.waitForEvent('download'),
  tab.getByRole('button', { name: 'Save as SVG' }).first().click(),
]);
const chunks: Buffer[] = [];
for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
writeFileSync(here('../docs/how-many-days.svg'), Buffer.concat(chunks));
await browser.close();
