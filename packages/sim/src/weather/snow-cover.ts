/** Which days the panels lie under snow. MODEL.md §Weather, W7. */
import type { Streams } from '../chance/streams.ts';
import type { WeatherSpec } from '../scenario/schema.ts';
import { dayOfYear, monthLength, monthOfDay } from './calendar.ts';
import type { DaySkies, DaySky } from './day-sky.ts';
import type { WeatherDraw } from './weather-draw.ts';

/** Mean length of a spell of cover, days, where the month has room for it. Our assumption, no source. */
const SPELL_DAYS = 4;
/** Somebody clears the panels this long after the first sunrise of a spell. Our assumption, no source. */
const CLEARED_AFTER_SUNRISE_MINUTES = 120;

/** Chances by month, twelve each. */
export interface SnowPlan {
  readonly untilCleared: boolean;
  /** Share of days under snow. */
  readonly covered: readonly number[];
  /** Chance that a covered day is followed by another, and that a bare one is followed by a covered one. */
  readonly stays: readonly number[];
  readonly falls: readonly number[];
}

/** A two-state chain whose long-run share of covered days is the month's and whose spells last `SPELL_DAYS` if they can. */
export function planSnow(spec: WeatherSpec['snowCoverDays']): SnowPlan | undefined {
  if (spec === undefined) return undefined;
  const covered = spec.perMonth.map((days, month) => Math.min(1, days / monthLength(month)));
  const spellDays = covered.map((share) =>
    share < 1 ? Math.max(SPELL_DAYS, share / (1 - share)) : Infinity,
  );
  return {
    untilCleared: spec.untilCleared,
    covered,
    stays: spellDays.map((days) => 1 - 1 / days),
    falls: covered.map((share, month) => (share < 1 ? share / (1 - share) / spellDays[month]! : 1)),
  };
}

/**
 * Fills `snowOnPanels`, from midnight to midnight of the local days of `skies`. With `untilCleared` a spell hides the
 * panels only until somebody clears them, two hours after the first sunrise of the spell. Takes one number a day.
 */
export function fillSnow(
  plan: SnowPlan | undefined,
  skies: DaySkies,
  startEpochMinute: number,
  streams: Streams,
  out: WeatherDraw,
): void {
  out.snowOnPanels.fill(0);
  if (plan === undefined) return;
  const stream = streams('weather/snow');
  const firstDay = Math.floor((startEpochMinute + skies.offsetMinutes) / 1440);
  let covered = false;
  for (let day = firstDay; ; day++) {
    const first = day * 1440 - skies.offsetMinutes - startEpochMinute;
    if (first >= out.minutes) return;
    const month = monthOfDay(dayOfYear(day));
    const before: boolean = covered;
    const chance: number =
      day === firstDay ? plan.covered[month]! : before ? plan.stays[month]! : plan.falls[month]!;
    covered = stream() < chance;
    if (!covered || (plan.untilCleared && before)) continue;
    const until = plan.untilCleared ? clearedMinute(skies.day(day)) : 1440;
    out.snowOnPanels.fill(1, Math.max(0, first), Math.max(0, Math.min(out.minutes, first + until)));
  }
}

/** Minute of the day at which the panels are cleared; noon where the sun does not rise. */
function clearedMinute(sky: DaySky): number {
  const sunrise = sky.minuteCosZenith.findIndex((cosine) => cosine > 0);
  return sunrise < 0 ? 720 : Math.min(1440, sunrise + CLEARED_AFTER_SUNRISE_MINUTES);
}
