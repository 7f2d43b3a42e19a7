/** A file is read whole or every fault in it is told at once, each with its line and the way out. */
import { describe, expect, it } from 'vitest';
import { isScenarioError, wordFinding, wordFindings } from '../../../packages/sim/src/index.ts';
import { findingsOf, HOUSE, lineWith, onlyFinding, read, spoilt } from './written.ts';

describe('a sound file', () => {
  it('is read with every default filled in and typical appliances written out', () => {
    const { scenario, alternatives } = read(HOUSE);
    expect(scenario.units[0]!.battery).toMatchObject({
      modules: 1,
      cutOffFraction: 0.1,
      restartFraction: 0.2,
      place: 'indoors',
    });
    expect(scenario.person.awake).toBe('06:30-22:30');
    expect(scenario.circuits[1]!.appliances[0]).toMatchObject({
      id: 'lamp',
      kind: 'steady',
      runningW: 9,
      count: 3,
    });
    expect(alternatives.map((a) => a.id)).toEqual(['as-it-is', 'more']);
    expect(alternatives[1]!.scenario.units.map((u) => u.battery.modules)).toEqual([2, 2]);
  });

  it('may repeat a block by an anchor', () => {
    const { units } = read(HOUSE).scenario;
    expect(units[1]!.inverter).toEqual(units[0]!.inverter);
  });

  it('may be JSON with comments, a trailing comma and a byte order mark', () => {
    const { units, ...rest } = JSON.parse(JSON.stringify(plain())) as { units: unknown };
    const text = `\uFEFF// a house\n{ /* two units */ "units": ${JSON.stringify(units)},\n${JSON.stringify(rest).slice(1, -1)},\n}`;
    expect(read(text, 'house.json').scenario).toEqual(read(HOUSE).scenario);
  });

  it('means the same with Windows line ends', () => {
    expect(read(HOUSE.replaceAll('\n', '\r\n')).scenario).toEqual(read(HOUSE).scenario);
  });

  it('gets the household as described in front when every alternative changes something', () => {
    const { alternatives } = read(spoilt('  - id: as-it-is\n    title: As it is\n', ''));
    expect(alternatives.map((a) => a.id)).toEqual(['as-described', 'more']);
  });
});

/** The house as the file's plain data: typical appliances and all. */
function plain(): unknown {
  return read(HOUSE).document.value;
}

describe('several faults', () => {
  it('are told at once, in the order of their lines, each with line, path, what was found and expected, and the likely slip', () => {
    const text = HOUSE.replace('continuousW: 3000', 'continuousW: 3 kW')
      .replace('startFraction: 0.9', 'startFraction: 90')
      .replace('horizonDays: 7', 'horizenDays: 7')
      .replace('tier: 2', 'tier: 9')
      .replace('longitudeDeg: -71', 'longitudeDeg: west');
    expect(wordFindings(findingsOf(text))).toBe(
      [
        '6 things need mending:',
        '  house.yaml:6: site.longitudeDeg: found "west"; expected a number.',
        '  house.yaml:12: outage.horizenDays: found a key that is not known here; expected one of the known keys. Did you mean horizonDays?',
        '  house.yaml:17: units.east.inverter.continuousW: found "3 kW"; expected a number. Write 3000: continuousW is in watts.',
        '  house.yaml:22: units.east.battery.startFraction: found 90; expected a number of at most 1. For 90 percent write 0.9.',
        '  house.yaml:25: units.west.inverter.continuousW: found "3 kW"; expected a number. Write 3000: continuousW is in watts.',
        '  house.yaml:32: circuits.hall.tier: found 9; expected a number of at most 5.',
      ].join('\n'),
    );
  });

  it('in parts that fit by themselves are told beside those of parts that do not', () => {
    const text = HOUSE.replace('latitudeDeg: 42', 'latitudeDeg: north')
      .replace('typical: kettle', 'typical: kettel')
      .replace('horizonDays: 7', 'horizonDays: 7\n  year: 1')
      .replace('title: Everything', "title: ''")
      .replace('unit: west, during', 'unit: wets, during')
      .replace("'units.*.battery.modules': 2", "'units.*.battery.moduls': 2");
    const told = findingsOf(text).map(({ line, path }) => `${line}: ${path}`);
    const at = (part: string) => lineWith(part, text);
    expect(told.sort()).toEqual(
      [
        `${at('north')}: site.latitudeDeg`,
        `${at('year: 1')}: outage.year`,
        `${at('kettel')}: circuits.pump.appliances.0.typical`,
        `${at("title: ''")}: strategies.everything.title`,
        `${at('wets')}: strategies.careful.rules.1.unit`,
        `${at('moduls')}: units.east.battery.moduls`,
        `${at('moduls')}: units.west.battery.moduls`,
      ].sort(),
    );
  });

  it('of the household are not told again of its alternatives', () => {
    const text = HOUSE.replace('America/New_York', 'Nowhere/Land').replace('surgeW: 6000', 'surgeW: 600');
    expect(findingsOf(text).map(({ path }) => path)).toEqual([
      'site.timeZone',
      'units.east.inverter.surgeW',
      'units.west.inverter.surgeW',
    ]);
  });

  it('are one message to whoever catches them', () => {
    let caught: unknown;
    try {
      read('rideout: 1');
    } catch (error) {
      caught = error;
    }
    expect(isScenarioError(caught)).toBe(true);
    expect((caught as Error).message).toContain(
      '7 things need mending:\n  house.yaml:1: title: found nothing; expected a text.',
    );
  });
});

describe('a key', () => {
  it('that is not known is told with the nearest that is', () => {
    expect(onlyFinding(spoilt('tier: 2', 'tier: 2\n    graceMinuts: 5'))).toMatchObject({
      line: lineWith('tier: 2') + 1,
      path: 'circuits.hall.graceMinuts',
      hint: 'Did you mean graceMinutes?',
    });
  });

  it.each([
    ['idleW: 25', 'idleWatts: 25', 'idleW, which is missing', 'Did you mean idleW?'],
    [
      'surgeW: 6000',
      'surgeKW: 6',
      'surgeW, which is missing',
      'Did you mean surgeW? It is in watts: times 1000.',
    ],
    [
      'surgeW: 6000',
      'surgkW: 6',
      'surgeW, which is missing',
      'Did you mean surgeW? It is in watts: times 1000.',
    ],
  ])('%s, written as %s, is one slip and told once', (part, by, expected, hint) => {
    const text = spoilt(part, by).replace('*inverter', '{ continuousW: 1, surgeW: 2, idleW: 3 }');
    expect(onlyFinding(text)).toMatchObject({ found: 'a key that is not known here', expected, hint });
  });

  it('in other units is told with the key of the same stem, and the factor', () => {
    expect(
      onlyFinding(spoilt('{ capacityWh: 3000, maxChargeW', '{ capacityKWh: 3, maxChargeW')),
    ).toMatchObject({
      path: 'units.east.battery.module.capacityKWh',
      expected: 'capacityWh, which is missing',
      hint: 'Did you mean capacityWh? It is in watt-hours: times 1000.',
    });
    expect(onlyFinding(spoilt('startFraction: 0.9', 'startPercent: 90'))).toMatchObject({
      expected: 'one of the known keys',
      hint: 'Did you mean startFraction? It is a fraction: 80 percent are 0.8.',
    });
  });

  it('of a rule or appliance is looked for among those of its own kind', () => {
    expect(
      onlyFinding(
        spoilt(
          "unit: west, during: ['23:00-05:00']",
          "unit: west, durring: ['23:00-05:00'], during: ['23:00-05:00']",
        ),
      ).hint,
    ).toBe('Did you mean during?');
    expect(onlyFinding(spoilt('runningW: 12', 'runningW: 12\n        runingW: 5')).hint).toBe(
      'Did you mean runningW?',
    );
  });

  it('with nothing behind it is told as such', () => {
    expect(
      onlyFinding(
        spoilt('surgeW: 6000', 'surgeW:').replace('*inverter', '{ continuousW: 1, surgeW: 2, idleW: 3 }'),
      ),
    ).toMatchObject({
      path: 'units.east.inverter.surgeW',
      found: 'nothing',
      expected: 'a number',
    });
  });

  it('that stands twice in a block is refused, in YAML and in JSON', () => {
    expect(onlyFinding(`${HOUSE}title: Again\n`).found).toBe('a second "title" in one block');
    expect(onlyFinding(`${HOUSE}"title" : Again\n`).found).toBe('a second "title" in one block');
    expect(onlyFinding('{\n"rideout": 1,\n"rideout": 1}', 'house.json')).toMatchObject({
      line: 3,
      found: 'a second "rideout" in one block',
    });
  });
});

describe('a number', () => {
  it('of a day below an hour is told the least as people write it', () => {
    expect(onlyFinding(spoilt('horizonDays: 7', 'horizonDays: 0.01')).expected).toBe(
      'a number of at least 1/24 (an hour)',
    );
  });

  it.each([
    ['.nan', 'NaN'],
    ['.inf', 'Infinity'],
    ['1e400', 'Infinity'],
    ['2e6', '2000000'],
    ['-1', '-1'],
    ['"12"', '"12"'],
    ['[12]', '[12]'],
    ['true', 'true'],
  ])('%s is no watts of an appliance', (written, found) => {
    expect(onlyFinding(spoilt('runningW: 12', `runningW: ${written}`))).toMatchObject({
      path: 'circuits.hall.appliances.1.runningW',
      found,
    });
  });

  it.each([
    ['startFraction: 80%', 'For 80 percent write 0.8.'],
    ['startFraction: 80', 'For 80 percent write 0.8.'],
    ["startFraction: '0.8'", "Write the number alone; the unit is in the key's name."],
  ])('%s gets the hint %s', (written, hint) => {
    expect(onlyFinding(spoilt('startFraction: 0.9', written)).hint).toBe(hint);
  });

  it.each([
    ['3 kW', 'Write 3000: runningW is in watts.'],
    ['0.012kW', 'Write 12: runningW is in watts.'],
    ['12 W', "Write the number alone; the unit is in the key's name."],
    ['12,5', 'Write 12.5: decimals have a point.'],
    ['1,500', 'Write it without a comma: 1500, or 1.500.'],
  ])('written as %s gets the hint %s', (written, hint) => {
    expect(onlyFinding(spoilt('runningW: 12', `runningW: ${written}`)).hint).toBe(hint);
  });
});

describe('a key that is a number', () => {
  it('is told as the rest of a number with a decimal comma', () => {
    const finding = onlyFinding(spoilt('runningW: 12', 'runningW: 12\n        5:'));
    expect(finding.hint).toBe('Was that the rest of a number? Decimals have a point: 42.4, not 42,4.');
  });
});

describe('a word', () => {
  it('that names a kind of appliance or rule wrongly is told with the ones there are', () => {
    const kinds = 'one of steady, duty-cycled, events, scheduled, lights, thermostat, measured';
    expect(onlyFinding(spoilt('kind: steady', 'kind: steddy'))).toMatchObject({
      found: '"steddy"',
      expected: kinds,
      hint: 'Did you mean steady?',
    });
    expect(onlyFinding(spoilt('- kind: steady\n', '- title: A lamp\n'))).toMatchObject({
      path: 'circuits.hall.appliances.1.kind',
      found: 'nothing',
      expected: kinds,
      hint: 'Or write typical: and a row of data/appliances.csv.',
    });
    expect(onlyFinding(spoilt('by: charge', 'by: charging')).expected).toBe(
      'one of charge, clock, sun, ration, sleep, outage',
    );
  });

  it('that names no typical appliance is told once, whatever stands beside it', () => {
    expect(
      onlyFinding(spoilt('typical: kettle', 'typical: kettel, usesPerDay: 3, minutesPerUse: 5')),
    ).toMatchObject({
      line: lineWith('typical: kettle'),
      path: 'circuits.pump.appliances.0.typical',
      found: '"kettel"',
      hint: 'Did you mean kettle?',
    });
  });

  it.each([
    ['leg: L2\n    tier', 'leg: L3\n    tier', 'circuits.hall.leg', 'one of "L1", "L2", "both"'],
    [
      "'23:00-05:00'",
      "'23:00-25:00'",
      'strategies.careful.rules.1.during.0',
      'a window of local clock time such as "06:30-22:00"',
    ],
    [
      'id: hall',
      'id: The Hall',
      'circuits.1.id',
      'lower-case letters, digits and hyphens, starting with a letter',
    ],
    ['months: [1]', 'months: []', 'outage.months', 'a list with a length of at least 1'],
    ['months: [1]', 'months: [13]', 'outage.months.0', 'a number of at most 12'],
    [
      'months: [1]',
      'startLocal: 15 January',
      'outage.startLocal',
      'a local date and time such as 2026-01-15T18:00',
    ],
    ['rideout: 1', 'rideout: 2', 'rideout', '1'],
    ['title: A small house', "title: ''", 'title', 'a text with a length of at least 1'],
  ])('%s written as %s is no good at %s', (part, by, path, expected) => {
    const finding = onlyFinding(spoilt(part, by));
    expect(finding.expected).toBe(expected);
    expect(finding.path.replace('The Hall', '1')).toBe(path);
  });
});

describe('control characters', () => {
  it.each([
    ['title: A small house', 'title: "A \\e[31mred house"', 'title', '"A \\u001b[31mred house"'],
    ['title: Everything', 'title: "Every\\u009bthing"', 'strategies.everything.title', '"Every\\u009bthing"'],
    ['title: A small house', 'title: x\nnotes: "\\a"', 'notes', '"\\u0007"'],
    ['  latitudeDeg: 42', '  latitudeDeg: 42\n  place: "\\0"', 'site.place', '"\\u0000"'],
  ])('written %s as %s are refused, and spelt out where they are told', (part, by, path, found) => {
    const finding = onlyFinding(spoilt(part, by));
    expect(finding).toMatchObject({ path, expected: 'a text without control characters' });
    expect(wordFinding(finding)).toContain(`found ${found}; expected`);
  });

  it('in keys are spelt out; a title over two lines is none of them', () => {
    const told = wordFinding(onlyFinding(spoilt('tier: 2', 'tier: 2\n    "gr\\eace": 1')));
    expect(told).toContain('circuits.hall.gr\\u001bace: found a key that is not known here');
    expect(read(spoilt('title: A small house', 'title: >\n  A small\n  house')).scenario.title).toBe(
      'A small house\n',
    );
  });
});

describe('a file that is not a scenario at all', () => {
  it.each([
    ['nothing', '', 'nothing'],
    ['a comment', '# hello\n', 'nothing'],
    ['a word', 'hello', '"hello"'],
    ['a list', '- a\n- b\n', '["a","b"]'],
    ['a JSON list', '[1, 2]', '[1,2]'],
  ])('but %s is told so on line 1', (_, text, found) => {
    expect(onlyFinding(text)).toMatchObject({ line: 1, path: '', found, expected: 'a block of keys' });
  });

  it.each([
    ['an alias of nothing', 'rideout: 1\ntitle: *name\n', 2, /^\*name, of which there is no &name above$/],
    ['an alias inside itself', 'rideout: &all\n  title: *all\n', 2, /^\*all inside &all itself$/],
    ['a missing comma', '{\n  "rideout": 1\n  "title": "x"\n}', 3, /comma expected/],
    ['JSON that breaks off', '{"rideout": 1,\n"title"', 2, /colon expected/],
  ])('because of %s is told with the line of the slip', (_, text, line, found) => {
    const [finding] = findingsOf(text);
    expect(finding).toMatchObject({ line, expected: 'text that can be read as YAML or JSON' });
    expect(finding!.found).toMatch(found);
  });

  it.each([
    ['a second document', 'a: 1\n---\nb: 2\n', '2: a second document, parted off by --- or ...'],
    ['an open bracket', 'rideout: 1\nmonths: [1, 2\ntitle: x\n', '3: a bracket that is never closed'],
    ['an open quote', 'a: "x\nb: 1', '2: a quote that is never closed'],
    ['a line set in too far', 'a:\n  b: 1\n   c: 2\n', '2: a line set in otherwise than its block, or with'],
    ['a line set in too little', 'a:\n  - x\n - y\n', '3: a line set in otherwise than its block, or with'],
    [
      'two colons',
      'title: House: mine\n',
      '1: a line set in otherwise than its block, or with a colon too many',
    ],
    ['a reserved sign', 'a: @x\n', '1: a value that begins with @'],
    ['a backslash', 'a: "\\q"\n', '1: \\q in double quotes'],
    ['a slip of another kind', '- a\nb: 1\n', '2: a slip in the layout'],
  ])('because of %s is told once, in words that are not the parser’s', (_, text, told) => {
    const { line, found, expected } = onlyFinding(text);
    expect(`${line}: ${found}`).toContain(told);
    expect(`${found} ${expected}`).not.toMatch(/YAML\.|token|implicit|mapping|scalar|flow/i);
  });

  it('because of tabs is told line by line, without what follows from them', () => {
    const text =
      'rideout: 1\nsite:\n\tlatitudeDeg: 1\n\tlongitudeDeg: 2\noutage:\n  months: [1]\n\thorizonDays: 2\n';
    expect(findingsOf(text).map(({ line, found }) => `${line}: ${found}`)).toEqual([
      '3: a tab at the beginning of the line',
      '4: a tab at the beginning of the line',
      '7: a tab at the beginning of the line',
    ]);
  });

  it('because its aliases multiply past all bounds is refused, not expanded', () => {
    const levels = ['a', 'b', 'c', 'd', 'e', 'f'];
    const text = levels
      .map(
        (name, i) =>
          `${name}: &${name} [${Array(9)
            .fill(i === 0 ? 'x' : `*${levels[i - 1]!}`)
            .join(', ')}]`,
      )
      .join('\n');
    expect(onlyFinding(text).found).toBe('aliases that repeat each other too often');
  });
});

describe('a finding', () => {
  it('without a line or path names the file alone', () => {
    const finding = {
      file: 'house.yaml',
      line: undefined,
      path: '',
      found: 'no file',
      expected: 'a file',
      hint: undefined,
    };
    expect(wordFinding(finding)).toBe('house.yaml: found no file; expected a file.');
  });
});
