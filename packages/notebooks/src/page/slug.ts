/** Lower-case letters, digits and hyphens, a letter first, at most 36. */
export function slug(text: string): string {
  const plain = text.normalize('NFKD').toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+/, '')
    .slice(0, 36)
    .replace(/-+$/, '');
}
