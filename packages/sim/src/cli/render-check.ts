import {
  SEVERITIES,
  SEVERITY_WORDS,
  type CheckFinding,
  type CheckReport,
  type Severity,
} from '../advice/checks/check-report.ts';
import { counted } from './counted.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

/** A check for a terminal: findings by severity, what nothing was found about, what could not be looked at. */
export function renderCheck(report: CheckReport, look: TerminalLook): string {
  const { provenance, watchedDays } = report;
  return renderFramed(
    {
      provenance,
      about: [
        `What to look into before it is trusted: “${report.alternativeTitle}”, with everything switched on, the first ${counted(watchedDays, 'day')} of ${counted(provenance.draws, 'outage')} watched minute by minute.`,
      ],
      headline: [headline(report)],
      body: (style) =>
        [
          ...SEVERITIES.flatMap((severity) => findingLines(report, severity, look, style)),
          ...subjectLines(report, look, style),
          ...uncheckedLines(report, look, style),
        ].slice(0, -1),
      caution: report.caution,
    },
    look,
  );
}

function headline({ findings, unchecked }: CheckReport): string {
  const counts = SEVERITIES.map((severity) => {
    const count = findings.filter((f) => f.severity === severity).length;
    return `${count} to ${TO[severity]}`;
  });
  return `${counts.join(', ')}; ${unchecked.length} left unchecked.`;
}

const TO: Readonly<Record<Severity, string>> = { mend: 'mend first', watch: 'watch out for', note: 'know' };

function findingLines(
  { findings }: CheckReport,
  severity: Severity,
  look: TerminalLook,
  style: Style,
): string[] {
  const those = findings.filter((f) => f.severity === severity);
  if (those.length === 0) return [];
  const { title, meaning } = SEVERITY_WORDS[severity];
  return [
    ...paragraph(`${title}: ${meaning}`, look.width).map(style.heading),
    '',
    ...those.flatMap((finding, i) => [...oneFinding(finding, i + 1, look, style), '']),
  ];
}

function oneFinding(finding: CheckFinding, number: number, look: TerminalLook, style: Style): string[] {
  const { found, todo, rule, where } = finding;
  const mark = `${number}. `;
  const indent = ' '.repeat(mark.length);
  return [
    ...paragraph(boundUnits(found), look.width, mark),
    ...paragraph(boundUnits(todo), look.width, `${indent}To do: `),
    ...paragraph(boundUnits(`${rule.says} (${rule.source})`), look.width, `${indent}Rule: `).map(style.quiet),
    ...paragraph(where, look.width, `${indent}Where: `).map(style.quiet),
  ];
}

/** Never "all is well": only that it was looked at, and nothing found. */
function subjectLines({ subjects }: CheckReport, look: TerminalLook, style: Style): string[] {
  const quiet = subjects.filter((s) => s.looked > 0 && s.findings === 0);
  if (quiet.length === 0) return [];
  return [
    ...paragraph('Looked at, nothing found', look.width).map(style.heading),
    ...quiet.flatMap(({ title, unchecked }) =>
      paragraph(unchecked > 0 ? `${title} (in part: see below)` : title, look.width, '- '),
    ),
    '',
  ];
}

function uncheckedLines({ unchecked, subjects }: CheckReport, look: TerminalLook, style: Style): string[] {
  if (unchecked.length === 0) return [];
  const titleOf = (id: string) => subjects.find((s) => s.id === id)!.title;
  return [
    ...paragraph('Not checked, for want of a word in the scenario', look.width).map(style.heading),
    ...unchecked.flatMap(({ check, why, keys }) => [
      ...paragraph(`${titleOf(check)}: ${boundUnits(why)}.`, look.width, '- '),
      ...paragraph(`say ${keys.join(', ')}`, look.width, '  ').map(style.quiet),
    ]),
    '',
  ];
}

/** A number and its unit stay on one line. */
function boundUnits(text: string): string {
  return text.replace(/(\d) (?=(?:A|W|V|kWh|AWG|%|°C|h|m|min)\b|%)/gu, '$1\u00a0');
}
