/** A scenario from the disk, with the files it names. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadScenario } from '../../../packages/sim/src/node.ts';
import { placeNotes } from '../../../packages/sim/src/weather/place-notes.ts';
import { HOUSE } from '../scenario/written.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'rideout-load-'));
  mkdirSync(join(folder, 'files'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The house with appliances of the shipped table only. */
const HOME = HOUSE.replace('{ typical: lamp, count: 3 }', '{ typical: lights-led }');

const measuredBy = (file: string) =>
  HOME.replace('- kind: steady\n        runningW: 12', `- kind: measured\n        file: ${file}`);

function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

function messageOf(path: string, options?: Parameters<typeof loadScenario>[1]): string {
  try {
    loadScenario(path, options);
  } catch (error) {
    return (error as Error).message.replaceAll(folder, '…');
  }
  throw new Error('it was loaded');
}

describe('loadScenario', () => {
  it('reads a scenario with its shipped weather and appliances', () => {
    const { scenario, notes } = loadScenario(write('house.yaml', HOME));
    expect(notes).toEqual([]);
    expect(scenario.weather.source).toMatchObject({ kind: 'normals' });
    expect(scenario.alternatives.map((a) => a.id)).toEqual(['as-it-is', 'more']);
  });

  it('asks about a site whose clock or weather is of somewhere else', () => {
    const east = loadScenario(write('east.yaml', HOME.replace('longitudeDeg: -71', 'longitudeDeg: 71')));
    expect(east.notes).toEqual([
      'site: the sun at longitudeDeg 71 is 10 hours off the clock of America/New_York; is the sign of longitudeDeg right? East is positive.',
      expect.stringMatching(/^weather\.normals: boston is \d+ km from the site; is it the right place,/),
    ]);
    const south = loadScenario(write('south.yaml', HOME.replace('latitudeDeg: 42', 'latitudeDeg: 40')));
    expect(south.notes).toEqual([expect.stringMatching(/boston is 26\d km from the site/)]);
  });

  it('asks about sizes that no household has, once for all versions, and says what to write', () => {
    const { notes } = loadScenario(write('small.yaml', HOME.replace(/capacityWh: \d+/, 'capacityWh: 2.4')));
    expect(notes).toEqual([
      expect.stringMatching(
        /^units\.\w+\.battery\.module\.capacityWh: 2\.4 Wh is very little; if kilowatt-hours were meant, write 2400\.$/,
      ),
    ]);
  });

  it.each([
    ['Asia/Shanghai', 73.5],
    ['Pacific/Kiritimati', -157.4],
    ['America/New_York', -71],
    ['Pacific/Auckland', 174.8],
  ])('bears the clock of %s at longitude %d', (timeZone, longitudeDeg) => {
    expect(placeNotes({ latitudeDeg: 0, longitudeDeg, timeZone })).toEqual([]);
  });

  it('starts the outage in other months when asked to, instead of at the scenario’s time', () => {
    const path = write('fixed.yaml', HOME.replace('months: [1]', 'startLocal: 2026-01-15T18:00'));
    expect(loadScenario(path, { months: [6, 7] }).scenario.outage).toMatchObject({
      months: [6, 7],
      startLocal: undefined,
    });
  });

  it.each([
    [[13], 'months: 0: found 13; expected a number of at most 12.'],
    [[0.5], 'months: 0: found 0.5; expected a whole number.'],
    [[NaN], 'months: 0: found NaN; expected a number.'],
    [[], 'months: found []; expected a list with a length of at least 1.'],
  ])('refuses the months %j in the words of the schema', (months, told) => {
    expect(messageOf(write('house.yaml', HOME), { months })).toContain(`\n  ${told}`);
  });

  it.each([
    ['a scenario', 'coded.yaml', (path: string) => path],
    ['a profile', 'coded.csv', () => write('naming.yaml', measuredBy('coded.csv'))],
    [
      'a weather year',
      'coded.epw',
      () => write('naming.yaml', HOME.replace('normals: boston', 'yearFile: coded.epw')),
    ],
  ])('tells of %s that is not in UTF-8', (_, name, scenarioOf) => {
    const text = 'title: Küche\ntime,watts\nrué,5\n';
    const told = (bytes: Uint8Array) => {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      return messageOf(scenarioOf(path));
    };
    const utf16 = Buffer.from(`\uFEFF${text}`, 'utf16le');
    expect(told(utf16)).toMatch(/found a text in UTF-16; expected a text in UTF-8\. Save it as UTF-8\.$/);
    expect(told(Buffer.from(utf16).swap16())).toMatch(/found a text in UTF-16;/);
    expect(told(utf16.subarray(2))).toMatch(/found zero bytes, as in UTF-16 or in a file that is no text;/);
    expect(told(Buffer.from(text, 'latin1'))).toMatch(
      /found letters in line 1 that are not UTF-8; .* Save it as UTF-8\.$/,
    );
    expect(told(Buffer.from(text))).not.toMatch(/UTF/);
  });

  it('takes a measured profile from beside the scenario, whatever the working folder', () => {
    const rows = Array.from(
      { length: 48 },
      (_, k) => `2026-01-01 ${String(k >> 1).padStart(2, '0')}:${k % 2 === 0 ? '00' : '30'},${100 + k}`,
    );
    writeFileSync(join(folder, 'files', 'profile.csv'), `time,watts\n${rows.join('\n')}\n`);
    const path = write(
      'measured.yaml',
      HOME.replace(
        '- kind: steady\n        runningW: 12',
        '- kind: measured\n        file: files/profile.csv',
      ),
    );
    const appliance = loadScenario(path).scenario.alternatives[0]!.household.circuits[1]!.appliances[1];
    expect(appliance).toMatchObject({ kind: 'measured', profile: { intervalMinutes: 30 } });
  });

  it.each([
    [
      'a file that is not there',
      () => join(folder, 'nowhere.yaml'),
      /^One thing needs mending:\n {2}…\/nowhere\.yaml: found no file at …\/nowhere\.yaml; expected a file that can be read\.$/,
    ],
    ['a folder', () => folder, /found a folder at …; expected a file that can be read\.$/],
    [
      'a missing weather year',
      () => write('year.yaml', HOME.replace('normals: boston', 'yearFile: files/none.csv')),
      /year\.yaml:9: weather\.yearFile: found no file at …\/files\/none\.csv;/,
    ],
    [
      'a missing profile',
      () =>
        write(
          'profile.yaml',
          HOME.replace('- kind: steady\n        runningW: 12', '- kind: measured\n        file: none.csv'),
        ),
      /profile\.yaml:36: circuits\.hall\.appliances\.1\.file: found no file at …\/none\.csv;/,
    ],
    [
      'an unknown place',
      () => write('place.yaml', HOME.replace('boston', 'bostn')),
      /place\.yaml:9: weather\.normals: found "bostn"; expected a place of data\/normals\.csv, .* Did you mean boston\?$/,
    ],
    [
      'a faulty scenario',
      () => write('faulty.yaml', HOME.replace('tier: 2', 'tier: 0')),
      /faulty\.yaml:32: circuits\.hall\.tier: found 0; expected a number of at least 1\.$/,
    ],
  ])('tells of %s in one message that names it', (_, path, message) => {
    expect(messageOf(path())).toMatch(message);
  });

  it('tells of a weather year that cannot be read, by its name and line', () => {
    writeFileSync(join(folder, 'files', 'broken.csv'), 'hour,sun\n1,bright\n');
    const path = write('broken.yaml', HOME.replace('normals: boston', 'yearFile: files/broken.csv'));
    expect(messageOf(path)).toMatch(/files\/broken\.csv/);
    expect(() => loadScenario(path)).toThrow(expect.objectContaining({ name: 'WeatherFileError' }));
  });

  it('tells everything at once, in the scenario and in what it names', () => {
    writeFileSync(join(folder, 'files', 'odd.csv'), 'time,watts\n00:00,many\n00:30,5\n');
    const alternative = `change: { 'circuits.hall.appliances.1': { kind: measured, file: files/odd.csv } }`;
    const path = write(
      'many.yaml',
      measuredBy('none.csv')
        .replace('America/New_York', 'America/New_Yorc')
        .replace('boston', 'bostn')
        .replace('typical: refrigerator', 'typical: refrigeratr')
        .replace("change: { 'units.*.battery.modules': 2 }", alternative),
    );
    expect(messageOf(path).split('\n')).toEqual([
      '4 things need mending:',
      expect.stringContaining('many.yaml:7: site.timeZone: found "America/New_Yorc"; '),
      expect.stringContaining('many.yaml:9: weather.normals: found "bostn"; '),
      expect.stringContaining('many.yaml:29: circuits.kitchen.appliances.0.typical: found "refrigeratr"; '),
      expect.stringContaining('many.yaml:36: circuits.hall.appliances.1.file: found no file at …/none.csv; '),
      'files/odd.csv cannot be used as a measured profile:',
      '  line 2: the watts are "many"; expected a number',
    ]);
    const unfit = write(
      'unfit.yaml',
      measuredBy('none.csv').replace('latitudeDeg: 42', 'latitudeDeg: north').replace('boston', 'bostn'),
    );
    expect(messageOf(unfit)).toMatch(/^3 things need mending:/);
  });

  it('takes a weather year given beside the scenario from the working folder, and tells when it is not there', () => {
    expect(messageOf(write('house.yaml', HOME), { weatherYear: 'no-such-year.csv' })).toMatch(
      /^ {2}--weather: no-such-year\.csv: found no file at .*no-such-year\.csv;/m,
    );
  });

  it.skipIf(process.getuid?.() === 0)('tells of a file that may not be read', () => {
    const path = write('secret.yaml', HOME);
    chmodSync(path, 0);
    expect(messageOf(path)).toMatch(/a file that cannot be read \(EACCES\)/);
  });
});
