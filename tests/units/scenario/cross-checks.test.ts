/** Names that must exist and parts that must fit each other. */
import { describe, expect, it } from 'vitest';
import { findingsOf, HOUSE, lineWith, onlyFinding, spoilt } from './written.ts';

describe('names', () => {
  it.each([
    ['id: west\n', 'id: east\n', 'units.east.id', 'an id used once only among the units'],
    ['id: hall', 'id: kitchen', 'circuits.kitchen.id', 'an id used once only among the circuits'],
    [
      'id: careful',
      'id: everything',
      'strategies.everything.id',
      'an id used once only among the strategies',
    ],
    ['id: more', 'id: as-it-is', 'alternatives.as-it-is.id', 'an id used once only among the alternatives'],
  ])('of a kind are used once: %s as %s', (part, by, path, expected) => {
    const [finding] = findingsOf(spoilt(part, by));
    expect(finding).toMatchObject({ path, expected, line: lineWith(part.trim()) });
  });

  it('of two appliances on a circuit differ', () => {
    const text = spoilt('- { typical: lamp, count: 3 }', '- { typical: lamp }\n      - { typical: lamp }');
    expect(onlyFinding(text)).toMatchObject({
      line: lineWith('typical: lamp') + 1,
      found: 'a second lamp',
      expected: 'an id of its own, or one entry with count',
    });
  });

  it('of the household as described is not given to something else', () => {
    const text = spoilt('  - id: as-it-is\n    title: As it is\n', '').replace(
      'id: more',
      'id: as-described',
    );
    expect(onlyFinding(text).expected).toBe('another id: as-described is the household without changes');
  });

  it.each([
    ['unit: west', 'unit: wets', 'strategies.careful.rules.1.unit', 'Did you mean west?'],
    [
      'circuits: { tiers: [3] }',
      'circuits: { ids: [hal, pump] }',
      'strategies.careful.rules.0.circuits.ids',
      'Did you mean hall?',
    ],
  ])('in a rule exist: %s as %s', (part, by, path, hint) => {
    expect(onlyFinding(spoilt(part, by))).toMatchObject({ path, hint });
  });

  it('in a rule choose at least one circuit', () => {
    expect(
      onlyFinding(spoilt('circuits: { tiers: [3] }', 'circuits: { tiers: [3], legs: [L1] }')),
    ).toMatchObject({
      path: 'strategies.careful.rules.0.circuits',
      found: 'a choice that no circuit matches',
    });
  });
});

describe('site and outage', () => {
  it.each([
    [
      'timeZone: America/New_York',
      'timeZone: America/Boston',
      'site.timeZone',
      'an IANA time zone such as America/New_York',
    ],
    ['months: [1]', 'startLocal: 2026-02-29T12:00', 'outage.startLocal', 'a date that exists'],
    ['months: [1]', 'startLocal: 2026-01-15T24:30', 'outage.startLocal', 'a date that exists'],
    ['months: [1]', 'startLocal: 1850-01-15T12:00', 'outage.startLocal', 'a year from 1950 to 2100'],
    [
      'months: [1]',
      'months: [1]\n  startLocal: 2026-01-15T12:00',
      'outage',
      'either startLocal or months, not both',
    ],
    ['months: [1]', 'months: [1, 2, 1]', 'outage.months', 'each month once'],
    ['  months: [1]\n', '', 'outage', 'months, at least one, or a startLocal'],
    [
      'normals: boston',
      'normals: boston\n  yearFile: year.csv',
      'weather',
      'exactly one of normals, monthly or yearFile',
    ],
  ])('fit: %s as %s', (part, by, path, expected) => {
    expect(onlyFinding(spoilt(part, by))).toMatchObject({ path, expected });
  });
});

describe('units and circuits', () => {
  const westAlone = HOUSE.slice(HOUSE.indexOf('  - id: west'), HOUSE.indexOf('circuits:\n'));

  it.each([
    [
      'leg: L2\n    inverter',
      'leg: L1\n    inverter',
      'units.west.leg',
      'the other leg: each unit of a pair feeds its own',
    ],
    [
      'startFraction: 0.9',
      'startFraction: 0.05',
      'units.east.battery.startFraction',
      'at least cutOffFraction, 0.1',
    ],
    [
      'startFraction: 0.9',
      'reserveFraction: 0.05',
      'units.east.battery.reserveFraction',
      'at least cutOffFraction, 0.1',
    ],
    [
      'startFraction: 0.9',
      'cutOffFraction: 0.5',
      'units.east.battery.restartFraction',
      'a fraction above cutOffFraction',
    ],
    [
      'restoreAboveFraction: 0.7',
      'restoreAboveFraction: 0.5',
      'strategies.careful.rules.0.restoreAboveFraction',
      'a fraction above dropBelowFraction',
    ],
  ])('fit: %s as %s', (part, by, path, expected) => {
    expect(findingsOf(spoilt(part, by))).toContainEqual(expect.objectContaining({ path, expected }));
  });

  it('fit in surge and continuous rating, wherever the anchor is used', () => {
    const findings = findingsOf(spoilt('surgeW: 6000', 'surgeW: 2000'));
    expect(findings.map(({ path, line }) => [path, line])).toEqual([
      ['units.east.inverter.surgeW', lineWith('surgeW')],
      ['units.west.inverter.surgeW', lineWith('*inverter')],
    ]);
  });

  it('of two units on one leg are told the other leg once', () => {
    const findings = findingsOf(spoilt('leg: L2\n    inverter', 'leg: L1\n    inverter'));
    expect(findings.map(({ expected }) => expected)).toContain('a leg that a unit feeds: L1');
  });

  it('of one unit alone leave no leg unfed, no 240 V and nobody to keep watch', () => {
    const findings = findingsOf(HOUSE.replace(westAlone, ''));
    expect(findings.map(({ path, expected }) => `${path}: ${expected}`)).toEqual([
      'circuits.hall.leg: a leg that a unit feeds: L1',
      'circuits.pump.leg: L1: one unit makes no 240 V',
      'strategies.careful.rules.1.unit: the id of a unit',
      'strategies.careful.rules.1.unit: a pair of units: one of them keeps watch while the other sleeps',
    ]);
  });

  it.each([
    ['tier: 1', 'tier: 2', 'tiers 2, 3 only', 'tier: 1'],
    ["{ 'units.*.battery.modules': 2 }", "{ 'circuits.kitchen.tier': 3 }", 'tiers 2, 3 only', 'change:'],
    ["{ 'units.*.battery.modules': 2 }", "{ 'circuits.*.tier': 3 }", 'tier 3 only', 'change:'],
  ])('are not all beside tier 1: %s as %s', (part, by, found, line) => {
    expect(onlyFinding(spoilt(part, by))).toMatchObject({
      path: 'circuits',
      found,
      expected: 'at least one circuit of tier 1: the days end when one of them goes without',
      line: part === 'tier: 1' ? lineWith('circuits:') : lineWith(line),
    });
  });

  it('hold no appliance that cannot be', () => {
    const text = spoilt('runningW: 12', 'runningW: 12').replace(
      'kind: steady',
      'kind: scheduled\n        startingW: 5\n        windows: ["07:00-08:00"]',
    );
    expect(onlyFinding(text)).toMatchObject({
      path: 'circuits.hall.appliances.1',
      expected: 'one that a house can have',
    });
  });
});
