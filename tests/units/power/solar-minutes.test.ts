import { describe, expect, it } from 'vitest';
import { MINUTES_PER_HOUR, solarWmin } from '../../../packages/sim/src/power/hour-figures.ts';
import { createSolarMinutes, sumUpSolar } from '../../../packages/sim/src/step/solar-minutes.ts';

const MINUTES = 3 * MINUTES_PER_HOUR + 25; // ends inside an hour
const DAYLIGHT = { count: 2, from: Int32Array.of(37, 170), to: Int32Array.of(165, MINUTES) };

const solar = createSolarMinutes(MINUTES);
for (let s = 0; s < DAYLIGHT.count; s++)
  for (let m = DAYLIGHT.from[s]!; m < DAYLIGHT.to[s]!; m++) solar.usableW[m] = 100 + ((m * 37) % 64) / 64;
sumUpSolar(solar, DAYLIGHT);

describe('usable solar', () => {
  it('has its sum, least and most hour by hour', () => {
    for (let h = 0; h < solar.hourWmin.length; h++) {
      const inHour = [...solar.usableW.subarray(60 * h, 60 * h + 60)];
      expect(solar.hourWmin[h]).toBe(inHour.reduce((sum, w) => sum + w, 0));
      expect(solar.leastW[h]).toBe(Math.min(...inHour));
      expect(solar.mostW[h]).toBe(Math.max(...inHour));
    }
  });

  it('adds up over any stretch, within an hour and over several', () => {
    for (let from = 0; from <= MINUTES; from += 7)
      for (let to = from; to <= MINUTES; to++)
        expect(solarWmin(solar, from, to)).toBe(
          solar.usableW.subarray(from, to).reduce((sum, w) => sum + w, 0),
        );
  });
});
