/**
 * A notebook page while it is being written: `preview.ts <scenario> [notebook …]`, then open the address it says.
 * The page reloads when a notebook, the style or any of our code changes. Without notebooks: our own pages.
 */
import { basename, dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadScenario } from '@rideout/sim/node';
import { createServer, searchForWorkspaceRoot, type Plugin, type ViteDevServer } from 'vite';
import { saidBy } from '../error-words.ts';
import type { EmbeddedStudy } from '../page/embedded-study.ts';
import { shellConfig } from './build-shell.ts';
import { withStudy } from './fill-shell.ts';
import { OUR_PAGES } from './publish-pages.ts';
import { PublishError } from './publish-error.ts';

const KIT = [
  '@observablehq/notebook-kit',
  'observable:runtime',
  'observable:runtime/define',
  'observable:runtime/stdlib/md.js',
];
const DRAWS = 100; // an author wants to see soon; published pages start with more

export interface PreviewOptions {
  /** Notebook files, all in one folder; left out: our own. */
  readonly pages?: readonly string[];
  readonly port?: number;
}

/** Serves this machine only. The scenario is read once; start again when it has changed. */
export async function startPreview(
  scenarioFile: string,
  { pages = Object.values(OUR_PAGES), port = 5173 }: PreviewOptions = {},
): Promise<{ server: ViteDevServer; addresses: string[] }> {
  const { scenario, notes } = loadScenario(scenarioFile);
  const files = pages.map((page) => resolve(page));
  const folders = [...new Set(files.map((file) => dirname(file)))];
  if (folders.length !== 1)
    throw new PublishError(`notebooks of one folder can be previewed together, not ${folders.join(' and ')}`);
  const config = shellConfig(files[0]!, 'every library');
  const repository = searchForWorkspaceRoot(fileURLToPath(new URL('.', import.meta.url)));
  const server = await createServer({
    ...config,
    logLevel: 'warn',
    plugins: [config.plugins, studyInside({ scenario, seed: 'rideout', draws: DRAWS, notes })],
    server: { host: 'localhost', port, fs: { allow: [repository, folders[0]!] } },
    appType: 'mpa',
    optimizeDeps: { exclude: KIT }, // bundled ahead of time it would load its libraries from an address
  });
  await server.listen();
  const base = server.resolvedUrls!.local[0]!;
  return { server, addresses: files.map((file) => base + encodeURIComponent(basename(file))) };
}

/** As a published page has it, without its policy: a page under preview must reload. */
function studyInside(study: EmbeddedStudy): Plugin {
  return {
    name: 'rideout-study-inside',
    transformIndexHtml: { order: 'post', handler: (html) => withStudy(html, study) },
  };
}

async function main([scenario, ...pages]: readonly string[]): Promise<void> {
  if (scenario === undefined)
    throw new PublishError('say which scenario: npm run notebooks -- data/full-house.yaml [notebook.html …]');
  const { addresses } = await startPreview(scenario, pages.length > 0 ? { pages } : {});
  console.log(
    `Open one of these; each reloads as you write. Ctrl+C ends it.\n${addresses.map((a) => `  ${a}`).join('\n')}`,
  );
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  await main(process.argv.slice(2)).catch((error: unknown) => {
    console.error(saidBy(error));
    process.exitCode = 1;
  });
}
