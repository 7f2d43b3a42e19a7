/** Pages that a folder holds already: they stay listed when others are published beside them. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Scenario } from '@rideout/sim';
import { EMBEDDED_ID, type EmbeddedStudy } from '../page/embedded-study.ts';
import { titleEnding } from './fill-shell.ts';
import { plainText, type ListedPage } from './listed-page.ts';
import { madeFrom } from './made-from.ts';

const STUDY = new RegExp(`<script type="application/json" id="${EMBEDDED_ID}">([^<]*)</script>`);

/**
 * Those that are pages of ours or of a notebook, by name; none where there is no such folder. Files that are no such
 * pages, or are so no longer, are passed over: nobody is to be led to them from here.
 */
export async function pagesThere(folder: string, study: EmbeddedStudy): Promise<ListedPage[]> {
  const names = await readdir(folder).catch(() => []);
  const pages = names.filter((name) => name.endsWith('.html')).sort();
  const listed = await Promise.all(pages.map((name) => pageThere(folder, name, study)));
  return listed.filter((page) => page !== undefined);
}

async function pageThere(
  folder: string,
  name: string,
  study: EmbeddedStudy,
): Promise<ListedPage | undefined> {
  try {
    const html = await readFile(join(folder, name), 'utf8');
    const own = STUDY.exec(html)?.[1];
    if (own === undefined) return undefined;
    const there = JSON.parse(own) as EmbeddedStudy;
    const from = madeFrom(there);
    const title = titleWithoutHousehold(html, there.scenario);
    const lead = plainText(/<meta name="description" content="([^"]*)">/.exec(html)?.[1] ?? '');
    return {
      name,
      title: title || name,
      lead,
      ...(from === madeFrom(study) ? {} : { madeFrom: `“${there.scenario.title}”, ${from}` }),
    };
  } catch {
    return undefined; // what cannot be read, or is no study any more
  }
}

function titleWithoutHousehold(html: string, scenario: Scenario): string {
  const title = /<title>([^<]*)<\/title>/.exec(html)?.[1] ?? '';
  const ending = titleEnding(scenario);
  return plainText(title.endsWith(ending) ? title.slice(0, -ending.length) : title);
}
