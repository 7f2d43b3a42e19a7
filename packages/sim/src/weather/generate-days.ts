/** Daily clearness and daily mean dry-bulb from monthly normals, one day after another. */
import type { Stream, Streams } from '../chance/streams.ts';
import { dayOfYear } from './calendar.ts';
import { dailyClearness } from './clearness-table.ts';
import { innovationReach } from './dry-bulb-plan.ts';
import { curveAt, monthPosition } from './month-curve.ts';
import { normalDeviate } from '../chance/normal-deviate.ts';
import type { NormalsPlan } from './normals-plan.ts';
import { SPELL_LAG1, SPELL_VARIANCE_FRACTION } from './spells.ts';

/** One value per day from `firstLocalDay`. */
export interface GeneratedDays {
  /** Kt = GHI over extraterrestrial irradiance on the level, of the day. */
  readonly clearness: Float64Array;
  readonly dryBulbMeanC: Float64Array;
}

/** Standard normal each: the two parts of clearness, and how warm it is for the time of year. */
interface DayState {
  quick: number;
  spell: number;
  warmth: number;
}

const QUICK = Math.sqrt(1 - SPELL_VARIANCE_FRACTION);
const SPELL = Math.sqrt(SPELL_VARIANCE_FRACTION);

/**
 * Takes its numbers day by day, so more days only add to those before.
 *
 * @param settledDays days at the start that share the first day's state (the day the outage begins on, and with it the
 *   next when it begins after sunset): the sequence moves on after them.
 * @param dullestFraction the first day is drawn from this dullest share of days; 1 for any day.
 */
export function generateDays(
  plan: NormalsPlan,
  firstLocalDay: number,
  days: number,
  settledDays: number,
  dullestFraction: number,
  streams: Streams,
): GeneratedDays {
  const sunStream = streams('weather/days');
  const warmthStream = streams('weather/temperature');
  const clearness = new Float64Array(days);
  const dryBulbMeanC = new Float64Array(days);
  const state: DayState = { quick: 0, spell: 0, warmth: 0 };
  for (let day = 0; day < days; day++) {
    const position = monthPosition(dayOfYear(firstLocalDay + day));
    if (day === 0) begin(state, plan, position, dullestFraction, sunStream, warmthStream);
    else if (day >= settledDays) moveOn(state, plan, position, sunStream, warmthStream);
    clearness[day] = dailyClearness(plan.clearness, position, QUICK * state.quick + SPELL * state.spell);
    const { meanC, sdC } = plan.dryBulb;
    dryBulbMeanC[day] = curveAt(meanC, position) + curveAt(sdC, position) * state.warmth;
  }
  return { clearness, dryBulbMeanC };
}

/** The first day from the long-run law: the sum is drawn first, and a second, independent number splits it in two. */
function begin(
  state: DayState,
  { dryBulb, quickLag1 }: NormalsPlan,
  position: number,
  dullestFraction: number,
  sunStream: Stream,
  warmthStream: Stream,
): void {
  const sum = normalDeviate(sunStream() * dullestFraction);
  const across = normalDeviate(sunStream());
  state.quick = QUICK * sum - SPELL * across;
  state.spell = SPELL * sum + QUICK * across;
  const lag1 = curveAt(dryBulb.lag1, position);
  const tie = curveAt(dryBulb.innovationTie, position);
  const toQuick = tie * QUICK * innovationReach(lag1, curveAt(quickLag1, position));
  const toSpell = tie * SPELL * innovationReach(lag1, SPELL_LAG1);
  const own = Math.sqrt(Math.max(0, 1 - toQuick * toQuick - toSpell * toSpell));
  state.warmth = toQuick * state.quick + toSpell * state.spell + own * normalDeviate(warmthStream());
}

function moveOn(
  state: DayState,
  { dryBulb, quickLag1 }: NormalsPlan,
  position: number,
  sunStream: Stream,
  warmthStream: Stream,
): void {
  const toQuick = normalDeviate(sunStream());
  const toSpell = normalDeviate(sunStream());
  const tie = curveAt(dryBulb.innovationTie, position);
  const own = Math.sqrt(1 - tie * tie) * normalDeviate(warmthStream());
  state.quick = autoregressed(state.quick, curveAt(quickLag1, position), toQuick);
  state.spell = autoregressed(state.spell, SPELL_LAG1, toSpell);
  const toWarmth = tie * (QUICK * toQuick + SPELL * toSpell) + own;
  state.warmth = autoregressed(state.warmth, curveAt(dryBulb.lag1, position), toWarmth);
}

/** First-order autoregression that keeps unit variance. */
function autoregressed(before: number, lag1: number, innovation: number): number {
  return lag1 * before + Math.sqrt(1 - lag1 * lag1) * innovation;
}
