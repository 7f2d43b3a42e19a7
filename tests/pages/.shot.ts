import { startBrowser, openFile } from './browser.ts';
const [file, out, w, h, scheme, full, media] = process.argv.slice(2);
const b = await startBrowser();
const { page, troubles, requests } = await openFile(b, file!, { viewport: { width: +w!, height: +h! }, colorScheme: scheme as 'light' });
await page.waitForTimeout(4000);
if (media === 'print') await page.emulateMedia({ media: 'print' });
await page.screenshot({ path: out!, fullPage: full === 'full' });
console.log(troubles, requests, await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]));
await b.close();
