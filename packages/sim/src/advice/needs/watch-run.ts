/** A run watched minute by minute: who has power, what runs, how warm it is. The minute loop itself is the study's. */
import { advance } from '../../step/advance.ts';
import { now, type Run } from '../../step/run.ts';
import { lookAt, runMinutes, signedC, wantedMinutes } from '../../step/step-thermostat.ts';

/** What a minute looked like; overwritten by the next. Circuits and thermostats by their positions. */
export interface Sight {
  readonly run: Run;
  readonly minute: number;
  /** Share of the minute in which the circuit had power. */
  readonly poweredShare: (circuit: number) => number;
  /** Share at the minute's end for which it has been without power since that went; 1 if it went before. */
  readonly withoutShare: (circuit: number) => number;
  /** Share of the minute in which the thermostat ran, and in which it wanted to. */
  readonly ranShare: (thermostat: number) => number;
  readonly wantedShare: (thermostat: number) => number;
  /** At the minute's end. */
  readonly temperatureC: (thermostat: number) => number;
}

/**
 * Lives the run, from its beginning, through to minute `to`, showing every minute in order. It ends as
 * `advance(run, to)` would leave it.
 */
export function watchRun(run: Run, to: number, look: (sight: Sight) => void): void {
  const watch = new Watch(run);
  advance(run, to, (from) => watch.show(from, look));
}

/** From moment to moment power stays as it is, so that what a minute looked like can be told afterwards. */
class Watch implements Sight {
  readonly run: Run;
  minute = 0;
  /** The minute is made of parts, in which these were counted. */
  #inParts = false;
  readonly #on: Float64Array;
  readonly #ran: Float64Array;
  readonly #wanted: Float64Array;

  constructor(run: Run) {
    this.run = run;
    this.#on = new Float64Array(run.groups.length);
    this.#ran = new Float64Array(run.thermostatStates.length);
    this.#wanted = new Float64Array(run.thermostatStates.length);
  }

  /** Shows the minutes that end between `from` and now. */
  show(from: number, look: (sight: Sight) => void): void {
    const to = now(this.run);
    let time = from;
    while (time < to) {
      this.minute = Math.floor(time);
      const end = Math.min(to, this.minute + 1);
      if (end - time < 1) this.#countPart(time, end);
      if (end === this.minute + 1) {
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

  readonly ranShare = (thermostat: number): number =>
    this.#inParts
      ? this.#ran[thermostat]!
      : this.#between(runMinutes, thermostat, this.minute, this.minute + 1);

  readonly wantedShare = (thermostat: number): number =>
    this.#inParts
      ? this.#wanted[thermostat]!
      : this.#between(wantedMinutes, thermostat, this.minute, this.minute + 1);

  readonly temperatureC = (thermostat: number): number => {
    const { draw, thermostatStates } = this.run;
    const place = draw.thermostatPlaces[thermostat]!;
    const state = thermostatStates[thermostat]!;
    lookAt(place, state, this.minute + 1);
    return draw.usage.thermostats[thermostat]!.sign * signedC(place, state, this.minute + 1);
  };

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
