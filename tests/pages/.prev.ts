import { startBrowser } from './browser.ts';
const b = await startBrowser(); const page = await b.newPage();
page.on('console', (m) => console.log(m.type(), m.text().slice(0,300))); page.on('pageerror', (e) => console.log('ERR', String(e).slice(0,400)));
for (const n of ['how-many-days', 'card-by-the-panel']) { await page.goto(`http://localhost:5173/${n}.html`); await page.waitForTimeout(9000); console.log(n, (await page.locator('body').innerText()).slice(0, 300)); }
await b.close();
