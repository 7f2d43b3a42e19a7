/** What is kept of one thermostatic appliance: its course, and its state in a run. MODEL.md §Usage, U9. */

/** Minutes past a limit, and when the first of them began; -1 = not yet. */
export interface BeyondLimit {
  beyondMinutes: number;
  beyondFirst: number;
}

/** From the moment at which power came or went. What lies in `entries` is thermostat-course.ts's to know. */
export interface ThermostatCourse extends BeyondLimit {
  powered: boolean;
  /** Entries so far: at least the course's beginning, once it has begun. */
  count: number;
  entries: Float64Array;
}

export function createCourse(): ThermostatCourse {
  return { powered: true, count: 0, entries: new Float64Array(0), beyondMinutes: 0, beyondFirst: -1 };
}

/** Sums are up to the beginning of the present course. */
export interface ThermostatState extends BeyondLimit {
  /** Since power came or went; and the entry of it that held when somebody last looked. */
  course: ThermostatCourse;
  entry: number;
  runBefore: number;
  /** Minutes of running wanted. */
  wantedBefore: number;
  /** Minutes it called without power since the power went. */
  waitBefore: number;
  /** First moment the wait exceeded the grace; -1 = not yet. */
  gracePassedAt: number;
  /** All minutes of waiting beyond the grace. */
  waitedTooLongMinutes: number;
  /** The course before, if it was its own: room for the next one. */
  spare: ThermostatCourse | undefined;
}

export function copyThermostatState(from: ThermostatState, into: ThermostatState): void {
  into.course = from.course;
  into.entry = from.entry;
  into.runBefore = from.runBefore;
  into.wantedBefore = from.wantedBefore;
  into.waitBefore = from.waitBefore;
  into.gracePassedAt = from.gracePassedAt;
  into.beyondMinutes = from.beyondMinutes;
  into.beyondFirst = from.beyondFirst;
  into.waitedTooLongMinutes = from.waitedTooLongMinutes;
  into.spare = from.spare;
}
