/** The page that lists the pages of a folder: no script, nothing to fetch, the household and its provenance said once. */
import { readFileSync } from 'node:fs';
import { CAUTIONS } from '../page/cautions.ts';
import type { EmbeddedStudy } from '../page/embedded-study.ts';
import { escapedText } from './escaped-text.ts';
import type { ListedPage } from './listed-page.ts';
import { madeFrom } from './made-from.ts';

export const CONTENTS_FILE = 'index.html';

/** What each of our pages answers; another page says it itself, in a paragraph of class "lead". */
const ANSWERS: Readonly<Record<string, string>> = {
  'how-many-days.html': 'How long the essentials hold, strategy by strategy, and what changes it most.',
  'which-strategy.html': 'Which strategy keeps what going, for how long, and what it asks of the household.',
  'minute-by-minute.html': 'What happens in one outage: charge, sun, loads and switches, minute by minute.',
  'one-battery-or-two.html': 'What a second battery on each unit gains, in the same outages.',
  'through-the-year.html': 'How the answer changes with the month in which the outage comes.',
  'what-to-buy-next.html': 'What the next rung of the ladder buys, in which order, for how much money.',
  're-seed.html':
    'How surely the answer is known: other seeds, what it hangs on, every outcome to download and repeat.',
  'card-by-the-panel.html': 'What to switch off at which reading: one printed side to hang by the panel.',
  'describe-your-house.html':
    'Your own household, filled in a form; saves the file that all of this is made from.',
};

const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** @param pages in the order in which they are listed */
export function contentsPage(study: EmbeddedStudy, pages: readonly ListedPage[]): string {
  const { scenario } = study;
  const title = escapedText(scenario.title);
  const place = scenario.site.place ? `<p class="soft">${escapedText(scenario.site.place)}</p>` : '';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<link rel="icon" href="data:,">
<title>Pages about ${title}</title>
<style>${houseStyle()}</style>
</head>
<body>
<main>
<h1>${title}</h1>
${place}
<p>Each page is one file that works without any network. Copy the folder to a memory stick; open this page from there.</p>
<ul class="contents">
${pages.map(listItem).join('\n')}
</ul>
<aside class="cautions" aria-labelledby="cautions-title">
<h2 id="cautions-title">Before you rely on this</h2>
<ul>${CAUTIONS.map((text) => `<li>${escapedText(text)}</li>`).join('')}</ul>
</aside>
<p class="provenance">${escapedText(`Made from ${madeFrom(study)}.`)}</p>
</main>
</body>
</html>
`;
}

function listItem({ name, title, lead, madeFrom: from }: ListedPage): string {
  const apart = from === undefined ? '' : `Published at another time, from ${from}.`;
  const lines = [ANSWERS[name] ?? lead, apart].filter((text) => text !== '').map(escapedText);
  const said = lines.length === 0 ? '' : `<br>${lines.join(' ')}`;
  return `<li><p><a href="${encodeURIComponent(name)}"><strong>${escapedText(title)}</strong></a>${said}</p></li>`;
}

function houseStyle(): string {
  return readFileSync(new URL('../style/house-style.css', import.meta.url), 'utf8');
}
