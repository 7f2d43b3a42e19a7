/** What went wrong, in words. */

export function saidBy(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** A worker that could not run at all; a browser that refuses to run one gives no reason. */
export function workerFault({ message }: ErrorEvent): Error {
  return new Error(message || 'this browser does not let a page from a file run its own worker');
}
