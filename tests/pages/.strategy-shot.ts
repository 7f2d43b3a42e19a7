import { startBrowser, openFile, settled } from './browser.ts';
const [,, file, prefix, hash='', set='desk-light', sels=''] = process.argv;
const browser = await startBrowser();
const sets: Record<string, object> = {'desk-light':{viewport:{width:1280,height:900},colorScheme:'light'},'desk-dark':{viewport:{width:1280,height:900},colorScheme:'dark'},'phone-dark':{viewport:{width:360,height:740},colorScheme:'dark', deviceScaleFactor: 2},'phone-light':{viewport:{width:360,height:740},colorScheme:'light',deviceScaleFactor: 2}};
for (const name of set.split(',')) {
  const { page, requests, troubles } = await openFile(browser, file!, { ...sets[name], hash });
  await settled(page).catch(async e => { console.log('not settled', (e as Error).message.slice(0,100)); });
  await page.waitForTimeout(500);
  console.log(name, {requests, troubles}, await page.evaluate(() => document.documentElement.scrollWidth));
  let i = 0;
  for (const sel of sels.split(',')) await page.locator(sel).first().screenshot({ path: `/tmp/shots/${prefix}-${name}-${i++}.png` });
}
await browser.close();
