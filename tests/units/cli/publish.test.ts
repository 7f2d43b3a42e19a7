/** What `publish` says of the files it wrote and of the page it left out. */
import { describe, expect, it } from 'vitest';
import { fileSize } from '../../../packages/sim/src/cli/file-size.ts';
import { leftOut, publishedList } from '../../../packages/sim/src/cli/publish.ts';
import { rideout, SMALL } from './rideout.ts';

const written = [
  { file: 'pages/index.html', bytes: 9_400 },
  { file: 'pages/how-many-days.html', bytes: 2_340_000 },
];

describe('rideout publish', () => {
  it('lists files with their sizes, small ones in kilobytes, or as JSON', () => {
    expect(publishedList(written, {})).toBe('pages/index.html  9.4 kB\npages/how-many-days.html  2.3 MB');
    expect(JSON.parse(publishedList(written, { json: true }))).toEqual(written);
    expect([fileSize(99_400), fileSize(100_000)]).toEqual(['99 kB', '0.1 MB']);
  });

  it('says that a house without a ladder gets no page of what to buy, unless other pages are named', () => {
    expect(leftOut({ ladder: undefined }, [])).toEqual([
      expect.stringMatching(/^No ladder in the scenario: the page “What to buy next” is left out\./),
    ]);
    expect(leftOut({ ladder: undefined }, ['mine.html'])).toEqual([]);
  });

  it.each([
    [['days', SMALL, '-d', '100000', '-w', '0', '--page', 'data'], 'data'],
    [['minutes', SMALL, '--out', 'data'], 'data'],
  ])('%j, a folder where a file should go, is told before the work', async (args, where) => {
    const { code, out, told } = await rideout(args);
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(told).toBe(`nothing can be written to "${where}": that is a folder, not a file\n`);
  });
});
