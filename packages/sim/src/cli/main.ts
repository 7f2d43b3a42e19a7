#!/usr/bin/env node
/**
 * The command line. Each verb reads its input, makes one call into the library and tells the answer; it is loaded once
 * it is asked for, so that nobody waits for the others.
 */
import { Command, CommanderError } from 'commander';
import { PUBLISHED_IDS } from '../advice/outage-lengths/published-figures.ts';
import { VERSION } from '../version.ts';
import type { CheckCommandOptions } from './check.ts';
import type { DaysOptions } from './days.ts';
import { EXIT, EXIT_HELP } from './exit-codes.ts';
import type { LadderOptions } from './ladder.ts';
import type { LegsOptions } from './legs.ts';
import type { MattersOptions } from './matters.ts';
import type { MinutesOptions } from './minutes.ts';
import type { NeedsOptions } from './needs.ts';
import type { NextOutageOptions } from './next-outage.ts';
import {
  everyCore,
  monthList,
  numberList,
  numberWithin,
  oneOf,
  positiveNumber,
  someText,
  wholeNumber,
} from './option-values.ts';
import { bearOutputTrouble, finalExitCode, say } from './output.ts';
import type { PublishOptions } from './publish.ts';
import { reportError } from './report-error.ts';

const MOST_DRAWS = 10_000_000;
let exitCode: number = EXIT.done;

/** Options that every verb with a weather has. */
function withStudyOptions(command: Command, draws: number, least = 1, most = MOST_DRAWS): Command {
  return command
    .option('-s, --seed <text>', 'same seed, same draws', someText('--seed', 'a text'), 'rideout')
    .option('-d, --draws <number>', 'outages to draw', wholeNumber('--draws', least, most), draws)
    .option(
      '--weather <file>',
      'a weather year (TMY3 CSV, EPW or plain table) instead of the scenario’s weather',
      someText('--weather', 'the name of a file'),
    )
    .option(
      '--months <list>',
      'months in which the outage starts, such as 1,7, instead of the scenario’s',
      monthList,
    );
}

function withOutputOptions(command: Command): Command {
  return command
    .option('-q, --quiet', 'only the answer')
    .option('--json', 'the answer as JSON')
    .option('--ascii', 'plain signs only');
}

const program = new Command('rideout')
  .description('How many days will it last? Steps a household through grid outages, minute by minute.')
  .version(VERSION)
  .addHelpText(
    'after',
    `${EXIT_HELP}\n\nA scenario is one YAML or JSON file; data/full-house.yaml is one to start from.`,
  )
  .showHelpAfterError('Try rideout --help.')
  .exitOverride();

withOutputOptions(withStudyOptions(program.command('days').argument('<scenario>'), 200))
  .description('how many days each strategy lasts, with the chance of reaching 1, 3, 7 and 14')
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option('--within <days>', 'stop early once the days are known to ± this', positiveNumber('--within'))
  .option(
    '-o, --out <folder>',
    'write outcomes.arrow, outcomes.csv and study.json there',
    someText('--out', 'the name of a folder'),
  )
  .option(
    '-p, --page <file>',
    'also publish the page “How many days?” as one HTML file',
    someText('--page', 'the name of a file'),
  )
  .action(async (path: string, options: DaysOptions) => {
    exitCode = await (await import('./days.ts')).days(path, options);
  });

withOutputOptions(program.command('minutes').argument('<scenario>'))
  .description('one outage, minute by minute, as a table with every column an auditor needs')
  .option('-n, --draw <number>', 'which draw', wholeNumber('--draw', 0, MOST_DRAWS), 0)
  .option('-s, --seed <text>', 'same seed, same draws', someText('--seed', 'a text'), 'rideout')
  .option('-a, --alternative <id>', 'which version of the household (default: the first)')
  .option('-t, --strategy <id>', 'which strategy (default: the first)')
  .option('-e, --events', 'only what happened, in words')
  .option(
    '-o, --out <file>',
    'write the table there: .csv, .arrow or .json; with --events .txt or .json',
    someText('--out', 'the name of a file'),
  )
  .option(
    '--weather <file>',
    'a weather year instead of the scenario’s weather',
    someText('--weather', 'the name of a file'),
  )
  .option('--months <list>', 'months in which the outage starts', monthList)
  .action(async (path: string, options: MinutesOptions) => {
    exitCode = await (await import('./minutes.ts')).minutes(path, options);
  });

withOutputOptions(withStudyOptions(program.command('needs').argument('<scenario>'), 100))
  .description('food, water, warmth, medical, light, talk: when each first fails, and for how long')
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option(
    '-o, --out <folder>',
    'write needs.arrow, needs.csv and needs.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: NeedsOptions) => {
    exitCode = await (await import('./needs.ts')).needs(path, options);
  });

withOutputOptions(withStudyOptions(program.command('next-outage').argument('<scenario>'), 200))
  .description('the chance that the next outage is ridden out, and hours without in a year')
  .option(
    '--published <figures>',
    'how long outages last: national figures, us-2017 or us-2024, instead of the scenario’s',
    oneOf('--published', PUBLISHED_IDS),
  )
  .option('--hours <list>', 'your own lengths in hours, such as 2,5,30', numberList('--hours'))
  .option('--per-year <number>', 'outages a year, with --hours (default: 1)', positiveNumber('--per-year'))
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option(
    '-o, --out <folder>',
    'write next-outage.arrow, next-outage.csv and next-outage.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: NextOutageOptions) => {
    exitCode = await (await import('./next-outage.ts')).nextOutage(path, options);
  });

withOutputOptions(withStudyOptions(program.command('matters').argument('<scenario>'), 300, 20, 1_000_000))
  .description('which of the things nobody knows move the days: weather, usage, hour, health, idle watts')
  .option('-a, --alternative <id>', 'which version of the household (default: the first)')
  .option('-t, --strategy <id>', 'which strategy (default: the first)')
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option(
    '-o, --out <folder>',
    'write matters.arrow, matters.csv and matters.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: MattersOptions) => {
    exitCode = await (await import('./matters.ts')).matters(path, options);
  });

withOutputOptions(withStudyOptions(program.command('legs').argument('<scenario>'), 400))
  .description('which circuit on which leg lasts longest, and how far any other could be ahead')
  .option('-a, --alternative <id>', 'which version of the household (default: the first)')
  .option('-t, --strategy <id>', 'which strategy (default: the one that lasts longest)')
  .option(
    '--choose <number>',
    'outages on which the assignment is chosen; the gain is from others',
    wholeNumber('--choose', 1, MOST_DRAWS),
    120,
  )
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option(
    '-o, --out <folder>',
    'write legs.arrow, legs.csv and legs.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: LegsOptions) => {
    exitCode = await (await import('./legs.ts')).legs(path, options);
  });

withOutputOptions(withStudyOptions(program.command('ladder').argument('<scenario>'), 400))
  .description('what to buy next, and after that: the order that brings the most days for the money')
  .option(
    '--choose <number>',
    'outages on which the order is chosen; the figures are from others',
    wholeNumber('--choose', 1, MOST_DRAWS),
    120,
  )
  .option(
    '--budget <money>',
    'most to spend, instead of the scenario’s',
    numberWithin('--budget', 0, Infinity),
  )
  .option(
    '--confidence <share>',
    'share of outages that must reach the days, instead of the scenario’s',
    numberWithin('--confidence', 0.5, 0.99),
  )
  .option(
    '-w, --workers <number>',
    'threads; 0 runs in the main one',
    wholeNumber('--workers', 0, 256),
    everyCore(),
  )
  .option(
    '-o, --out <folder>',
    'write ladder.arrow, ladder.csv and ladder.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: LadderOptions) => {
    exitCode = await (await import('./ladder.ts')).ladder(path, options);
  });

withOutputOptions(withStudyOptions(program.command('check').argument('<scenario>'), 20))
  .description('every fault of the file with its line; then what to look into before it is trusted')
  .option('-a, --alternative <id>', 'which version of the household (default: the first)')
  .option(
    '-o, --out <folder>',
    'write findings, numbers, what was left unchecked and check.json there',
    someText('--out', 'the name of a folder'),
  )
  .action(async (path: string, options: CheckCommandOptions) => {
    exitCode = await (await import('./check.ts')).check(path, options);
  });

withOutputOptions(
  withStudyOptions(program.command('publish').argument('<scenario>').argument('[notebooks...]'), 400),
)
  .description('pages for a scenario, each one HTML file that needs no network')
  .requiredOption('-o, --out <folder>', 'where the pages go', someText('--out', 'the name of a folder'))
  .action(async (path: string, notebooks: string[], options: PublishOptions) => {
    exitCode = await (await import('./publish.ts')).publish(path, notebooks, options);
  });

program
  .command('schema')
  .description('the JSON Schema of a scenario, for editors')
  .action(async () => {
    const { scenarioJsonSchema } = await import('../scenario/json-schema.ts');
    say(JSON.stringify(scenarioJsonSchema(), null, 2));
  });

bearOutputTrouble();
try {
  await program.parseAsync();
} catch (error) {
  exitCode =
    error instanceof CommanderError ? (error.exitCode === 0 ? EXIT.done : EXIT.badInput) : reportError(error);
}
process.exitCode = finalExitCode(exitCode);
