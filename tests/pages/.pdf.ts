import { readFileSync } from 'node:fs';
import { startBrowser, openFile } from './browser.ts';
const b = await startBrowser();
for (const h of ['small', 'full']) for (const s of h === 'small' ? ['everything','tiers', 'cool-in-the-sun'] : ['tiers-by-hand', 'tiers-by-switch', 'frugal']) {
  const { page, troubles } = await openFile(b, `/tmp/house/${h}-card-by-the-panel.html`, { hash: `#strategies=${s}` , viewport: {width: 1280, height: 900}});
  await page.waitForTimeout(600);
  const n = [];
  for (const format of ['Letter', 'A4'] as const) { const pdf = await page.pdf({ format, path: `/tmp/house/${h}-${s}-${format}.pdf` }); n.push(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length, /MediaBox\s*\[([^\]]*)/.exec(pdf.toString('latin1'))![1]); }
  console.log(h, s, n, await page.locator('.card').getAttribute('data-type-pt'), troubles);
  await page.emulateMedia({ media: 'print' }); await page.setViewportSize({ width: Math.round(188*96/25.4), height: Math.round(257*96/25.4) });
  await page.screenshot({ path: `/tmp/house/${h}-${s}.png`, fullPage: true });
}
await b.close();
