import { describe, expect, it } from 'vitest';
import { prepareStudy, readScenario, resolveScenario } from '../../../packages/sim/src/index.ts';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { availableW } from '../../../packages/sim/src/step/unit-solar.ts';
import { workspaceOf } from '../../../packages/sim/src/trials/shard.ts';
import { fillDraw } from '../../../packages/sim/src/trials/workspace.ts';
import { tinySpec } from './tiny-house.ts';

/** Watts of the house's only array in the draw's every minute, and the minute of the local day. */
function watts(outDuring: string[] | undefined, snowDays: number) {
  const spec = tinySpec({ circuits: { talk: { watts: 10 } }, hours: 72, timeZone: 'America/New_York' });
  const [unit] = spec.units;
  const array = {
    peakW: 400,
    tiltDeg: 30,
    azimuthDeg: 180,
    ...(outDuring === undefined ? {} : { outDuring }),
  };
  const file = {
    ...spec,
    weather: { ...spec.weather, snowCoverDays: { perMonth: new Array<number>(12).fill(snowDays) } },
    units: [{ ...unit, solar: { inputLimitW: 1000, arrays: [array] } }],
  };
  const read = readScenario(JSON.stringify(file), 'panels.json', new Map());
  const study = prepareStudy(
    resolveScenario(read, { normals: new Map(), years: new Map(), profiles: new Map() }),
    { seed: 'panels' },
  );
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf('panels', 0));
  const solar = work.draws[0]!.solar[0]!;
  return {
    watts: Array.from(solar.usableW, (_, m) => availableW(solar, m)),
    minuteOfDay: Array.from(work.clock.localMinuteOfDay),
  };
}

describe('portable panels', () => {
  it('give what fixed ones give while they are out, and nothing while they are in', () => {
    const fixed = watts(undefined, 0);
    const portable = watts(['09:00-15:30'], 0);
    let compared = 0;
    portable.watts.forEach((w, m) => {
      const out = portable.minuteOfDay[m]! >= 540 && portable.minuteOfDay[m]! < 930;
      expect(w).toBe(out ? fixed.watts[m] : 0);
      if (out && w > 0) compared++;
    });
    expect(compared).toBeGreaterThan(600);
    expect(fixed.watts.reduce((a, b) => a + b, 0)).toBeGreaterThan(portable.watts.reduce((a, b) => a + b, 0));
  });

  it('are put out on top of the snow', () => {
    const hidden = watts(undefined, 31).watts.reduce((a, b) => a + b, 0);
    const portable = watts(['09:00-15:30'], 31).watts.reduce((a, b) => a + b, 0);
    expect(hidden).toBe(0);
    expect(portable).toBeGreaterThan(0);
  });
});
