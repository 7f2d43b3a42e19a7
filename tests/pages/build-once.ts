/**
 * Before the tests: a place that builds each page once, when the first test asks for it, and gives it to all.
 *
 * Nothing outlives the run: the next one builds from the sources as they then are, and so does a re-run while watching.
 */
import { fork, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import type { Built } from './shell-builder.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Answers "?page=<path of a notebook file>" with the built page, household not yet inside. */
    shellsAt: string;
    /** Where tests put pages; gone after the run. */
    pagesFolder: string;
  }
}

const BUILDER = fileURLToPath(new URL('shell-builder.ts', import.meta.url));

export default async function buildOnce(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), 'rideout-pages-'));
  const shells = new Shells();
  const server = createServer((request, response) => {
    const page = new URL(request.url!, 'http://localhost').searchParams.get('page')!;
    void shells.of(page).then(({ html, fault }) => response.writeHead(html ? 200 : 500).end(html ?? fault));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  project.provide('shellsAt', `http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  project.provide('pagesFolder', folder);
  project.onTestsRerun(() => shells.forget());
  return () => {
    shells.forget();
    server.close();
    server.closeAllConnections();
    rmSync(folder, { recursive: true, force: true });
  };
}

/** The builder takes seconds to load: it is started when there is something to build. */
class Shells {
  #builder: ChildProcess | undefined;
  readonly #built = new Map<string, Promise<Built>>();

  of(page: string): Promise<Built> {
    if (!this.#built.has(page)) this.#built.set(page, this.#build(page));
    return this.#built.get(page)!;
  }

  forget(): void {
    this.#built.clear();
    this.#builder?.disconnect();
    this.#builder = undefined;
  }

  #build(page: string): Promise<Built> {
    const execArgv = ['--import', 'tsx', '--conditions=rideout-source'];
    const builder = (this.#builder ??= fork(BUILDER, { execArgv }));
    return new Promise((resolve) => {
      const told = (built: Built) => {
        if (built.page === page) answer(built);
      };
      const ended = () => answer({ page, fault: `the builder ended before it had built "${page}"` });
      const answer = (built: Built) => {
        builder.off('message', told).off('exit', ended);
        resolve(built);
      };
      builder.on('message', told).on('exit', ended);
      builder.send(page);
    });
  }
}
