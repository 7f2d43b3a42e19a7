/** Errors for people: one message, the right exit code, a stack only for our own faults. */
import { isScenarioError } from '../scenario/findings.ts';
import { EXIT } from './exit-codes.ts';

/** An option or its value that cannot be used. */
export class OptionError extends Error {
  override readonly name = 'OptionError';
}

const INPUT_ERRORS = new Set([
  'ScenarioError',
  'WeatherFileError',
  'ProfileFileError',
  'OptionError',
  'PublishError',
  'AggregateError', // of those, several files at once
]);

/** Writes the message to standard error and returns the exit code. */
export function reportError(error: unknown): number {
  if (!(error instanceof Error)) {
    process.stderr.write(`A fault in rideout: ${String(error)}\n`);
    return EXIT.ourFault;
  }
  if (isScenarioError(error) || INPUT_ERRORS.has(error.name)) {
    process.stderr.write(`${error.message}\n`);
    return EXIT.badInput;
  }
  if (error.name === 'WriteError') {
    process.stderr.write(`${error.message}\n`);
    return EXIT.cannotWrite;
  }
  process.stderr.write(
    `A fault in rideout, not in your scenario. Please report it with what follows.\n${error.stack ?? error.message}\n`,
  );
  return EXIT.ourFault;
}
