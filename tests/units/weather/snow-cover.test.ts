import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { fillSnow } from '../../../packages/sim/src/weather/snow-cover.ts';
import { createWeatherDraw } from '../../../packages/sim/src/weather/weather-draw.ts';
import { weatherCase } from './weather-case.ts';

const everyMonth = (days: number): number[] => new Array<number>(12).fill(days);

describe('fillSnow', () => {
  it('leaves panels bare without snow days', () => {
    expect(weatherCase().draw('2026-01-10T05:00Z', 14_400, 1).snowOnPanels.includes(1)).toBe(false);
    const none = weatherCase({ snow: { perMonth: everyMonth(0), untilCleared: false } });
    expect(none.draw('2026-01-10T05:00Z', 14_400, 1).snowOnPanels.includes(1)).toBe(false);
  });

  it('hides panels all month when every day has snow', () => {
    const always = weatherCase({ snow: { perMonth: everyMonth(31), untilCleared: false } });
    expect(always.draw('2026-01-10T05:00Z', 14_400, 1).snowOnPanels.includes(0)).toBe(false);
  });

  it('keeps the month’s share of covered days, in spells of about four days', () => {
    const some = weatherCase({ snow: { perMonth: everyMonth(9.3), untilCleared: false } });
    let covered = 0;
    let falls = 0;
    let days = 0;
    for (let draw = 0; draw < 300; draw++) {
      const { snowOnPanels } = some.draw('2026-01-01T05:12Z', 30 * 1440, draw); // mean solar midnight
      for (let day = 0; day < 30; day++) {
        const now = snowOnPanels[1440 * day + 720]!;
        covered += now;
        falls += day > 0 && now === 1 && snowOnPanels[1440 * day - 720] === 0 ? 1 : 0;
        days++;
      }
    }
    // 30 % of days; standard error over 300 × 30 days in spells of four: about 0.013
    expect(Math.abs(covered / days - 0.3)).toBeLessThan(0.04);
    expect(Math.abs(covered / falls - 4)).toBeLessThan(0.6);
  });

  it('keeps the share of months that are nearly all under snow: their spells are longer than four days', () => {
    // 27.9 of 31 days: nine in ten, in spells of nine days with one between them
    const { plan } = weatherCase({ snow: { perMonth: everyMonth(27.9), untilCleared: false } });
    const midnight = Date.parse('2026-01-01T05:12Z') / 60_000;
    const out = createWeatherDraw(31 * 1440);
    let covered = 0;
    for (let draw = 0; draw < 300; draw++) {
      fillSnow(plan.snow, plan.skies, midnight, streamsOf('long snow', draw), out);
      for (let day = 0; day < 31; day++) covered += out.snowOnPanels[1440 * day + 720]!;
    }
    // days follow each other with stays − falls = 8/9 − 1 = −0.11: nearly as if drawn one by one
    expect(Math.abs(covered / (300 * 31) - 0.9)).toBeLessThan(4 * Math.sqrt((0.9 * 0.1) / (300 * 31)));
  });

  it('finds the month’s share of first days under snow: it may have fallen before the outage', () => {
    const { plan } = weatherCase({ snow: { perMonth: everyMonth(9.3), untilCleared: false } });
    const midnight = Date.parse('2026-01-10T05:12Z') / 60_000; // mean solar
    const out = createWeatherDraw(1440);
    const draws = 2000;
    let covered = 0;
    for (let draw = 0; draw < draws; draw++) {
      fillSnow(plan.snow, plan.skies, midnight, streamsOf('snow', draw), out);
      covered += out.snowOnPanels[720]!;
    }
    expect(Math.abs(covered / draws - 0.3)).toBeLessThan(4 * Math.sqrt((0.3 * 0.7) / draws));
  });

  it('is cleared at noon where the sun does not rise', () => {
    const polar = weatherCase({ latitudeDeg: 80, snow: { perMonth: everyMonth(31), untilCleared: true } });
    const { snowOnPanels } = polar.draw('2026-01-10T05:12Z', 3 * 1440, 1);
    expect(snowOnPanels.lastIndexOf(1)).toBe(719);
    expect(snowOnPanels[0]).toBe(1);
  });

  it('is cleared two hours after the first sunrise of a spell and then stays bare till the next fall', () => {
    const cleared = weatherCase({ snow: { perMonth: everyMonth(31), untilCleared: true } });
    const { snowOnPanels, sun } = cleared.draw('2026-01-10T05:12Z', 10 * 1440, 1);
    const sunrise = sun.cosZenith.findIndex((cosine) => cosine > 0);
    expect(snowOnPanels.lastIndexOf(1)).toBe(sunrise + 119);
    expect(snowOnPanels[0]).toBe(1);
  });
});
