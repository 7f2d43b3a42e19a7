/**
 * Do 95 % intervals hold the truth in 95 of 100 studies? By simulation from laws whose truth is known in closed form
 * (exponential), with fixed seeds; bands are four standard errors of a share of the stated number of studies.
 */
import { expect, it } from 'vitest';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import type { Stream } from '../../packages/sim/src/chance/streams.ts';
import { resampledDifference, resampledTimesReached } from '../../packages/sim/src/trials/bootstrap.ts';
import { meanPairedDifference } from '../../packages/sim/src/trials/paired.ts';
import { daysReachedBy } from '../../packages/sim/src/trials/quantile.ts';
import { nextLook, tightness } from '../../packages/sim/src/trials/stopping-rule.ts';
import { kaplanMeier } from '../../packages/sim/src/trials/survival.ts';
import { wilson } from '../../packages/sim/src/trials/wilson.ts';
import { fabricatedOutline } from '../units/trials/fabricated-study.ts';
import { within } from './within.ts';

const exponential = (chance: Stream, mean: number) => -mean * Math.log(1 - chance());
const band = (studies: number) => 4 * Math.sqrt((0.95 * 0.05) / studies);

interface Limits {
  readonly low: number | null;
  readonly high: number | null;
}
/** A limit that the horizon hides excludes nothing on its side. */
const holds = ({ low, high }: Limits, truth: number) =>
  (low ?? -Infinity) <= truth && truth <= (high ?? Infinity);

it('median, nine in ten, chance of three days, curve at three days: 2000 studies of 200 draws cut off at 7 days', () => {
  const [studies, draws, mean, horizon] = [2000, 200, 5, 7];
  const truths = [mean * Math.LN2, -mean * Math.log(0.9), Math.exp(-3 / mean), Math.exp(-3 / mean)];
  const hits = truths.map(() => 0);
  for (let study = 0; study < studies; study += 1) {
    const chance = streamsOf('coverage', study)('runtimes');
    const days = Array.from({ length: draws }, () => exponential(chance, mean));
    const cutOff = days.map((d) => (d >= horizon ? 1 : 0));
    const table = kaplanMeier(
      days.map((d) => Math.min(d, horizon)),
      cutOff,
    );
    const at = table.time.findLastIndex((time) => time <= 3);
    const intervals: Limits[] = [
      daysReachedBy(0.5, table, 1),
      daysReachedBy(0.9, table, 1),
      wilson(days.filter((d) => d >= 3).length, draws),
      { low: table.low[at]!, high: table.high[at]! },
    ];
    intervals.forEach((interval, i) => (hits[i]! += holds(interval, truths[i]!) ? 1 : 0));
  }
  hits.forEach((hit, i) => within(hit / studies, 0.95, band(studies), `interval ${i}`)); // ± 0.0195
});

it('paired mean difference and paired nine-in-ten difference: 500 studies of 200 draws', () => {
  const [studies, draws] = [500, 200];
  const truths = [8 - 5, -(8 - 5) * Math.log(0.9)]; // means 8 and 5 days, sharing their luck in seven draws of ten
  const hits = truths.map(() => 0);
  const never = new Float64Array(draws);
  for (let study = 0; study < studies; study += 1) {
    const streams = streamsOf('paired coverage', study);
    const chance = streams('runtimes');
    const luck = Float64Array.from({ length: draws }, () => exponential(chance, 1));
    const first = luck.map((shared) => 8 * (chance() < 0.7 ? shared : exponential(chance, 1)));
    const second = luck.map((shared) => 5 * shared);
    const cells = [first, second].map((times) => ({ times, censored: never }));
    const resampled = resampledTimesReached(cells, 0.9, 399, streams('resamples'));
    const [one, other] = cells.map(({ times }, i) => ({
      point: daysReachedBy(0.9, kaplanMeier(times, never), 1).value,
      resampled: resampled[i]!,
    }));
    const intervals = [meanPairedDifference(first, second), resampledDifference(one!, other!, 1000)];
    intervals.forEach((interval, i) => (hits[i]! += holds(interval, truths[i]!) ? 1 : 0));
  }
  hits.forEach((hit, i) => within(hit / studies, 0.95, band(studies), `interval ${i}`)); // ± 0.039
});

/** Outcome rows of one alternative and strategy. */
function oneCellRows(minutes: readonly number[], horizonMinutes: number) {
  const column = (value: (m: number, i: number) => number) => Float64Array.from(minutes, value);
  const columns = {
    draw: column((_, i) => i),
    alternative: column(() => 0),
    strategy: column(() => 0),
    runtimeMinutes: column((m) => Math.min(m, horizonMinutes)),
    censored: column((m) => (m >= horizonMinutes ? 1 : 0)),
  };
  return { length: minutes.length, columns };
}

it('stopping once the interval is tight enough, looked at only at set counts, costs less than two points', () => {
  const [studies, mean, wantedHalfWidthDays, lastLook] = [1000, 5, 0.12, 3200];
  const truth = -mean * Math.log(0.9);
  const outline = fabricatedOutline({
    alternatives: [{ id: 'a', title: 'A' }],
    strategies: [{ id: 's', title: 'S', carriedOutBy: 'person' }],
  });
  const stops = new Set<number>();
  let hits = 0;
  for (let study = 0; study < studies; study += 1) {
    const chance = streamsOf('stopping', study)('runtimes');
    const minutes: number[] = [];
    const rowsAt = (look: number) => {
      while (minutes.length < look) minutes.push(1440 * exponential(chance, mean));
      return oneCellRows(minutes, outline.horizonDays * 1440);
    };
    let look = nextLook(0);
    while (look < lastLook && !tightness(outline, rowsAt(look), wantedHalfWidthDays).tightEnough)
      look = nextLook(look);
    const { runtimeMinutes, censored } = rowsAt(look).columns;
    hits += holds(daysReachedBy(0.9, kaplanMeier(runtimeMinutes, censored), 1440), truth) ? 1 : 0;
    stops.add(look);
  }
  expect(stops.size).toBeGreaterThan(1); // the rule does decide: not every study stops at the same look
  within(hits / studies, 0.95, 0.02, 'coverage'); // 0.936 when measured
});
