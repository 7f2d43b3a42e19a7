/** Options read strictly, and errors told to people. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ScenarioError } from '../../../packages/sim/src/index.ts';
import { WriteError } from '../../../packages/sim/src/node.ts';
import { minutesFormat } from '../../../packages/sim/src/cli/minutes-format.ts';
import { EXIT, EXIT_HELP } from '../../../packages/sim/src/cli/exit-codes.ts';
import {
  monthList,
  numberWithin,
  positiveNumber,
  someText,
  wholeNumber,
} from '../../../packages/sim/src/cli/option-values.ts';
import { OptionError, reportError } from '../../../packages/sim/src/cli/report-error.ts';

afterEach(() => vi.restoreAllMocks());

/** Exit code and words for an error. */
function told(error: unknown): { code: number; words: string } {
  let words = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    words += String(text);
    return true;
  });
  return { code: reportError(error), words };
}

describe('an error', () => {
  const finding = {
    file: 'house.yaml',
    line: 3,
    path: 'title',
    found: '1',
    expected: 'a text',
    hint: undefined,
  };

  it.each([
    [
      'in a scenario',
      new ScenarioError([finding]),
      EXIT.badInput,
      'One thing needs mending:\n  house.yaml:3: title: found 1; expected a text.\n',
    ],
    ['in an option', new OptionError('--draws: found "x"'), EXIT.badInput, '--draws: found "x"\n'],
    [
      'in writing',
      new WriteError('nothing was written to "out": the disk is full'),
      EXIT.cannotWrite,
      'nothing was written to "out": the disk is full\n',
    ],
  ])('%s is told in its own words alone', (_, error, code, words) => {
    expect(told(error)).toEqual({ code, words });
  });

  it.each(['WeatherFileError', 'ProfileFileError', 'PublishError', 'AggregateError'])(
    'named %s is one of input',
    (name) => {
      expect(told(Object.assign(new Error('said plainly'), { name }))).toEqual({
        code: EXIT.badInput,
        words: 'said plainly\n',
      });
    },
  );

  it('of our own asks to be reported, with its stack', () => {
    const { code, words } = told(new TypeError('x is not a function'));
    expect(code).toBe(EXIT.ourFault);
    expect(words).toMatch(
      /^A fault in rideout, not in your scenario\. Please report it with what follows\.\nTypeError: x is not a function\n\s+at /,
    );
    expect(told('a thrown text')).toEqual({
      code: EXIT.ourFault,
      words: 'A fault in rideout: a thrown text\n',
    });
  });

  it('has an exit code that the help explains', () => {
    for (const code of Object.values(EXIT))
      expect(EXIT_HELP).toMatch(new RegExp(`^ {2}${code} {2,4}\\S`, 'm'));
  });
});

describe('the value of an option', () => {
  it.each(['', ' ', 'x', '1.5', '-1', '11', '1e9', 'NaN', 'Infinity', '5 draws'])(
    '%j is no whole number from 0 to 10',
    (text) => {
      expect(() => wholeNumber('--n', 0, 10)(text)).toThrow(
        new OptionError(`--n: found ${JSON.stringify(text)}; expected a whole number from 0 to 10`),
      );
    },
  );

  it('is a whole number within its limits, both included', () => {
    expect(['0', '7', '10'].map(wholeNumber('--n', 0, 10))).toEqual([0, 7, 10]);
  });

  it.each(['0', '-0.5', 'x', '', 'Infinity'])('%j is no number above 0', (text) => {
    expect(() => positiveNumber('--within')(text)).toThrow(OptionError);
  });

  it('is a number within its limits, both included; one without an upper limit is still a number', () => {
    const confidence = numberWithin('--confidence', 0.5, 0.99);
    expect(['0.5', '0.9', '0.99'].map(confidence)).toEqual([0.5, 0.9, 0.99]);
    for (const text of ['0.49', '1', '', ' ', 'x', 'NaN'])
      expect(() => confidence(text)).toThrow(
        new OptionError(`--confidence: found ${JSON.stringify(text)}; expected a number from 0.5 to 0.99`),
      );
    const budget = numberWithin('--budget', 0, Infinity);
    expect(['0', '2500'].map(budget)).toEqual([0, 2500]);
    for (const text of ['-1', '', ' ', 'Infinity', '1e999'])
      expect(() => budget(text)).toThrow(
        new OptionError(`--budget: found ${JSON.stringify(text)}; expected a number of at least 0`),
      );
  });

  it('is a name of a file, whose ending says what is written, in capitals too', () => {
    expect(['a.CSV', 'a.b.Json'].map((out) => minutesFormat({ out }))).toEqual(['csv', 'json']);
    expect(minutesFormat({})).toBe('csv');
    expect(minutesFormat({ out: 'A.TXT', events: true })).toBe('txt');
    expect(() => minutesFormat({ out: 'a.txt' })).toThrow(
      new OptionError('--out: found "a.txt"; expected a name that ends in .csv, .arrow or .json'),
    );
    expect(() => minutesFormat({ out: 'a.csv', json: true })).toThrow('ends in .json');
  });

  it('is a text that says something', () => {
    expect(someText('--seed', 'a text')('winter')).toBe('winter');
    for (const text of ['', '  ', '\t'])
      expect(() => someText('--seed', 'a text')(text)).toThrow(
        new OptionError(`--seed: found ${JSON.stringify(text)}; expected a text`),
      );
  });

  it('is a list of months', () => {
    expect(monthList('1, 7,12')).toEqual([1, 7, 12]);
    expect(monthList('1,1,7')).toEqual([1, 7]);
    for (const text of ['', '0', '1,', '1;2', 'January']) expect(() => monthList(text)).toThrow(OptionError);
  });
});
