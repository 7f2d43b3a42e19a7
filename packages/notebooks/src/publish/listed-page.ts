/** A page as others name it. */
export interface ListedPage {
  /** File name in the same folder. */
  readonly name: string;
  readonly title: string;
  /** The line that its notebook gives for it; may be empty. */
  readonly lead: string;
  /** Of a page that is not made with the others: from what. */
  readonly madeFrom?: string;
}

/** @param notebook the notebook file, as written */
export function listedPage(name: string, notebook: string): ListedPage {
  return {
    name,
    title: textOf(/<title>([\s\S]*?)<\/title>/i.exec(notebook)?.[1]) || name,
    lead: leadOf(notebook),
  };
}

/** The paragraph of class "lead". */
export function leadOf(notebook: string): string {
  return textOf(/<p[^>]*class="[^"]*\blead\b[^"]*"[^>]*>([\s\S]*?)<\/p>/i.exec(notebook)?.[1]);
}

/** Words without their mark-up; what is left is escaped where it is written. */
function textOf(markup = ''): string {
  return plainText(
    markup
      .replace(/<[^>]*>/g, '')
      .replace(/\s+/g, ' ')
      .trim(),
  );
}

const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&' };

/** Signs in the place of how markup writes them. */
export function plainText(text: string): string {
  return text.replace(/&(?:(lt|gt|quot|amp)|#(\d{1,6}));/g, (_, name?: string, code?: string) =>
    name === undefined ? String.fromCodePoint(Number(code)) : NAMED[name]!,
  );
}
