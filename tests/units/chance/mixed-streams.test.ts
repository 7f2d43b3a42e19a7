import { describe, expect, it } from 'vitest';
import { mixedStreams } from '../../../packages/sim/src/chance/mixed-streams.ts';
import { streamsOf, type Stream } from '../../../packages/sim/src/chance/streams.ts';

const take = (stream: Stream, count = 5) => Array.from({ length: count }, stream);
const a = streamsOf('seed', 1);
const b = streamsOf('seed', 2);
const c = streamsOf('seed', 3);
const weather = (purpose: string) => purpose.startsWith('weather/');

describe('mixedStreams', () => {
  it('takes a covered purpose whole from elsewhere and leaves the others as they are', () => {
    const mixed = mixedStreams(a, [{ covers: weather, from: b }]);
    expect(take(mixed('weather/days'))).toEqual(take(b('weather/days')));
    expect(take(mixed('usage/x'))).toEqual(take(a('usage/x')));
  });

  it('without swaps is the draw itself', () => {
    expect(take(mixedStreams(a, [])('start'))).toEqual(take(a('start')));
  });

  it('swaps single numbers, which keep their places', () => {
    const mixed = mixedStreams(a, [{ covers: (p) => p === 'start', place: 1, from: b }]);
    const [ours, theirs] = [take(a('start')), take(b('start'))];
    expect(take(mixed('start'))).toEqual([ours[0], theirs[1], ...ours.slice(2)]);
  });

  it('holds numbers where it is told', () => {
    expect(take(mixedStreams(a, [{ covers: weather, from: 0.25 }])('weather/x'), 3)).toEqual([
      0.25, 0.25, 0.25,
    ]);
    const first = mixedStreams(a, [{ covers: weather, place: 0, from: 0.25 }]);
    expect(take(first('weather/x'))).toEqual([0.25, ...take(a('weather/x')).slice(1)]);
  });

  it('of swaps that cover the same number lets the last count', () => {
    const whole = mixedStreams(a, [
      { covers: weather, from: b },
      { covers: weather, from: c },
    ]);
    expect(take(whole('weather/x'))).toEqual(take(c('weather/x')));
    const placed = mixedStreams(a, [
      { covers: weather, from: b },
      { covers: weather, place: 2, from: 0.5 },
    ]);
    expect(take(placed('weather/x'))).toEqual(take(b('weather/x')).map((u, i) => (i === 2 ? 0.5 : u)));
    const undone = mixedStreams(a, [
      { covers: weather, place: 2, from: 0.5 },
      { covers: weather, from: b },
    ]);
    expect(take(undone('weather/x'))).toEqual(take(b('weather/x')));
  });

  it('gives the same numbers however often a purpose is asked for', () => {
    const mixed = mixedStreams(a, [{ covers: weather, place: 1, from: b }]);
    expect(take(mixed('weather/x'))).toEqual(take(mixed('weather/x')));
  });
});
