/** A process of its own that builds pages for the tests: it alone loads the bundler, once. See build-once.ts. */
import { buildShell } from '../../packages/notebooks/src/publish/build-shell.ts';

export interface Built {
  /** Path of the notebook file. */
  readonly page: string;
  readonly html?: string;
  readonly fault?: string;
}

process.on('message', (page: string) => {
  const answer = (built: Built) => process.send!(built);
  buildShell(page).then(
    (html) => answer({ page, html }),
    (error: unknown) => answer({ page, fault: String(error) }),
  );
});
process.on('disconnect', () => process.exit());
