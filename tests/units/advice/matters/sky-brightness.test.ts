/** What the dullest and the brightest skies of a study are told apart by. MODEL.md §18.1. */
import { describe, expect, it } from 'vitest';
import { prepareStudy } from '../../../../packages/sim/src/index.ts';
import { skyKWhM2 } from '../../../../packages/sim/src/advice/matters/sky-brightness.ts';
import { streamsOf } from '../../../../packages/sim/src/chance/streams.ts';
import { workspaceOf } from '../../../../packages/sim/src/trials/shard.ts';
import { fillSky } from '../../../../packages/sim/src/trials/workspace.ts';
import { sumOf, tinyScenario } from '../../step/tiny-house.ts';

/** A study of so many days whose outages begin as told. */
function studyOf(days: number, begins: { readonly startLocal?: string; readonly months?: number[] }) {
  const scenario = tinyScenario({ circuits: { a: { watts: 1 } }, hours: 24 * days });
  const outage = { ...scenario.outage, year: 2026, startLocal: undefined, ...begins };
  return prepareStudy({ ...scenario, outage }, { seed: 'sky' });
}

describe('how bright the skies of a draw are', () => {
  const season = { months: [3, 6] };
  /** March and June have 61 days; the middle one, day 30 of them from 0, is the last of March. */
  const fromMiddle = studyOf(10, { startLocal: '2026-03-31T12:00' });
  const ghiWm2 = (draw: number) => {
    const work = workspaceOf(fromMiddle);
    fillSky(fromMiddle, work, streamsOf('sky', draw));
    return work.weather.ghiWm2;
  };
  const kWhM2 = (draw: number, days: number) => sumOf(ghiWm2(draw).subarray(0, days * 1440)) / 60_000;

  it('is the sum of their first seven days, from noon of the season’s middle day', () => {
    const study = studyOf(10, season);
    for (let draw = 0; draw < 5; draw++)
      expect(skyKWhM2(study, streamsOf('sky', draw))).toBeCloseTo(kWhM2(draw, 7), 9);
  });

  it('is that of the whole outage where it is shorter', () => {
    const study = studyOf(3, season);
    for (let draw = 0; draw < 5; draw++)
      expect(skyKWhM2(study, streamsOf('sky', draw))).toBeCloseTo(kWhM2(draw, 3), 9);
  });
});
