/** A run watched minute by minute: who has power, what runs, how warm it is. The minute loop itself is the study's. */
import { advance } from '../../step/advance.ts';
import { now, type Run } from '../../step/run.ts';
import {
  fillTemperaturesC,
  fillWanted,
  lookAt,
  runMinutes,
  signedC,
  wantedMinutes,
} from '../../step/step-thermostat.ts';

/** Minutes shown at once, at most. */
export const MOST_AT_ONCE = 360;

/**
 * What some minutes in a row looked like, through all of which power stays as it is; a minute in which it came or went
 * is shown alone. Overwritten by the next. Circuits and thermostats by their positions; of the lists, the first `count`
 * numbers hold.
 */
export interface Sight {
  readonly run: Run;
  /** The first of them, and how many they are. */
  readonly minute: number;
  readonly count: number;
  /** Share of each of the minutes in which the circuit had power: all or nothing where they are several. */
  readonly poweredShare: (circuit: number) => number;
  /** Share at each minute's end for which it has been without power since that went; 1 if it went before. */
  readonly withoutShare: (circuit: number) => number;
  /** Share of each minute in which the thermostat ran, and in which it wanted to. */
  readonly ranShares: (thermostat: number) => Float64Array;
  readonly wantedShares: (thermostat: number) => Float64Array;
  /** At each minute's end. */
  readonly temperaturesC: (thermostat: number) => Float64Array;
}

/**
 * Lives the run, from its beginning, through to minute `to`, showing every minute in order. It ends as
 * `advance(run, to)` would leave it.
 */
export function watchRun(run: Run, to: number, look: (sight: Sight) => void): void {
  const watch = new Watch(run);
  advance(run, to, (from) => watch.show(from, look));
}

/** A list for each thermostat, filled for the minutes shown once somebody asks. */
class Lists {
  readonly #values: readonly Float64Array[];
  readonly #filledFor: Float64Array;

  constructor(thermostats: number) {
    this.#values = Array.from({ length: thermostats }, () => new Float64Array(MOST_AT_ONCE));
    this.#filledFor = new Float64Array(thermostats).fill(-1);
  }

  at(thermostat: number, minute: number, fill: (into: Float64Array) => void): Float64Array {
    const values = this.#values[thermostat]!;
    if (this.#filledFor[thermostat] !== minute) {
      fill(values);
      this.#filledFor[thermostat] = minute;
    }
    return values;
  }
}

/** From moment to moment power stays as it is, so that what a minute looked like can be told afterwards. */
class Watch implements Sight {
  readonly run: Run;
  minute = 0;
  count = 0;
  /** The minute is made of parts, in which these were counted. */
  #inParts = false;
  readonly #on: Float64Array;
  readonly #ran: Float64Array;
  readonly #wanted: Float64Array;
  readonly #ranLists: Lists;
  readonly #wantedLists: Lists;
  readonly #temperatureLists: Lists;

  constructor(run: Run) {
    const thermostats = run.thermostatStates.length;
    this.run = run;
    this.#on = new Float64Array(run.groups.length);
    this.#ran = new Float64Array(thermostats);
    this.#wanted = new Float64Array(thermostats);
    this.#ranLists = new Lists(thermostats);
    this.#wantedLists = new Lists(thermostats);
    this.#temperatureLists = new Lists(thermostats);
  }

  /** Shows the minutes that end between `from` and now. */
  show(from: number, look: (sight: Sight) => void): void {
    const to = now(this.run);
    let time = from;
    while (time < to) {
      this.minute = Math.floor(time);
      const whole = time === this.minute ? Math.min(MOST_AT_ONCE, Math.floor(to) - this.minute) : 0;
      this.count = Math.max(1, whole);
      const end = Math.min(to, this.minute + this.count);
      if (whole === 0) this.#countPart(time, end);
      if (end === this.minute + this.count) {
        look(this);
        if (this.#inParts) this.#forgetParts();
      }
      time = end;
    }
  }

  readonly poweredShare = (circuit: number): number => {
    const { household, groups } = this.run;
    const { group } = household.circuits[circuit]!;
    if (this.#inParts) return this.#on[group]!;
    return groups[group]!.on ? 1 : 0;
  };

  readonly withoutShare = (circuit: number): number => {
    const { household, groups } = this.run;
    const { on, withoutSince } = groups[household.circuits[circuit]!.group]!;
    return on ? 0 : Math.min(1, this.minute + 1 - withoutSince);
  };

  readonly ranShares = (thermostat: number): Float64Array =>
    this.#ranLists.at(thermostat, this.minute, (into) => {
      if (this.#inParts) into[0] = this.#ran[thermostat]!;
      else if (this.run.thermostatStates[thermostat]!.course.powered) into.set(this.wantedShares(thermostat));
      else into.fill(0, 0, this.count);
    });

  readonly wantedShares = (thermostat: number): Float64Array =>
    this.#wantedLists.at(thermostat, this.minute, (into) => {
      if (this.#inParts) into[0] = this.#wanted[thermostat]!;
      else this.#fill(fillWanted, thermostat, into);
    });

  readonly temperaturesC = (thermostat: number): Float64Array =>
    this.#temperatureLists.at(thermostat, this.minute, (into) => {
      if (this.#inParts) into[0] = this.#endC(thermostat);
      else this.#fill(fillTemperaturesC, thermostat, into);
    });

  #fill(fill: typeof fillWanted, thermostat: number, into: Float64Array): void {
    const { draw, thermostatStates } = this.run;
    fill(draw.thermostatPlaces[thermostat]!, thermostatStates[thermostat]!, this.minute, this.count, into);
  }

  /** Of a minute in which its power may have come or gone. */
  #endC(thermostat: number): number {
    const place = this.run.draw.thermostatPlaces[thermostat]!;
    const state = this.run.thermostatStates[thermostat]!;
    lookAt(place, state, this.minute + 1);
    return place.parameters.sign * signedC(place, state, this.minute + 1);
  }

  #countPart(from: number, to: number): void {
    this.#inParts = true;
    for (let g = 0; g < this.#on.length; g++) if (this.run.groups[g]!.on) this.#on[g]! += to - from;
    for (let i = 0; i < this.#ran.length; i++) {
      this.#ran[i]! += this.#between(runMinutes, i, from, to);
      this.#wanted[i]! += this.#between(wantedMinutes, i, from, to);
    }
  }

  #between(minutes: typeof runMinutes, thermostat: number, from: number, to: number): number {
    const place = this.run.draw.thermostatPlaces[thermostat]!;
    const state = this.run.thermostatStates[thermostat]!;
    return minutes(place, state, to) - minutes(place, state, from);
  }

  #forgetParts(): void {
    this.#inParts = false;
    this.#on.fill(0);
    this.#ran.fill(0);
    this.#wanted.fill(0);
  }
}
