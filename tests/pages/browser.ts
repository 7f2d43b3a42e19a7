/** One browser for the page tests: found where people have it, started without a word to any network. */
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';

const PLACES = [
  process.env['RIDEOUT_BROWSER'],
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Path of a browser, or undefined. */
export const browserPath: string | undefined = PLACES.find((path) => path !== undefined && existsSync(path));

const NONE =
  'No browser was found for the page tests: install Chromium, Chrome or Edge, or name one in RIDEOUT_BROWSER.';

/**
 * True, with a plain word, when the page tests cannot run here. On a build machine (CI is set) that is a failure:
 * tests that quietly do not run prove nothing.
 */
export function noBrowser(): boolean {
  if (browserPath) return false;
  if (process.env['CI']) throw new Error(NONE);
  console.warn(`${NONE} They are skipped.`);
  return true;
}

export function startBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: browserPath!, args: FLAGS });
}

export interface OpenedPage {
  readonly page: Page;
  /** Addresses asked for, other than the page's own file and what is inside it. */
  readonly requests: readonly string[];
  /** Errors, warnings and complaints of the security policy. */
  readonly troubles: readonly string[];
}

export interface OpenOptions extends BrowserContextOptions {
  /** What stands behind the file's name in the address bar, from its "#" on. */
  readonly hash?: string;
  /** Runs in the page before anything of its own. */
  readonly before?: () => void;
}

/** Opens a file as a person would, by file://, with the network off. */
export async function openFile(
  browser: Browser,
  file: string,
  options: OpenOptions = {},
): Promise<OpenedPage> {
  const { hash = '', before, ...context } = options;
  const page = await (await browser.newContext({ offline: true, ...context })).newPage();
  if (before) await page.addInitScript(before);
  const url = pathToFileURL(file).href;
  const requests: string[] = [];
  const troubles: string[] = [];
  page.on('request', (request) => {
    const asked = request.url();
    if (!asked.startsWith(url) && !/^(data|blob):/.test(asked)) requests.push(asked);
  });
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) troubles.push(message.text());
  });
  page.on('pageerror', (error) => troubles.push(String(error)));
  await page.goto(url + hash);
  return { page, requests, troubles };
}
