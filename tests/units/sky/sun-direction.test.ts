/** Directions and angles. */
import { describe, expect, it } from 'vitest';
import { cosIncidence, sunDirection } from '../../../packages/sim/src/sky/sun-direction.ts';

describe('sunDirection', () => {
  it('is a unit vector everywhere', () => {
    for (const latitude of [-90, -45, 0, 33, 90]) {
      for (const hourAngle of [-180, -100, -15, 0, 60, 179]) {
        const { east, north, up } = sunDirection(latitude, 17, hourAngle);
        expect(east * east + north * north + up * up).toBeCloseTo(1, 14);
      }
    }
  });

  it('stands in the east before noon and in the west after, in both hemispheres', () => {
    for (const latitude of [-40, 40]) {
      expect(sunDirection(latitude, 10, -45).east).toBeGreaterThan(0);
      expect(sunDirection(latitude, 10, 45).east).toBeLessThan(0);
    }
  });

  it('stands in the south at noon in Boston and in the north in Sydney', () => {
    expect(sunDirection(42, 0, 0).north).toBeLessThan(0);
    expect(sunDirection(-34, 0, 0).north).toBeGreaterThan(0);
  });

  it('stands as high as the declination at the pole, at any hour', () => {
    for (const hourAngle of [-120, 0, 90]) {
      expect(sunDirection(90, 15, hourAngle).up).toBeCloseTo(Math.sin((15 * Math.PI) / 180), 14);
    }
  });
});

describe('cosIncidence', () => {
  it('on a flat plane is the cosine of the zenith angle', () => {
    const sun = sunDirection(42, 10, 30);
    expect(cosIncidence(sun, { tiltDeg: 0, azimuthDeg: 123 })).toBeCloseTo(sun.up, 14);
  });

  it('mirrors: morning on a plane turned east is afternoon on one turned as far west', () => {
    for (const turn of [10, 45, 90, 150]) {
      const morning = cosIncidence(sunDirection(42, -12, -40), { tiltDeg: 50, azimuthDeg: 180 - turn });
      const afternoon = cosIncidence(sunDirection(42, -12, 40), { tiltDeg: 50, azimuthDeg: 180 + turn });
      expect(morning).toBeCloseTo(afternoon, 14);
    }
  });

  it('is 1 on a plane that faces the sun', () => {
    const sun = sunDirection(42, 10, -30);
    const tiltDeg = (Math.acos(sun.up) * 180) / Math.PI;
    const azimuthDeg = (Math.atan2(sun.east, sun.north) * 180) / Math.PI;
    expect(cosIncidence(sun, { tiltDeg, azimuthDeg })).toBeCloseTo(1, 14);
  });
});
