/** Wires, breakers, strings and feeds as people write them: ratings that cannot be, each told once with its line. */
import { describe, expect, it } from 'vitest';
import { HOUSE, lineWith, onlyFinding, read, spoilt } from './written.ts';

const WIRED = HOUSE.replace(
  '  - id: west\n',
  [
    '    wiring: { breakerA: 30, inletA: 30, cordAwg: 10, cordRunM: 6, wireAwg: 10, runM: 12, terminalC: 75 }',
    '    charger: { maxW: 1200, feed: { volts: 120, breakerA: 15 } }',
    '    solar:',
    '      inputLimitW: 2000',
    '      window: { minV: 60, maxV: 250, startV: 80 }',
    '      arrays:',
    '        - peakW: 2000',
    '          tiltDeg: 30',
    '          azimuthDeg: 180',
    '          string: { openCircuitV: 40, maximumPowerV: 33, inSeries: 5 }',
    '  - id: west\n',
  ].join('\n'),
)
  .replace(
    '{ id: kitchen, leg: L1,',
    '{ id: kitchen, breakerA: 20, wireAwg: 12, runM: 9, sharedNeutralWith: hall, leg: L1,',
  )
  .replace('  longitudeDeg: -71\n', '  longitudeDeg: -71\n  recordLowC: -25\n  recordHighC: 38\n');

function only(part: string, by: string) {
  if (!WIRED.includes(part)) throw new Error(`nothing to spoil: ${part}`);
  return onlyFinding(WIRED.replace(part, by));
}

describe('wires, breakers, strings and feeds', () => {
  it('are read, and none is filled in where none is written', () => {
    const { scenario } = read(WIRED);
    expect(scenario.units[0]!.wiring).toMatchObject({ cordAwg: 10, runM: 12 });
    expect(scenario.circuits[0]).toMatchObject({ sharedNeutralWith: 'hall', wireAwg: 12 });
    const plain = JSON.stringify(read(HOUSE).scenario);
    for (const key of ['wiring', 'wireAwg', 'runM', 'window', 'string', 'terminalC', 'recordLowC', 'feed'])
      expect(plain).not.toContain(`"${key}"`);
  });

  it('take the largest sizes in quotes', () => {
    expect(read(WIRED.replace('cordAwg: 10', "cordAwg: '1/0'")).scenario.units[0]!.wiring?.cordAwg).toBe(
      '1/0',
    );
  });

  const sizes = 'one of 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, "1/0", "2/0", "3/0", "4/0"';
  it.each([
    ['cordAwg: 10', 'cordAwg: 99', 'units.east.wiring.cordAwg', '99', sizes, 'wiring:'],
    ['wireAwg: 12', 'wireAwg: 13', 'circuits.kitchen.wireAwg', '13', sizes, 'id: kitchen'],
    ['breakerA: 30', 'breakerA: 0', 'units.east.wiring.breakerA', '0', 'a number above 0', 'wiring:'],
    ['breakerA: 20', 'breakerA: 0', 'circuits.kitchen.breakerA', '0', 'a number above 0', 'id: kitchen'],
    [
      'breakerA: 15',
      'breakerA: -15',
      'units.east.charger.feed.breakerA',
      '-15',
      'a number above 0',
      'charger:',
    ],
    ['inletA: 30', 'inletA: 30 A', 'units.east.wiring.inletA', '"30 A"', 'a number', 'wiring:'],
    ['runM: 9', 'runM: 0', 'circuits.kitchen.runM', '0', 'a number above 0', 'id: kitchen'],
    ['terminalC: 75', 'terminalC: 90', 'units.east.wiring.terminalC', '90', 'one of 60, 75', 'wiring:'],
    ['volts: 120', 'volts: 230', 'units.east.charger.feed.volts', '230', 'one of 120, 240', 'charger:'],
    ['maxV: 250', 'maxV: 50', 'units.east.solar.window.maxV', '50', 'a voltage above minV', 'window:'],
    ['startV: 80', 'startV: 300', 'units.east.solar.window.startV', '300', 'a voltage below maxV', 'window:'],
    [
      'maximumPowerV: 33',
      'maximumPowerV: 41',
      'units.east.solar.arrays.0.string.maximumPowerV',
      '41',
      'a voltage below openCircuitV',
      'string:',
    ],
    [
      'inSeries: 5',
      'inSeries: 0',
      'units.east.solar.arrays.0.string.inSeries',
      '0',
      'a number of at least 1',
      'string:',
    ],
    [
      'sharedNeutralWith: hall',
      'sharedNeutralWith: hal',
      'circuits.kitchen.sharedNeutralWith',
      '"hal"',
      'the id of a circuit',
      'id: kitchen',
    ],
    [
      'sharedNeutralWith: hall',
      'sharedNeutralWith: kitchen',
      'circuits.kitchen.sharedNeutralWith',
      '"kitchen"',
      'the id of the other circuit',
      'id: kitchen',
    ],
    [
      'sharedNeutralWith: hall',
      'sharedNeutralWith: pump',
      'circuits.kitchen.sharedNeutralWith',
      '"pump"',
      'a pair of 120 V circuits: a circuit on both legs has no neutral to share',
      'id: kitchen',
    ],
    [
      'recordHighC: 38',
      'recordHighC: -30',
      'site.recordHighC',
      '-30',
      'a number of at least -10',
      'recordHighC',
    ],
    [
      'recordLowC: -25',
      'recordLowC: 30\n  elevationM: 5',
      'site.recordHighC',
      '20',
      'a temperature above recordLowC, 30',
      'recordHighC',
    ],
  ])('%s as %s is told once, with its line', (part, by, path, found, expected, line) => {
    const text = part === 'recordLowC: -25' ? WIRED.replace('recordHighC: 38', 'recordHighC: 20') : WIRED;
    const finding = onlyFinding(text.replace(part, by));
    expect(finding).toMatchObject({ path, found, expected });
    expect(finding.line).toBe(lineWith(line, text.replace(part, by)));
  });

  it('misspelt are recognised', () => {
    expect(only('cordAwg: 10', 'cordAWG: 10').hint).toBe('Did you mean cordAwg?');
    expect(only('sharedNeutralWith: hall', 'sharedNeutralWith: hal').hint).toBe('Did you mean hall?');
  });
});

describe('impossible ratings and circuits on no leg', () => {
  it('surge below continuous is told at each unit that has it', () => {
    const finding = onlyFinding(
      spoilt('inverter: *inverter', 'inverter: { continuousW: 3000, surgeW: 2500, idleW: 20 }'),
    );
    expect(finding).toMatchObject({
      path: 'units.west.inverter.surgeW',
      found: '2500',
      expected: 'at least continuousW, 3000',
    });
  });

  it('a leg that is none is told with those that are', () => {
    expect(onlyFinding(spoilt('id: hall\n    leg: L2', 'id: hall\n    leg: L3'))).toMatchObject({
      path: 'circuits.hall.leg',
      found: '"L3"',
      expected: 'one of "L1", "L2", "both"',
      line: lineWith('id: hall') + 1,
    });
  });
});
