/** When somebody, or the switch, thinks: minutes of the local day. */
import { describe, expect, it } from 'vitest';
import { compileStrategy } from '../../../packages/sim/src/shedding/compile-rules.ts';
import { minutesToNextDecision, personDay } from '../../../packages/sim/src/shedding/decision-minutes.ts';
import type { PersonSpec, RuleSpec } from '../../../packages/sim/src/scenario/schema.ts';

const PERSON: PersonSpec = {
  awake: '06:30-22:30',
  looksEveryMinutes: 60,
  tripReactionMinutes: 10,
  afterTripShedTiers: 1,
  afterTripHoldMinutes: 60,
};
const CIRCUITS = [{ id: 'a', leg: 'L1', tier: 1 }] as const;
const UNITS = [
  { id: 'east', leg: 'L1' },
  { id: 'west', leg: 'L2' },
] as const;
const a = { ids: ['a'] };
const CLOCK: RuleSpec = { by: 'clock', circuits: a, onDuring: ['02:00-03:00', '12:15-12:45'] };
const CHARGE: RuleSpec = {
  by: 'charge',
  circuits: a,
  dropBelowFraction: 0.5,
  restoreAboveFraction: 0.7,
  reads: 'lowest',
};

/** Every minute of the local day at which a decision falls, by walking from one to the next. */
function decisions(
  rules: RuleSpec[],
  carriedOutBy: 'person' | 'switch',
  person: Partial<PersonSpec> = {},
): number[] {
  const strategy = compileStrategy({ id: 's', title: 'S', carriedOutBy, rules }, CIRCUITS, UNITS);
  const next = minutesToNextDecision(strategy, { ...PERSON, ...person });
  return Array.from({ length: 1440 }, (_, m) => m).filter((m) => next[(m + 1439) % 1440] === 1);
}
const everyHourFrom = (first: number, last: number) =>
  Array.from({ length: Math.floor((last - first) / 60) + 1 }, (_, k) => first + 60 * k);

describe('a switch thinks', () => {
  it('never by the clock when charge alone decides: it is told of levels', () => {
    expect(decisions([CHARGE], 'switch')).toEqual([]);
  });

  it('where its windows begin and end, at night too', () => {
    expect(decisions([CLOCK], 'switch')).toEqual([120, 180, 735, 765]);
  });

  it('every quarter of an hour under a sun rule, and twice an hour under a ration', () => {
    expect(decisions([{ by: 'sun', circuits: a, solarAboveW: 1 }], 'switch')).toEqual(
      Array.from({ length: 96 }, (_, k) => 15 * k),
    );
    expect(
      decisions([{ by: 'ration', circuits: a, onMinutesPerHour: 20, whileAsleep: 'on' }], 'switch'),
    ).toEqual(Array.from({ length: 24 }, (_, h) => [60 * h, 60 * h + 20]).flat());
  });

  it('where a unit’s sleep begins and ends', () => {
    expect(
      decisions([{ by: 'sleep', unit: 'west', during: ['22:00-05:00'], circuits: 'moved' }], 'switch'),
    ).toEqual([300, 1320]);
  });
});

describe('a person thinks', () => {
  it('on waking, every so many minutes after, and last thing at night', () => {
    expect(decisions([CHARGE], 'person')).toEqual([...everyHourFrom(390, 1349), 1349]);
    expect(decisions([CHARGE], 'person', { looksEveryMinutes: 480 })).toEqual([390, 870, 1349]);
  });

  it('where windows begin and end while awake; what falls due asleep waits for waking', () => {
    const extra = decisions([CLOCK], 'person', { looksEveryMinutes: 1440 });
    expect(extra).toEqual([390, 735, 765, 1349]);
  });

  it('through midnight when they work nights', () => {
    expect(decisions([CLOCK], 'person', { awake: '20:00-06:00', looksEveryMinutes: 240 })).toEqual([
      0, 120, 180, 240, 359, 1200,
    ]);
  });

  it('round the clock when somebody is always awake', () => {
    expect(decisions([CHARGE], 'person', { awake: '00:00-24:00', looksEveryMinutes: 360 })).toEqual([
      0, 360, 720, 1080,
    ]);
  });

  it('of nothing where there is no rule', () => {
    expect(decisions([], 'person')).toEqual([]);
  });
});

describe('a person’s day', () => {
  it('has one bedtime, the last minute awake', () => {
    const { awake, bedtime } = personDay(PERSON);
    expect(Array.from(bedtime).flatMap((b, m) => (b === 1 ? m : []))).toEqual([1349]);
    expect([awake[389], awake[390], awake[1349], awake[1350]]).toEqual([0, 1, 1, 0]);
  });

  it('has none when somebody is always awake', () => {
    expect(personDay({ ...PERSON, awake: '06:00-06:00' }).bedtime).not.toContain(1);
  });
});
