/**
 * One bank whose only chance is how much sun each day brings, lived through the simulator's own minute loop. The sun
 * is put into the draw by hand, from 10 to 14 o'clock; everything else is the household's.
 */
import { streamsOf } from '../../../../packages/sim/src/chance/streams.ts';
import type { SolarMinutes } from '../../../../packages/sim/src/power/hour-figures.ts';
import { advance } from '../../../../packages/sim/src/step/advance.ts';
import { closeAll } from '../../../../packages/sim/src/step/apply-power.ts';
import { ON, startRun, type Run } from '../../../../packages/sim/src/step/run.ts';
import { sumUpSolar } from '../../../../packages/sim/src/step/solar-minutes.ts';
import { workspaceOf } from '../../../../packages/sim/src/trials/shard.ts';
import { fillDraw } from '../../../../packages/sim/src/trials/workspace.ts';
import { bareCircuit, bareStudy, bareUnit, during } from '../../bare-household.ts';

/** A day's load, Wh: the unit in which stores and sun are counted here. */
export const DAY_LOAD_WH = 1000;
const LOAD_HOURS = 4;
const SUN = { from: 10 * 60, to: 14 * 60 };

export interface DayBank {
  /** Loads it holds, and holds at the start (midnight). */
  readonly capacity: number;
  readonly start: number;
  readonly loadHours: '02:00-06:00' | '18:00-22:00';
  readonly days: number;
}

/** Lives one run day by day. @returns the day on which it ended, 1, 2, …; undefined when it never did */
export type LiveThrough = (sunOfDay: (day: number) => number, stopAt?: (level: number) => boolean) => Lived;

export interface Lived {
  readonly endedOnDay: number | undefined;
  /** Days lived, the last one included. */
  readonly days: number;
  /** Loads left at the last midnight. */
  readonly level: number;
}

/** @returns a function that lives one run: sun is given day by day, in loads; it ends at an empty bank or where told */
export function createDayBank({ capacity, start, loadHours, days }: DayBank): LiveThrough {
  const study = bareStudy({
    units: [bareUnit({ capacityWh: capacity * DAY_LOAD_WH, battery: { startFraction: start / capacity } })],
    circuits: [bareCircuit('load', 'L1', during(DAY_LOAD_WH / LOAD_HOURS, loadHours))],
    days,
  });
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf('made days', 0));
  const { household } = study.compiled[0]!;
  const draw = work.draws[0]!;
  return (sunOfDay, stopAt = () => false) => {
    const run = startRun(household, draw, household.strategies[0]!);
    for (let day = 0; day < days; day++) {
      const sunW = (sunOfDay(day) * DAY_LOAD_WH * 60) / (SUN.to - SUN.from);
      const solar = dayOf(draw.solar[0]!, day);
      solar.usableW.fill(sunW, SUN.from, SUN.to);
      sumUpSolar(solar, { count: 1, from: Int32Array.of(SUN.from), to: Int32Array.of(SUN.to) });
      advance(run, 1440 * (day + 1));
      if (run.units[0]!.mode !== ON) return { endedOnDay: dayOfEnd(run), days: day + 1, level: levelOf(run) };
      if (stopAt(levelOf(run))) return { endedOnDay: undefined, days: day + 1, level: levelOf(run) };
    }
    return { endedOnDay: undefined, days, level: levelOf(run) };
  };
}

/** One day of it, a window onto the same arrays. */
function dayOf({ usableW, hourWmin, leastW, mostW }: SolarMinutes, day: number): SolarMinutes {
  return {
    usableW: usableW.subarray(1440 * day, 1440 * (day + 1)),
    hourWmin: hourWmin.subarray(24 * day, 24 * (day + 1)),
    leastW: leastW.subarray(24 * day, 24 * (day + 1)),
    mostW: mostW.subarray(24 * day, 24 * (day + 1)),
  };
}

function dayOfEnd(run: Run): number {
  closeAll(run);
  return Math.ceil(run.end.minute / 1440);
}

const levelOf = (run: Run) => run.units[0]!.state.storedWmin / 60 / DAY_LOAD_WH;
