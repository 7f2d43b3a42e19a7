import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';

/** Starts a thread that can be told a job on draws: see draws-worker.ts. */
export function startWorker(): Worker {
  const fromSource = import.meta.url.endsWith('.ts');
  const url = new URL(`./draws-worker.${fromSource ? 'ts' : 'js'}`, import.meta.url);
  if (!fromSource) return new Worker(url);
  const boot = bundled(url) ?? loadedBySource(url);
  return new Worker(boot, { eval: true, execArgv: [] });
}

/** By the loader that runs this file: it works anywhere, and takes half a second for each thread. */
function loadedBySource(url: URL): string {
  return `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(url.href)}); })`;
}

/** The parts of esbuild that are used here; the loader that runs this file brings it along. */
interface Bundler {
  readonly buildSync: (options: Readonly<Record<string, unknown>>) => {
    readonly outputFiles: readonly { readonly text: string }[];
    readonly warnings: readonly unknown[];
  };
}

/** The threads' script, put together once in the life of a process. */
let script: { readonly text: string | undefined } | undefined;

/** The thread's source and all that it imports as one script, ready at once; undefined when that cannot be had. */
function bundled(url: URL): string | undefined {
  script ??= { text: bundle(fileURLToPath(url)) };
  return script.text;
}

function bundle(file: string): string | undefined {
  try {
    const { buildSync } = createRequire(import.meta.url)('esbuild') as Bundler;
    const { outputFiles, warnings } = buildSync({
      entryPoints: [file],
      bundle: true,
      write: false,
      platform: 'node',
      format: 'cjs',
      mainFields: ['module', 'main'],
      conditions: ['rideout-source'],
      minifySyntax: true, // puts constants in place: a few per cent in the loop
      logLevel: 'silent',
    });
    return warnings.length === 0 ? outputFiles[0]!.text : undefined; // a file that asks where it lies cannot be moved
  } catch {
    return undefined;
  }
}
