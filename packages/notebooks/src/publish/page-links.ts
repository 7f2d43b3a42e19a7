/** The way from one page of a folder to the others: plain relative links, which need no script and no network; a script has them carry settings. */
import { PAGE_WORDS } from '../page/page-words.ts';
import { escapedText } from './escaped-text.ts';
import type { ListedPage } from './listed-page.ts';

export interface Neighbours {
  /** File name of the page of contents. */
  readonly contents: string;
  /** All pages of the folder, this one too. */
  readonly pages: readonly ListedPage[];
}

export function pageLinks({ contents, pages }: Neighbours, ownName: string): string {
  const others = pages.filter(({ name }) => name !== contents);
  const items = [
    ...(ownName === contents ? [] : [link(contents, 'All pages')]),
    ...others.map((page) =>
      page.name === ownName
        ? `<span aria-current="page">${escapedText(page.title)}</span>`
        : link(page.name, page.title),
    ),
  ];
  return `<nav class="page-links screen-only" aria-label="Pages about this household"><ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul></nav>`;
}

/** With the words that its page knows: the page it stands on adds its own settings to it. "./" before the name: a name with a colon in it is no address of another kind. */
function link(name: string, title: string): string {
  const words = PAGE_WORDS[name.replace(/\.html$/, '')];
  const known = words ? ` data-page-words="${words.join(',')}"` : '';
  return `<a href="./${encodeURIComponent(name)}"${known}>${escapedText(title)}</a>`;
}
