/** How bright the skies of a draw are: what the weather's low and high are told apart by. */
import { mixedStreams } from '../../chance/mixed-streams.ts';
import type { Streams } from '../../chance/streams.ts';
import { workspaceOf } from '../../trials/shard.ts';
import type { Study } from '../../trials/study.ts';
import { fillSky } from '../../trials/workspace.ts';

/** Days looked at, from the start; at most the horizon. */
const SKY_DAYS = 7;

/** Global horizontal irradiation of the first week, kWh/m², had the outage begun at noon of the season's middle day. */
export function skyKWhM2(study: Study, streams: Streams): number {
  const work = workspaceOf(study);
  fillSky(study, work, mixedStreams(streams, [{ covers: (purpose) => purpose === 'start', from: 0.5 }]));
  const minutes = Math.min(study.minutes, SKY_DAYS * 1440);
  let sum = 0;
  for (let m = 0; m < minutes; m++) sum += work.weather.ghiWm2[m]!;
  return sum / 60_000;
}
