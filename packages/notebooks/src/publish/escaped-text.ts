/** Text as it may stand in markup and in an attribute. */
export function escapedText(text: string): string {
  return text.replace(/[<>&"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
