/** What falls on a tilted plane: laws that hold for any weather. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beamRatio,
  fillPlaneIrradiance,
  hdkrPlaneWm2,
  planeView,
} from '../../../packages/sim/src/sky/plane-of-array.ts';
import { isotropicPlaneWm2 } from '../../published/sky/plain-sky.ts';
import { createSunTable, createSunTrack, fillSunTrack } from '../../../packages/sim/src/sky/sun-table.ts';

const weather = {
  ghi: fc.double({ min: 0.01, max: 1500, noNaN: true }),
  diffuseShare: fc.double({ min: 0, max: 1, noNaN: true }),
  cosZenith: fc.double({ min: -0.1, max: 1, noNaN: true }),
  cosIncidence: fc.double({ min: -1, max: 1, noNaN: true }),
  tiltDeg: fc.double({ min: 0, max: 90, noNaN: true }),
  reflectance: fc.double({ min: 0, max: 1, noNaN: true }),
};

describe('planeView', () => {
  it('sees the whole sky lying flat, half of each upright', () => {
    expect(planeView(0)).toEqual({ skyFraction: 1, groundFraction: 0, horizonWeight: 0 });
    const wall = planeView(90);
    expect(wall.skyFraction).toBeCloseTo(0.5, 12);
    expect(wall.groundFraction).toBeCloseTo(0.5, 12);
  });
});

describe('hdkrPlaneWm2', () => {
  it('gives back GHI on a flat plane with the sun above 5°, whatever the split', () => {
    fc.assert(
      fc.property(
        weather.ghi,
        weather.diffuseShare,
        fc.double({ min: 0.09, max: 1, noNaN: true }),
        (ghi, share, up) => {
          const flat = hdkrPlaneWm2(ghi, ghi * share, beamRatio(up, up), 1400 * up, planeView(0), 0.5);
          expect(flat).toBeCloseTo(ghi, 8);
        },
      ),
    );
  });

  it('takes all diffuse light for the sun’s own where beam is more than there is above the air', () => {
    const view = planeView(40);
    expect(hdkrPlaneWm2(1300, 100, 1.2, 1000, view, 0)).toBeCloseTo(1300 * 1.2, 9);
    expect(hdkrPlaneWm2(1100, 100, 1.2, 1000, view, 0)).toBeCloseTo(1100 * 1.2, 9);
  });

  it('takes none of it for the sun’s own once the sun has set', () => {
    const view = planeView(40);
    expect(hdkrPlaneWm2(20, 20, 0, 0, view, 0)).toBeCloseTo(
      (20 * (1 + Math.cos((40 * Math.PI) / 180))) / 2,
      9,
    );
  });

  it('is the isotropic sky when all light is diffuse', () => {
    fc.assert(
      fc.property(
        weather.ghi,
        weather.tiltDeg,
        weather.reflectance,
        weather.cosIncidence,
        (ghi, tilt, rho, cosine) => {
          const view = planeView(tilt);
          const ratio = beamRatio(cosine, 0.4);
          const expected = isotropicPlaneWm2(ghi, ghi, ratio, view, rho);
          expect(hdkrPlaneWm2(ghi, ghi, ratio, 500, view, rho)).toBeCloseTo(expected, 8);
        },
      ),
    );
  });

  it('is never negative, never not a number, and never above 12.5 times GHI, sun up or just down', () => {
    fc.assert(
      fc.property(
        weather.ghi,
        weather.diffuseShare,
        weather.cosZenith,
        weather.cosIncidence,
        weather.tiltDeg,
        weather.reflectance,
        (ghi, share, up, cosine, tilt, rho) => {
          const plane = hdkrPlaneWm2(
            ghi,
            ghi * share,
            beamRatio(cosine, up),
            1400 * up,
            planeView(tilt),
            rho,
          );
          expect(plane).toBeGreaterThanOrEqual(0);
          expect(plane).toBeLessThan(ghi * 12.5);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('takes diffuse above GHI as GHI, and no light as none', () => {
    const view = planeView(30);
    expect(hdkrPlaneWm2(100, 150, 2, 500, view, 0.2)).toBe(hdkrPlaneWm2(100, 100, 2, 500, view, 0.2));
    expect(hdkrPlaneWm2(0, 0, 2, 500, view, 0.2)).toBe(0);
  });

  it('grows with more light at the same split and with brighter ground', () => {
    const view = planeView(60);
    expect(hdkrPlaneWm2(500, 250, 1.2, 900, view, 0.2)).toBeGreaterThan(
      hdkrPlaneWm2(400, 200, 1.2, 900, view, 0.2),
    );
    expect(hdkrPlaneWm2(500, 250, 1.2, 900, view, 0.7)).toBeGreaterThan(
      hdkrPlaneWm2(500, 250, 1.2, 900, view, 0.2),
    );
  });
});

describe('fillPlaneIrradiance', () => {
  it('is hdkrPlaneWm2 minute by minute, and 0 at night', () => {
    const minutes = 2 * 1440;
    const plane = { tiltDeg: 35, azimuthDeg: 200 };
    const track = createSunTrack(minutes, 1);
    fillSunTrack(createSunTable({ latitudeDeg: 42, longitudeDeg: -71 }), [plane], 29_400_000, minutes, track);
    const ghi = track.cosZenith.map((up) => Math.max(0, up) * 700);
    const dhi = ghi.map((each, minute) => each * (0.2 + 0.6 * ((minute % 7) / 7)));
    const out = new Float32Array(minutes).fill(-1);
    const view = planeView(35);
    fillPlaneIrradiance(track, 0, view, ghi, dhi, 0.2, out);
    let lit = 0;
    for (let minute = 0; minute < minutes; minute++) {
      const up = track.cosZenith[minute]!;
      const above = track.extraterrestrialNormalWm2[minute]! * up;
      const ratio = beamRatio(track.planes[0]![minute]!, up);
      const expected = hdkrPlaneWm2(ghi[minute]!, dhi[minute]!, ratio, above, view, 0.2);
      expect(out[minute]).toBe(Math.fround(expected));
      if (up > 0) lit += 1;
      else expect(out[minute]).toBe(0);
    }
    expect(lit).toBeGreaterThan(1000);
    expect(lit).toBeLessThan(2000);
  });
});
