/** Which words of a link each of our pages has a control for, so that the bar of pages can hand settings on. */

const LOOK = ['clock', 'degrees'];
const SURENESS = ['draws', 'seed'];

/** Takes the word `strategies` where it names one alone. */
export const ONE_STRATEGY = 'one strategy';

/** By the name of the page's file. What only makes sense on its own page (an outage's number, a budget) is not handed on. */
export const PAGE_WORDS: Readonly<Record<string, readonly string[]>> = {
  'how-many-days': ['household', 'strategies', 'months', 'modules', 'storm', 'by', ...SURENESS, ...LOOK],
  'which-strategy': ['household', 'strategies', 'months', 'modules', 'storm', 'by', ...SURENESS, ...LOOK],
  'minute-by-minute': ['household', ONE_STRATEGY, 'months', 'modules', 'storm', 'by', ...SURENESS, ...LOOK],
  'one-battery-or-two': ['household', ONE_STRATEGY, 'months', 'storm', 'by', ...SURENESS, ...LOOK],
  'through-the-year': ['household', ONE_STRATEGY, 'storm', 'by', ...SURENESS, ...LOOK],
  'what-to-buy-next': ['months', 'storm', ...SURENESS, ...LOOK],
  're-seed': ['household', ONE_STRATEGY, 'months', ...SURENESS, ...LOOK],
  'card-by-the-panel': ['household', ONE_STRATEGY, ...LOOK],
  'describe-your-house': LOOK,
};

/** What of a link a page with such words can follow. */
export function handedOn(said: URLSearchParams, words: readonly string[]): URLSearchParams {
  const fits = ([word, text]: readonly [string, string]) =>
    words.includes(word) ||
    (word === 'strategies' && words.includes(ONE_STRATEGY) && text !== '' && !text.includes(','));
  return new URLSearchParams([...said].filter(fits));
}

/** Every link of the bar of pages leads on with what its page can follow of this page's settings. */
export function handOn(said: URLSearchParams): void {
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.page-links a[data-page-words]')) {
    const [file] = link.getAttribute('href')!.split('#');
    const settings = linkText(handedOn(said, link.dataset['pageWords']!.split(',')));
    link.setAttribute('href', settings === '' ? file! : `${file}#${settings}`);
  }
}

/** On a narrow screen the bar is one line to push along: it opens where the page stands in it. */
export function showOwnPlace(): void {
  const own = document.querySelector<HTMLElement>('.page-links [aria-current]');
  const bar = own?.closest('ul');
  if (!own || !bar) return;
  const [at, around] = [own.getBoundingClientRect(), bar.getBoundingClientRect()];
  bar.scrollLeft += at.left + at.width / 2 - (around.left + around.width / 2);
}

/** Words of a link as they stand behind its "#": lists with plain commas. */
export function linkText(said: URLSearchParams): string {
  return said.toString().replaceAll('%2C', ',');
}
