/** The sun table: the same sun as `sunPosition`, kept by the day and looked at by outages. */
import { describe, expect, it } from 'vitest';
import { SOLAR_CONSTANT_WM2 } from '../../../packages/sim/src/sky/extraterrestrial.ts';
import { cosIncidence } from '../../../packages/sim/src/sky/sun-direction.ts';
import { sunPosition } from '../../../packages/sim/src/sky/sun-position.ts';
import {
  createSunTable,
  createSunTrack,
  fillSunTrack,
  sunTableOf,
} from '../../../packages/sim/src/sky/sun-table.ts';

const DAY = 1440;
const RADIANS = Math.PI / 180;
const boston = { latitudeDeg: 42.4, longitudeDeg: -71, elevationM: 6 };
const planes = [
  { tiltDeg: 30, azimuthDeg: 180 },
  { tiltDeg: 90, azimuthDeg: 90 },
];
const newYear2026 = Date.UTC(2026, 0, 1) / 60_000;

describe('createSunTable', () => {
  it.each([
    ['Boston', boston],
    ['the equator at the date line', { latitudeDeg: 0, longitudeDeg: 180 }],
    ['Tromsø', { latitudeDeg: 69.65, longitudeDeg: 18.95 }],
    ['the south pole', { latitudeDeg: -90, longitudeDeg: 0 }],
  ])('points to the sun as sunPosition does within 1e-7, at the middle of each minute: %s', (_, site) => {
    const table = createSunTable(site);
    let worst = 0;
    let count = 0;
    for (let utcDay = 20454; utcDay < 20454 + 365; utcDay += 7) {
      const day = table.day(utcDay);
      for (let minute = 0; minute < DAY; minute += 13) {
        const sun = sunPosition(utcDay * DAY + minute + 0.5, site);
        const level = Math.sin(sun.zenithDeg * RADIANS);
        worst = Math.max(
          worst,
          Math.abs(day.up[minute]! - Math.cos(sun.zenithDeg * RADIANS)),
          Math.abs(day.east[minute]! - level * Math.sin(sun.azimuthDeg * RADIANS)),
          Math.abs(day.north[minute]! - level * Math.cos(sun.azimuthDeg * RADIANS)),
        );
        count += 1;
      }
    }
    expect(count).toBe(53 * 111);
    expect(worst).toBeLessThan(1e-7); // the last place of a Float32 is 6e-8
  });

  it('gives the solar constant over the squared distance', () => {
    const utcDay = newYear2026 / DAY + 100;
    const { radiusVectorAu } = sunPosition(utcDay * DAY + 720.5, boston);
    const expected = SOLAR_CONSTANT_WM2 / (radiusVectorAu * radiusVectorAu);
    expect(createSunTable(boston).day(utcDay).extraterrestrialNormalWm2[720]).toBeCloseTo(expected, 3);
  });

  it('gives cosIncidence on a plane, and 0 with the sun behind it', () => {
    const table = createSunTable(boston);
    const utcDay = newYear2026 / DAY + 200;
    const day = table.day(utcDay);
    for (const plane of planes) {
      const onPlane = table.planeDay(plane, utcDay);
      let behind = 0;
      for (let minute = 0; minute < DAY; minute++) {
        const sun = { east: day.east[minute]!, north: day.north[minute]!, up: day.up[minute]! };
        expect(onPlane[minute]).toBeCloseTo(Math.max(0, cosIncidence(sun, plane)), 6);
        if (onPlane[minute] === 0) behind += 1;
      }
      expect(behind).toBeGreaterThan(400);
      expect(behind).toBeLessThan(1000);
    }
  });

  it('answers the same whatever was asked before, and keeps what it made', () => {
    const first = createSunTable(boston);
    const second = createSunTable(boston);
    first.planeDay(planes[1]!, 20500);
    first.day(20000);
    expect(first.day(20500).up).toEqual(second.day(20500).up);
    expect(first.day(20500)).toBe(first.day(20500));
    expect(first.planeDay({ ...planes[0]! }, 20500)).toBe(first.planeDay(planes[0]!, 20500));
  });
});

describe('fillSunTrack', () => {
  it('has the right minutes across midnights, leap day included', () => {
    const table = createSunTable(boston);
    const start = Date.UTC(2028, 1, 27, 17, 23) / 60_000;
    const minutes = 3 * DAY + 77;
    const track = createSunTrack(minutes, 2);
    fillSunTrack(table, planes, start, minutes, track);
    for (const minute of [0, 396, 397, 398, DAY + 396, DAY + 397, 2 * DAY + 397, minutes - 1]) {
      const utcDay = Math.floor((start + minute) / DAY);
      const at = start + minute - utcDay * DAY;
      expect(track.cosZenith[minute]).toBe(table.day(utcDay).up[at]);
      expect(track.extraterrestrialNormalWm2[minute]).toBe(table.day(utcDay).extraterrestrialNormalWm2[at]);
      planes.forEach((plane, i) => expect(track.planes[i]![minute]).toBe(table.planeDay(plane, utcDay)[at]));
    }
  });

  it('takes a shorter outage than it was made for, before 1970 too', () => {
    const table = createSunTable(boston);
    const track = createSunTrack(3000, 1);
    fillSunTrack(table, [planes[0]!], -1500, 2000, track);
    expect(track.minutes).toBe(2000);
    expect(track.cosZenith.length).toBe(2000);
    expect(track.cosZenith[0]).toBe(table.day(-2).up[DAY - 60]);
    expect(track.cosZenith[60]).toBe(table.day(-1).up[0]);
    expect(track.cosZenith[1999]).toBe(table.day(0).up[499]);
  });

  it('is the same whatever outages came before, near or years away', () => {
    const used = createSunTable(boston);
    const track = createSunTrack(20 * DAY, 2);
    for (const daysOff of [40, -3, 900, 15, -700]) {
      fillSunTrack(used, planes, newYear2026 + daysOff * DAY + 77, 20 * DAY, track);
    }
    fillSunTrack(used, planes, newYear2026, 20 * DAY, track);
    const fresh = createSunTrack(20 * DAY, 2);
    fillSunTrack(createSunTable(boston), planes, newYear2026, 20 * DAY, fresh);
    expect(track).toStrictEqual(fresh);
  });

  it.each([
    ['Boston', boston, newYear2026 + 700],
    ['beyond the polar circle in summer', { latitudeDeg: 75, longitudeDeg: 20 }, newYear2026 + 100 * DAY],
    ['beyond the polar circle in winter', { latitudeDeg: 75, longitudeDeg: 20 }, newYear2026],
  ])('tells the stretches with the sun up, and no minute besides: %s', (_, site, start) => {
    const track = createSunTrack(40 * DAY, 0);
    fillSunTrack(createSunTable(site), [], start, 40 * DAY, track);
    const lit = new Uint8Array(40 * DAY);
    const { count, from, to } = track.daylight;
    for (let s = 0; s < count; s++) lit.fill(1, from[s], to[s]);
    expect(lit).toEqual(Uint8Array.from(track.cosZenith, (up) => (up > 0 ? 1 : 0)));
  });

  it('takes no planes', () => {
    const track = createSunTrack(10, 0);
    fillSunTrack(createSunTable(boston), [], newYear2026, 10, track);
    expect(track.planes).toEqual([]);
  });
});

describe('sunTableOf', () => {
  it('keeps the table of the latest site, and of no other', () => {
    const kept = sunTableOf(boston);
    expect(sunTableOf({ ...boston })).toBe(kept);
    const higher = sunTableOf({ ...boston, elevationM: 1500 });
    expect(higher).not.toBe(kept);
    expect(sunTableOf(boston)).not.toBe(kept);
    expect(sunTableOf(boston).day(20_454).up).toEqual(kept.day(20_454).up);
  });
});
