/** What one draw, and then many, showed of a unit that had to carry everything. */
import { CONTINUOUS_MINUTES } from '../../power/continuous-load.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { placeC } from '../../step/ambient.ts';
import { shareOf } from './household-loads.ts';
import type { ObservedUnit } from './observed.ts';
import {
  higherPeak,
  highestAt,
  highestMean,
  inMicrowatts,
  isAsleep,
  peakOf,
  type WatchedDraw,
} from './watched-draw.ts';

const MOST_CIRCUITS_NAMED = 4;

/** @param startW load of the unit with the largest start of each minute; 0 where nothing starts */
export function unitOfDraw(draw: WatchedDraw, u: number, startW: Float64Array): ObservedUnit {
  const { household, trace } = draw;
  const spec = household.units[u]!;
  const loadW = draw.loadW[u]!;
  const { inverterLossW, solarAvailableW, solarClippedW } = trace.units[u]!;
  const { continuousW, surgeW, overloadMinutes } = spec.inverter;
  const dischargeW = inMicrowatts(
    loadW.map((w, m) => w + inverterLossW[m]! - (solarAvailableW[m]! - solarClippedW[m]!)),
  );
  const dischargeLimitW = spec.battery.modules * spec.battery.module.maxDischargeW;
  const worstDischargeW = Math.max(0, dischargeW[highestAt(dischargeW)]!);
  const overloads = overloadMinutesOf(loadW, continuousW, overloadMinutes);
  const surges = minutesAbove(startW, surgeW);
  const days = trace.minutes / 1440;
  return {
    id: spec.id,
    worstMinute: peakOf(draw, loadW),
    worstMinuteCircuits: largestCircuits(draw, spec, highestAt(loadW)),
    worstThreeHoursW: highestMean(loadW, CONTINUOUS_MINUTES),
    meanLoadW: sum(loadW) / trace.minutes,
    overloadDraws: any(overloads),
    overloadAsleepDraws: any(overloads.filter((m) => isAsleep(draw, m))),
    surgeDraws: any(surges),
    surgeAsleepDraws: any(surges.filter((m) => isAsleep(draw, m))),
    worstDischargeW,
    dischargeDraws: worstDischargeW > dischargeLimitW ? 1 : 0,
    solarAvailableWhPerDay: sum(solarAvailableW) / 60 / days,
    solarClippedWhPerDay: sum(solarClippedW) / 60 / days,
    ...aroundTheModules(draw, spec),
  };
}

/** Minutes in which a run above the rating has lasted longer than the unit bears, as in MODEL.md §6.2. */
function overloadMinutesOf(loadW: Float64Array, continuousW: number, overloadMinutes: number): number[] {
  const minutes: number[] = [];
  let running = 0;
  loadW.forEach((w, m) => {
    running = w > continuousW ? running + 1 : 0;
    if (running > overloadMinutes) minutes.push(m);
  });
  return minutes;
}

function minutesAbove(watts: Float64Array, limitW: number): number[] {
  return Array.from(watts.keys()).filter((m) => watts[m]! > limitW);
}

function largestCircuits(draw: WatchedDraw, spec: UnitSpec, minute: number) {
  const { circuits, units } = draw.household;
  return circuits
    .map((c, i) => ({
      id: c.id,
      watts: shareOf(spec, c, units) * draw.servedW[i]![minute]!,
    }))
    .filter(({ watts }) => watts >= 1)
    .sort((a, b) => b.watts - a.watts)
    .slice(0, MOST_CIRCUITS_NAMED);
}

function aroundTheModules({ ambient }: WatchedDraw, { battery }: UnitSpec) {
  const temperatures = placeC(ambient, battery.place);
  let cold = 0;
  for (const c of temperatures) if (c < battery.minChargeC) cold++;
  return {
    lowestPlaceC: temperatures.reduce((least, c) => Math.min(least, c), Infinity),
    tooColdToChargeHoursFraction: cold / temperatures.length,
  };
}

const sum = (values: Float64Array) => values.reduce((total, w) => total + w, 0);
const any = (minutes: readonly number[]) => (minutes.length > 0 ? 1 : 0);

/** Peaks and draws of `draws` single draws as one; means weigh every draw alike. */
export function joinUnits(parts: readonly ObservedUnit[]): ObservedUnit {
  const total = (of: (p: ObservedUnit) => number) => parts.reduce((all, p) => all + of(p), 0);
  const mean = (of: (p: ObservedUnit) => number) => total(of) / parts.length;
  const most = (of: (p: ObservedUnit) => number) => Math.max(...parts.map(of));
  const worst = parts.reduce((a, b) => (b.worstMinute.watts > a.worstMinute.watts ? b : a));
  return {
    id: worst.id,
    worstMinute: parts.map((p) => p.worstMinute).reduce(higherPeak),
    worstMinuteCircuits: worst.worstMinuteCircuits,
    worstThreeHoursW: most((p) => p.worstThreeHoursW),
    meanLoadW: mean((p) => p.meanLoadW),
    overloadDraws: total((p) => p.overloadDraws),
    overloadAsleepDraws: total((p) => p.overloadAsleepDraws),
    surgeDraws: total((p) => p.surgeDraws),
    surgeAsleepDraws: total((p) => p.surgeAsleepDraws),
    worstDischargeW: most((p) => p.worstDischargeW),
    dischargeDraws: total((p) => p.dischargeDraws),
    solarAvailableWhPerDay: mean((p) => p.solarAvailableWhPerDay),
    solarClippedWhPerDay: mean((p) => p.solarClippedWhPerDay),
    lowestPlaceC: -most((p) => -p.lowestPlaceC),
    tooColdToChargeHoursFraction: mean((p) => p.tooColdToChargeHoursFraction),
  };
}
