/** A page as others name it. */
export interface ListedPage {
  /** File name in the same folder. */
  readonly name: string;
  /** Its notebook file, as written. */
  readonly notebook: string;
}

export function titleOf({ name, notebook }: ListedPage): string {
  return textOf(/<title>([\s\S]*?)<\/title>/i.exec(notebook)?.[1]) || name;
}

/** Words without their mark-up; what is left is escaped where it is written. */
export function textOf(markup = ''): string {
  const plain = markup
    .replace(/<[^>]*>/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  const named: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&' };
  return plain.replace(/&(lt|gt|quot|amp);/g, (_, name: string) => named[name]!);
}
