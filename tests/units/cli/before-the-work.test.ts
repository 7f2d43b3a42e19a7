/** What cannot be done is told before the work, and what cannot be written in one sentence. */
import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rideout, ROOT, SMALL } from './rideout.ts';

/** More outages than any test would wait for. */
const LONG = ['days', SMALL, '-d', '1000000', '-w', '0'];
const COMMAND = ['--import', 'tsx/esm', '--conditions=rideout-source'];
const MAIN = 'packages/sim/src/cli/main.ts';

describe('an option that cannot be used', () => {
  it.each([
    [[...LONG, '--out', ''], '--out: found ""; expected the name of a folder\n'],
    [[...LONG, '--page', ' '], '--page: found " "; expected the name of a file\n'],
    [[...LONG, '-s', ''], '--seed: found ""; expected a text\n'],
    [[...LONG, '--weather', ''], '--weather: found ""; expected the name of a file\n'],
    [['minutes', SMALL, '--out', ''], '--out: found ""; expected the name of a file\n'],
    [['publish', SMALL, '--out', ''], '--out: found ""; expected the name of a folder\n'],
  ])('is told before the work: %j', async (args, told) => {
    expect(await rideout(args)).toEqual({ code: 2, out: '', told });
  });

  it.each([[[...LONG, '--page', 'page.html']], [['publish', SMALL, '--out', 'pages']]])(
    'is told before the work where the package of pages is missing: %j',
    (args) => {
      const hooks = `export const resolve = (name, context, next) => {
        if (name.startsWith('@rideout/notebooks')) throw Object.assign(new Error('none'), { code: 'ERR_MODULE_NOT_FOUND' });
        return next(name, context);
      };`;
      const hide = `import { register } from 'node:module'; register(${JSON.stringify(inline(hooks))});`;
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [...COMMAND, '--import', inline(hide), MAIN, ...args],
        { cwd: ROOT, encoding: 'utf8' },
      );
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).toMatch(
        /^(?:No ladder .*\n)?pages need the package @rideout\/notebooks, which is not installed here\n$/,
      );
    },
  );
});

const inline = (code: string) => `data:text/javascript,${encodeURIComponent(code)}`;

describe.skipIf(!existsSync('/dev/full'))('a full disk behind standard output', () => {
  it.each([[['days', SMALL, '-d', '1', '-q']], [['schema']]])('is told in one sentence: %j', (args) => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [...COMMAND, MAIN, ...args], {
      cwd: ROOT,
      encoding: 'utf8',
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    expect(stderr).toBe('the answer could not be written to standard output: the disk is full\n');
    expect(status).toBe(3);
  });
});
