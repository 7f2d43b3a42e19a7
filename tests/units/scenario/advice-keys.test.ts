/** Needs, unknowns and outage lengths: each slip gets one message that names its line. */
import { describe, expect, it } from 'vitest';
import { findingsOf, HOUSE, onlyFinding, read } from './written.ts';

/** The house with lines added at its end; the first of them stands on this line. */
const withLines = (...lines: string[]) => `${HOUSE}${lines.join('\n')}\n`;
const FIRST = HOUSE.split('\n').length;

describe('needs', () => {
  it('have defaults from published guidance', () => {
    const { needs } = read(
      withLines(
        'needs:',
        '  - { id: water, measure: water, persons: 3, circuits: [pump] }',
        '  - { id: talk, measure: power, circuits: [hall] }',
      ),
    ).scenario;
    expect(needs![0]).toMatchObject({ litresPerPersonPerDay: 3.8, storedLitres: 0, hoursWithout: 4 });
    expect(needs![1]).toEqual({ id: 'talk', measure: 'power', circuits: ['hall'] });
  });

  it.each([
    ['{ id: x, measure: power }', 'needs.x', 'no circuit', 'a need that some circuit serves'],
    ['{ id: x, measure: power, circuits: [hal] }', 'needs.x.circuits', '"hal"', 'the id of a circuit'],
    [
      '{ id: x, measure: cold, circuits: [hall] }',
      'needs.x',
      'hall',
      'a circuit with a refrigerator or freezer, a thermostat that cools',
    ],
    [
      '{ id: x, measure: water, persons: 2 }',
      'needs.x',
      'no circuit',
      'a pump’s circuit, or storedLitres above 0',
    ],
    [
      '{ id: x, measure: warmth, circuits: [hall] }',
      'needs.x.room',
      'hall',
      'heatLossWPerC, timeConstantHours and sources: nothing on these circuits is a thermostat that heats',
    ],
    [
      '{ id: x, measure: warmth, room: { heatLossWPerC: 150, timeConstantHours: 20, sources: [{ circuit: hall, heatW: 900 }] } }',
      'needs.x.room.sources.0',
      'heatW with hall',
      'heatPerW: heatW is for a thermostat that heats',
    ],
  ])('%s is told once', (line, path, found, expected) => {
    const finding = onlyFinding(withLines('needs:', `  - ${line}`));
    expect(finding).toMatchObject({ path, found, expected });
    expect(finding.line).toBe(FIRST + 1);
  });

  it.each([
    ['{ id: x, measure: water, persons: 0, storedLitres: 9 }', 'needs.x.persons'],
    ['{ id: x, measure: water, persons: 2, storedLitres: -9 }', 'needs.x.storedLitres'],
    ['{ id: x, measure: comfort }', 'needs.x.measure'],
    [
      '{ id: x, measure: coolth, room: { heatLossWPerC: 1, timeConstantHours: 9, sources: [{ circuit: hall }] } }',
      'needs.x.room.sources.0',
    ],
  ])('%s is told with what is expected', (line, path) => {
    expect(onlyFinding(withLines('needs:', `  - ${line}`))).toMatchObject({ path });
  });

  it('that cannot be read hide none of the others', () => {
    const findings = findingsOf(
      withLines(
        'needs:',
        '  - { id: a, measure: comfort }',
        '  - { id: b, measure: power, circuits: [hal] }',
        '  - { id: c, measure: water, persons: 0 }',
        '  - { id: d, measure: cold, circuits: [hall] }',
      ),
    );
    expect(findings.map(({ path, line }) => [path, line]).sort()).toEqual([
      ['needs.a.measure', FIRST + 1],
      ['needs.b.circuits', FIRST + 2],
      ['needs.c.persons', FIRST + 3],
      ['needs.d', FIRST + 4],
    ]);
  });

  it('of the same name are told apart, an empty list is refused', () => {
    const twice = findingsOf(
      withLines(
        'needs:',
        '  - { id: talk, measure: power, circuits: [hall] }',
        '  - { id: talk, measure: power, circuits: [hall] }',
      ),
    );
    expect(twice.map((f) => f.expected)).toContain('an id used once only among the needs');
    expect(onlyFinding(withLines('needs: []'))).toMatchObject({ path: 'needs' });
  });
});

describe('unknowns', () => {
  it('are ranges, the lower number first', () => {
    expect(read(withLines('unknowns: { idleW: [20, 40] }')).scenario.unknowns).toEqual({ idleW: [20, 40] });
    expect(onlyFinding(withLines('unknowns: { idleW: [40, 20] }'))).toMatchObject({
      path: 'unknowns.idleW',
      expected: 'two numbers, the lower one first',
      line: FIRST,
    });
    for (const [slip, expected] of [
      ['20', 'a list of two numbers'],
      ['[20]', 'a list with a length of at least 2'],
      ['[20, 30, 40]', 'a list with a length of at most 2'],
    ])
      expect(onlyFinding(withLines(`unknowns: { idleW: ${slip} }`)).expected).toBe(expected);
    expect(onlyFinding(withLines('unknowns: { helth: [0.9, 1] }'))).toMatchObject({ path: 'unknowns.helth' });
    expect(onlyFinding(withLines('unknowns: { healthFraction: [0.9, 1.2] }')).path).toContain(
      'unknowns.healthFraction',
    );
  });
});

describe('outageLengths', () => {
  it.each([
    ['{ published: us-2017 }', 'outageLengths'],
    ['{ kinds: [{ perYear: 1, hours: [2, 30] }] }', 'outageLengths'],
    ['{ kinds: [{ perYear: 1, meanHours: 5, sdHours: 9 }] }', 'outageLengths'],
  ])('%s can be used', (value, key) => {
    expect(read(withLines(`${key}: ${value}`)).scenario.outageLengths).toBeDefined();
  });

  it.each([
    ['{}', 'outageLengths', 'either published or kinds'],
    [
      '{ published: us-2017, kinds: [{ perYear: 1, meanHours: 2 }] }',
      'outageLengths',
      'either published or kinds',
    ],
    ['{ kinds: [{ perYear: 1 }] }', 'outageLengths.kinds.0', 'either meanHours or a list of hours'],
    [
      '{ kinds: [{ perYear: 1, hours: [2], meanHours: 2 }] }',
      'outageLengths.kinds.0',
      'either meanHours or a list of hours',
    ],
    [
      '{ kinds: [{ perYear: 1, hours: [2], sdHours: 2 }] }',
      'outageLengths.kinds.0.sdHours',
      'sdHours beside meanHours only',
    ],
  ])('%s is told once', (value, path, expected) => {
    const finding = onlyFinding(withLines(`outageLengths: ${value}`));
    expect(finding).toMatchObject({ path, expected });
    expect(finding.line).toBe(FIRST);
  });

  it.each([
    '{ kinds: [] }',
    '{ kinds: [{ perYear: -1, meanHours: 2 }] }',
    '{ kinds: [{ perYear: 1, hours: [] }] }',
  ])('%s is told with its line', (value) =>
    expect(onlyFinding(withLines(`outageLengths: ${value}`)).line).toBe(FIRST),
  );
});
