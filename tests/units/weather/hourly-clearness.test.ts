/** Clearness of the hours of a day, worked out from the published form by hand. MODEL.md, Weather, W3. */
import { describe, expect, it } from 'vitest';
import {
  clearestHour,
  hourClearnessSpread,
  hourlyLaw,
  meanHourClearness,
} from '../../../packages/sim/src/weather/hourly-clearness.ts';

describe('the mean clearness of an hour', () => {
  // Aguiar & Collares-Pereira 1992: λ = −0.19 + 1.12K + 0.24e^(−8K), ε = 0.32 − 1.6(K − 0.5)², κ = 0.19 + 2.27K² − 2.51K³
  it.each([
    [0.2, 0.0824552, 0.176, 0.26072, 0.2180626, 0.1869402],
    [0.5, 0.3743958, 0.32, 0.44375, 0.579716, 0.5061345],
    [0.7, 0.5948875, 0.256, 0.44137, 0.7595351, 0.7007814],
  ])('on a day of %f is λ + ε e^(−κ / sin h)', (k, floor, height, thickness, overhead, atThirty) => {
    const law = hourlyLaw(k);
    expect(law.floor).toBeCloseTo(floor, 6);
    expect(law.height).toBeCloseTo(height, 9);
    expect(law.thickness).toBeCloseTo(thickness, 9);
    expect(meanHourClearness(law, 1)).toBeCloseTo(overhead, 6);
    expect(meanHourClearness(law, 0.5)).toBeCloseTo(atThirty, 6);
  });
});

describe('the spread of an hour', () => {
  it('is the node’s of the day with the sun overhead, and grows towards the horizon by half the published B', () => {
    // nodes at K = 0.4 and 0.5: 0.25 and 0.265; B at 0.4: 1.5 · 0.05² + 8 · 0.4⁵ = 0.08567
    expect(hourClearnessSpread(hourlyLaw(0.4), 1)).toBeCloseTo(0.25, 12);
    expect(hourClearnessSpread(hourlyLaw(0.45), 1)).toBeCloseTo(0.2575, 12);
    expect(hourClearnessSpread(hourlyLaw(0.4), 0.5)).toBeCloseTo(0.25 * Math.exp(0.08567 / 2), 9);
  });
});

describe('the clearest that an hour can be', () => {
  it('is 0.82 cos[π (t − 12) / 30] at its middle, 1.1 of its day where that is more', () => {
    expect(clearestHour(0.5, 11)).toBeCloseTo(0.8188762, 7);
    expect(clearestHour(0.5, 12)).toBeCloseTo(0.8188762, 7);
    expect(clearestHour(0.5, 6)).toBeCloseTo(0.6877099, 7); // half past six: 33°
    expect(clearestHour(0.65, 6)).toBeCloseTo(0.715, 12);
    expect(clearestHour(0.8, 12)).toBeCloseTo(0.88, 12);
  });
});
