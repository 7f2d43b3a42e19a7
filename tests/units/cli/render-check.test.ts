import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { renderCheck } from '../../../packages/sim/src/cli/render-check.ts';
import { checkScenario, type CheckReport } from '../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../packages/sim/src/node.ts';

const { scenario } = loadScenario(fileURLToPath(new URL('../../../data/full-house.yaml', import.meta.url)));
const report = checkScenario(scenario, { seed: 'rideout', draws: 2, days: 1 });
const longest = (text: string) => Math.max(...text.split('\n').map((line) => Array.from(line).length));
const inOneLine = (text: string) => text.replace(/\s+/g, ' ');

describe('renderCheck', () => {
  it.each([40, 60, 80, 100])('fits %i columns, in either alphabet', (width) => {
    expect(longest(renderCheck(report, { width, colour: false }))).toBeLessThanOrEqual(width);
    expect(longest(renderCheck(report, { width, colour: false, ascii: true }))).toBeLessThanOrEqual(width);
  });

  it('says the same with colour as without', () => {
    const coloured = renderCheck(report, { width: 80, colour: true });
    expect(coloured).toContain('\u001b[');
    // eslint-disable-next-line no-control-regex
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(renderCheck(report, { width: 80, colour: false }));
  });

  it('is plain ASCII when asked', () => {
    // eslint-disable-next-line no-control-regex
    expect(renderCheck(report, { width: 80, colour: false, ascii: true })).toMatch(/^[\x00-\x7f]+$/);
  });

  it('tells every finding with what to do and its rule, and everything unchecked with its keys', () => {
    const text = inOneLine(renderCheck(report, { width: 100, colour: false }));
    for (const { found, todo, rule } of report.findings) {
      for (const part of [found, todo, rule.source]) expect(text).toContain(inOneLine(part));
    }
    for (const { keys } of report.unchecked) expect(text).toContain(`say ${keys.join(', ')}`);
    expect(text).toContain('licensed electrician');
    expect(text).toContain('seed rideout; draws 2');
  });

  it('that found nothing does not say that all is well', () => {
    const subjects = report.subjects.map((s) => ({ ...s, findings: 0, unchecked: 0, looked: 1 }));
    const quiet: CheckReport = { ...report, findings: [], unchecked: [], subjects };
    const text = inOneLine(renderCheck(quiet, { width: 80, colour: false }));
    expect(text).toContain('0 to mend first, 0 to watch out for, 0 to know; 0 left unchecked.');
    expect(text).toContain('Looked at, nothing found');
    expect(text).toContain('what it did not find is not thereby in order');
  });
});
