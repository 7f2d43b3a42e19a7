/** A notebook file to one HTML file, household not yet inside: all code and style in it, nothing left to fetch. */
import { readFile } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { observable } from '@observablehq/notebook-kit/vite';
import { dataFile } from '@rideout/sim/node';
import { build, type InlineConfig, type Rolldown } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { saidBy } from '../error-words.ts';
import { escapedText } from './escaped-text.ts';
import { insertAfterCharset } from './fill-shell.ts';
import { leadOf } from './listed-page.ts';
import { localLibrary } from './local-library.ts';
import { PublishError } from './publish-error.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const KIT = fileURLToPath(new URL('.', import.meta.resolve('@observablehq/notebook-kit')));

/**
 * @param page path of a notebook file.
 * @throws PublishError naming the page and what is wrong with it.
 */
export async function buildShell(page: string): Promise<string> {
  const text = await readFile(page, 'utf8').catch((cause: unknown) => {
    throw new PublishError(`there is no page to read at "${page}"`, { cause });
  });
  if (!/<notebook[\s>]/i.test(text))
    throw new PublishError(`"${page}" is not a notebook file: it has no <notebook> element`);
  try {
    const built = await build(shellConfig(resolve(page)));
    return described(htmlOf(built as Rolldown.RolldownOutput), leadOf(text));
  } catch (cause) {
    const said = saidBy(cause);
    throw new PublishError(`the page "${page}" could not be built: ${said}`, { cause });
  }
}

/** Vite's settings for one page, or with every library for several; no config file is read, and nothing is written. */
export function shellConfig(page: string, libraries?: 'every library'): InlineConfig {
  const library = localLibrary(libraries);
  return {
    configFile: false,
    envDir: false,
    publicDir: false,
    logLevel: 'silent', // faults are thrown
    base: './',
    root: dirname(page),
    resolve: {
      conditions: ['rideout-source', 'module', 'browser', 'production'],
      alias: [
        { find: /^observable:styles\/theme-[\w-]+\.css$/, replacement: here('../style/house-style.css') },
        { find: /^observable:(.*)$/, replacement: `${KIT}$1` },
        { find: /^rideout-data:/, replacement: dirname(dataFile('appliances.csv')) + '/' }, // shipped tables
        { find: /^@rideout\/notebooks$/, replacement: here('../charts/index.ts') },
        { find: /^@rideout\/notebooks\/page$/, replacement: here('../page/index.ts') },
      ],
    },
    plugins: [
      library.plugin,
      observable({ template: here('./page-template.html'), transformNotebook: library.transformNotebook }),
      viteSingleFile(),
    ],
    worker: { format: 'iife' }, // browsers start no module worker from a page that is a file
    build: {
      write: false,
      target: 'es2022',
      modulePreload: false,
      reportCompressedSize: false,
      rollupOptions: { input: page },
    },
  };
}

function htmlOf({ output }: Rolldown.RolldownOutput): string {
  const page = output.find(({ fileName }) => fileName.endsWith('.html'));
  const beside = output.filter((file) => file !== page).map(({ fileName }) => basename(fileName));
  if (page?.type !== 'asset') throw new Error('the build gave no page');
  if (beside.length > 0)
    throw new Error(`these files would have to lie beside the page: ${beside.join(', ')}`);
  return String(page.source);
}

/** With the line that stands for the page on a page of contents, today's or a later one. */
function described(html: string, lead: string): string {
  return lead === ''
    ? html
    : insertAfterCharset(html, `<meta name="description" content="${escapedText(lead)}">`);
}
