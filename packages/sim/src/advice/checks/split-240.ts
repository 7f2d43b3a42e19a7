/** 240 V circuits: they need both units. */
import { listed } from '../../trials/listed.ts';
import type { CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** Tiers up to this hold what a household cannot long be without. */
const PRESSING_TIER = 2;

export const split240: CheckSubjectSpec = {
  id: 'split-240',
  title: '240 V circuits and the units they need',
  look: ({ household: { circuits, units, strategies } }) => {
    const both = circuits.filter((c) => c.leg === 'both');
    const names = listed(both.map((c) => c.title ?? c.id));
    if (both.length === 0) return joinOutcomes([]);
    const where = `circuits.${both[0]!.id}.leg`;
    const numbers = [
      { what: 'units', value: units.length, unit: '' },
      { what: '240 V circuits', value: both.length, unit: '' },
    ];
    if (units.length < 2)
      return joinOutcomes([
        looked({
          severity: 'mend',
          where,
          found: `One 120 V unit makes no 240 V: nothing for ${names}, and its wires are live at the panel all the same.`,
          numbers,
          todo: 'Switch the two-pole breaker off for the outage, or have a second unit or a 240 V source fitted.',
          rule: CHECK_RULES.split240,
        }),
      ]);
    const pressing = both.filter((c) => c.tier <= PRESSING_TIER);
    const sleepers = strategies.filter((s) => s.rules.some((r) => r.by === 'sleep')).map((s) => s.title);
    const asleep = sleepers.length === 0 ? '' : ` It is off while a unit sleeps: ${listed(sleepers)}.`;
    const note: Partial<CheckOutcome> = looked({
      severity: 'note',
      where,
      found: `Without either unit there is no 240 V: the first one to stop takes ${names} with it.${asleep}`,
      numbers,
      todo: 'Use it while both units run; if it pumps water, keep some drawn ahead.',
      rule: CHECK_RULES.pair240,
    });
    return joinOutcomes([pressing.length > 0 ? note : looked()]);
  },
};
