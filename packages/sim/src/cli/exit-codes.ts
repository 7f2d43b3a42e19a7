/** How `rideout` ends; listed by `rideout --help` and in the README. */
export const EXIT = {
  done: 0,
  ourFault: 1,
  badInput: 2,
  cannotWrite: 3,
  interrupted: 130,
} as const;

export const EXIT_HELP = `
Exit codes:
  0    done
  1    a fault in rideout itself
  2    the scenario, a file it names or an option cannot be used
  3    the results could not be written (nothing half-written is left)
  130  interrupted: days finishes the outages begun, reports them and, with --out, writes them; the other verbs
       end at once and report nothing, for half an answer would mislead`;
