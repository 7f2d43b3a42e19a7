/** Puts a household into a built page, and locks the page. */
import { createHash } from 'node:crypto';
import type { Scenario } from '@rideout/sim';
import { escapedText } from './escaped-text.ts';
import { EMBEDDED_ID, type EmbeddedStudy } from '../page/embedded-study.ts';

const CHARSET = '<meta charset="utf-8">'; // first in the head, before any text that is not ours

const BODY = '<body>';

const MOST_MARKS = 24; // values in one template, at most

/**
 * A whole page: the shell with its policy, its title and its data. Names in the data can never become markup.
 *
 * @param links markup that leads to other pages of the folder, before the page itself
 */
export function fillShell(shell: string, study: EmbeddedStudy, links = ''): string {
  const html = withLinks(shell.replaceAll('\r\n', '\n'), links);
  return insertAfterCharset(withStudy(html, study), policyMeta(html));
}

/** The page with its title and its data. */
export function withStudy(html: string, study: EmbeddedStudy): string {
  const data = `<script type="application/json" id="${EMBEDDED_ID}">${jsonText(study)}</script>`;
  return insertAfterCharset(titled(html, study.scenario), data);
}

/** JSON whose text cannot end its element, begin another, or break a line in a script. */
export function jsonText(value: unknown): string {
  return JSON.stringify(value).replace(
    /[<>&\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/**
 * Content-Security-Policy: the page's own scripts, named by their SHA-256, its own worker, and nothing from anywhere.
 * Styles may be inline, as both chart libraries write them; a style can fetch nothing under this policy.
 */
function policyMeta(html: string): string {
  const scripts = [...html.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(([, code]) => sha256(code!));
  const policy = [
    `default-src 'none'`,
    `script-src ${scripts.join(' ')}`,
    `script-src-attr 'unsafe-hashes' ${templateMarks().join(' ')}`,
    `worker-src blob:`,
    `connect-src 'none'`,
    `style-src 'unsafe-inline'`,
    `img-src data: blob:`,
    `font-src data:`,
    `base-uri 'none'`,
    `form-action 'none'`,
  ].join('; ');
  return `<meta http-equiv="Content-Security-Policy" content="${policy}">`;
}

/**
 * The element templates write "::0", "::1", … where a handler will be set as a property, and browsers take such a mark
 * for an inline handler. These marks are allowed by name; none is a script that could run.
 */
function templateMarks(): string[] {
  return Array.from({ length: MOST_MARKS }, (_, i) => sha256(`::${i}`));
}

function sha256(code: string): string {
  return `'sha256-${createHash('sha256').update(code, 'utf8').digest('base64')}'`;
}

/** "How many days?" becomes "How many days? – The Elm Street house". */
function titled(html: string, scenario: Scenario): string {
  const end = html.indexOf('</title>');
  return end < 0 ? html : html.slice(0, end) + titleEnding(scenario) + html.slice(end);
}

/** What a page's title says of its household. */
export function titleEnding(scenario: Pick<Scenario, 'title'>): string {
  return ` – ${escapedText(scenario.title)}`;
}

function withLinks(html: string, links: string): string {
  if (links === '') return html;
  const at = html.lastIndexOf(BODY);
  if (at < 0) throw new Error('the page template has lost its body');
  return html.slice(0, at + BODY.length) + links + html.slice(at + BODY.length);
}

export function insertAfterCharset(html: string, text: string): string {
  const at = html.indexOf(CHARSET);
  if (at < 0) throw new Error('the page template has lost its charset line');
  return html.slice(0, at + CHARSET.length) + text + html.slice(at + CHARSET.length);
}
