/** Daily clearness and daily mean dry-bulb from monthly normals, one day after another. */
import type { Streams } from '../chance/streams.ts';
import { dayOfYear } from './calendar.ts';
import { dailyClearness } from './clearness-table.ts';
import { curveAt, monthPosition } from './month-curve.ts';
import { normalDeviate } from './normal-deviate.ts';
import { innovationReach } from './dry-bulb-plan.ts';
import { SPELL_LAG1, SPELL_VARIANCE_FRACTION } from './spells.ts';
import type { NormalsPlan } from './normals-plan.ts';

/** One value per day from `firstLocalDay`. */
export interface GeneratedDays {
  /** Kt = GHI over extraterrestrial irradiance on the level, of the day. */
  readonly clearness: Float64Array;
  readonly dryBulbMeanC: Float64Array;
}

const QUICK = Math.sqrt(1 - SPELL_VARIANCE_FRACTION);
const SPELL = Math.sqrt(SPELL_VARIANCE_FRACTION);
const SPELL_INNOVATION = Math.sqrt(1 - SPELL_LAG1 * SPELL_LAG1);

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
  const clearnessStream = streams('weather/days');
  const dryBulbStream = streams('weather/temperature');
  const clearness = new Float64Array(days);
  const dryBulbMeanC = new Float64Array(days);
  let quick = 0;
  let spell = 0;
  let warmth = 0;
  for (let day = 0; day < days; day++) {
    const position = monthPosition(dayOfYear(firstLocalDay + day));
    const lag1 = curveAt(plan.dryBulb.lag1, position);
    const tie = curveAt(plan.dryBulb.innovationTie, position);
    const quickLag1 = curveAt(plan.quickLag1, position);
    if (day === 0) {
      // the sum is drawn first, from its dull tail if asked; a second, independent number splits it into its two parts
      const sum = normalDeviate(clearnessStream() * dullestFraction);
      const across = normalDeviate(clearnessStream());
      quick = QUICK * sum - SPELL * across;
      spell = SPELL * sum + QUICK * across;
      const ofQuick = tie * QUICK * innovationReach(lag1, quickLag1);
      const ofSpell = tie * SPELL * innovationReach(lag1, SPELL_LAG1);
      const own = Math.sqrt(Math.max(0, 1 - ofQuick * ofQuick - ofSpell * ofSpell));
      warmth = ofQuick * quick + ofSpell * spell + own * normalDeviate(dryBulbStream());
    } else if (day >= settledDays) {
      const ofQuick = normalDeviate(clearnessStream());
      const ofSpell = normalDeviate(clearnessStream());
      quick = quickLag1 * quick + Math.sqrt(1 - quickLag1 * quickLag1) * ofQuick;
      spell = SPELL_LAG1 * spell + SPELL_INNOVATION * ofSpell;
      const own = Math.sqrt(1 - tie * tie) * normalDeviate(dryBulbStream());
      const innovation = tie * (QUICK * ofQuick + SPELL * ofSpell) + own;
      warmth = lag1 * warmth + Math.sqrt(1 - lag1 * lag1) * innovation;
    }
    clearness[day] = dailyClearness(plan.clearness, position, QUICK * quick + SPELL * spell);
    dryBulbMeanC[day] = curveAt(plan.dryBulb.meanC, position) + curveAt(plan.dryBulb.sdC, position) * warmth;
  }
  return { clearness, dryBulbMeanC };
}
