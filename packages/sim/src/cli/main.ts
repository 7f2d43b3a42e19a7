#!/usr/bin/env node
/** The command line. Each verb reads its input, makes one call into the library and tells the answer. */
import { Command, CommanderError } from 'commander';
import { scenarioJsonSchema } from '../scenario/json-schema.ts';
import { VERSION } from '../version.ts';
import { check } from './check.ts';
import { days, type DaysOptions } from './days.ts';
import { EXIT, EXIT_HELP } from './exit-codes.ts';
import { minutes, type MinutesOptions } from './minutes.ts';
import { everyCore, monthList, positiveNumber, wholeNumber } from './option-values.ts';
import { bearClosedPipes, say, type OutputOptions } from './output.ts';
import { publish, type PublishOptions } from './publish.ts';
import { reportError } from './report-error.ts';

const MOST_DRAWS = 10_000_000;
let exitCode: number = EXIT.done;

/** Options that every verb with a weather has. */
function withStudyOptions(command: Command, draws: number): Command {
  return command
    .option('-s, --seed <text>', 'same seed, same draws', 'rideout')
    .option('-d, --draws <number>', 'outages to draw', wholeNumber('--draws', 1, MOST_DRAWS), draws)
    .option(
      '--weather <file>',
      'a weather year (TMY3 CSV, EPW or plain table) instead of the scenario’s weather',
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
  .option('-o, --out <folder>', 'write outcomes.arrow, outcomes.csv and study.json there')
  .option('-p, --page <file>', 'also publish the page “How many days?” as one HTML file')
  .action(async (path: string, options: DaysOptions) => {
    exitCode = await days(path, options);
  });

withOutputOptions(program.command('minutes').argument('<scenario>'))
  .description('one outage, minute by minute, as a table with every column an auditor needs')
  .option('-n, --draw <number>', 'which draw', wholeNumber('--draw', 0, MOST_DRAWS), 0)
  .option('-s, --seed <text>', 'same seed, same draws', 'rideout')
  .option('-a, --alternative <id>', 'which version of the household (default: the first)')
  .option('-t, --strategy <id>', 'which strategy (default: the first)')
  .option('-e, --events', 'only what happened, in words')
  .option('-o, --out <file>', 'write the table there')
  .option('--weather <file>', 'a weather year instead of the scenario’s weather')
  .option('--months <list>', 'months in which the outage starts', monthList)
  .action(async (path: string, options: MinutesOptions) => {
    exitCode = await minutes(path, options);
  });

withOutputOptions(program.command('check').argument('<scenario>'))
  .description('whether a scenario can be used; every fault with its line')
  .action((path: string, options: OutputOptions) => {
    exitCode = check(path, options);
  });

withOutputOptions(
  withStudyOptions(program.command('publish').argument('<scenario>').argument('[notebooks...]'), 400),
)
  .description('pages for a scenario, each one HTML file that needs no network')
  .requiredOption('-o, --out <folder>', 'where the pages go')
  .action(async (path: string, notebooks: string[], options: PublishOptions) => {
    exitCode = await publish(path, notebooks, options);
  });

program
  .command('schema')
  .description('the JSON Schema of a scenario, for editors')
  .action(() => say(JSON.stringify(scenarioJsonSchema(), null, 2)));

bearClosedPipes();
try {
  await program.parseAsync();
} catch (error) {
  exitCode =
    error instanceof CommanderError ? (error.exitCode === 0 ? EXIT.done : EXIT.badInput) : reportError(error);
}
process.exitCode = exitCode;
