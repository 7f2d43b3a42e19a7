/** How times and temperatures are written, and the words of a link that a page cannot follow. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Scenario } from '@rideout/sim';
import {
  celsiusFrom,
  clockTimesFrom,
  clockTimesIn,
  degreesIn,
  degreesText,
  inDegrees,
} from '../../packages/notebooks/src/charts/look.ts';
import { lookFrom, lookLink } from '../../packages/notebooks/src/page/look-form.ts';
import { saidIn } from '../../packages/notebooks/src/page/page-link.ts';
import { startText } from '../../packages/notebooks/src/page/start-text.ts';
import { noBrowser } from './browser.ts';
import { smallHouse } from './houses.ts';
import { pageBench, settled } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const anyLook = fc.record({
  clock: fc.constantFrom(12 as const, 24 as const),
  temperature: fc.constantFrom('C' as const, 'F' as const),
});

describe('how times and temperatures are written', () => {
  it('turns every minute of the day into twelve hours and back', () => {
    for (let minute = 0; minute < 1440; minute++) {
      const time = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      expect(clockTimesFrom(clockTimesIn(time, 12))).toBe(time);
    }
    expect(clockTimesIn('awake 06:30-22:30', 12)).toBe('awake 6:30\u00a0am-10:30\u00a0pm');
    expect(clockTimesIn('00:00-24:00', 12)).toBe('12:00\u00a0am-12:00\u00a0am');
    expect(clockTimesIn('awake 06:30-22:30', 24)).toBe('awake 06:30-22:30');
    expect(clockTimesFrom('7 am-8PM, 18:00-19:00, 12:15 a.m.')).toBe('07:00-20:00, 18:00-19:00, 00:15');
  });

  it('turns degrees there and back', () => {
    const fahrenheit = { temperature: 'F' } as const;
    expect([-40, 0, 4.4, 100].map((c) => inDegrees(c, fahrenheit))).toEqual([-40, 32, 39.92, 212]);
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), anyLook, (c, look) => {
        expect(celsiusFrom(inDegrees(c, look), look)).toBeCloseTo(c, 9);
      }),
    );
    expect(degreesText(-4.6, { temperature: 'C' })).toBe('−5\u00a0°C');
    expect(degreesText(-0.3, { temperature: 'C' })).toBe('0\u00a0°C'); // no "−0"
    expect(degreesIn('below 4.4 °C or −5\u00a0°C', fahrenheit)).toBe('below 40\u00a0°F or 23\u00a0°F');
    expect(degreesIn('warmer than 18 °C', fahrenheit)).toBe('warmer than 64\u00a0°F');
    expect(degreesIn('below 4.4 °C', { temperature: 'C' })).toBe('below 4.4 °C');
  });

  it('goes into a link and comes back, and only what differs from the usual is said', () => {
    fc.assert(
      fc.property(anyLook, anyLook, (look, usual) => {
        const said = lookLink(look, usual);
        expect(lookFrom(said, usual)).toEqual({ look, complaints: [] });
        expect([...said].length).toBe(
          Number(look.clock !== usual.clock) + Number(look.temperature !== usual.temperature),
        );
      }),
    );
  });

  it('writes the moment of a fixed start', () => {
    expect(startText('2026-01-15T18:05', 24)).toBe('15 January 2026 at 18:05');
    expect(startText('2026-01-15T18:05', 12)).toBe('15 January 2026 at 6:05\u00a0pm');
    expect(startText('soon', 12)).toBe('soon');
  });
});

describe('saidIn(hash)', () => {
  it('takes the name of a place on the page for no setting', () => {
    expect([...saidIn('#survival-curves')]).toEqual([]);
    expect([...saidIn('#seed=a&draws=5')]).toEqual([
      ['seed', 'a'],
      ['draws', '5'],
    ]);
  });
});

describe.skipIf(noBrowser())('a link that a page cannot follow whole', () => {
  const scenario = smallHouse();
  const fixed: Scenario = {
    ...scenario,
    outage: { ...without(scenario.outage, 'months'), startLocal: '2026-01-15T18:05' },
  };
  const bench = pageBench();
  const files: Record<string, PublishedFile> = {};

  beforeAll(async () => {
    for (const name of ['how-many-days', 'one-battery-or-two', 'through-the-year'] as const)
      files[name] = await published(name, { scenario, draws: 8 });
    files['fixed'] = await published('how-many-days', { scenario: fixed, draws: 8 });
  }, 60_000);

  const said = async (name: string, hash: string) => {
    const { page, troubles } = await bench.open(files[name]!, { hash, locale: 'en-GB' });
    await page.locator('figure.chart').first().waitFor();
    expect(troubles).toEqual([]);
    return { page, lines: await page.locator('.trouble p').allInnerTexts() };
  };

  it('is told in one line which words have no control here, and the rest of it is followed', async () => {
    const { page, lines } = await said('one-battery-or-two', '#modules=3&draws=6&across=solar');
    expect(lines).toEqual([
      'The link says modules = “3”, across = “solar”: this page has no such setting, and they are left aside.',
    ]);
    expect(await page.getByLabel('Simulated outages', { exact: true }).inputValue()).toBe('6');
  });

  it('is told when a page takes one where several are named', async () => {
    const ids = scenario.alternatives[0]!.household.strategies.map((s) => s.id);
    const { lines } = await said('through-the-year', `#strategies=${ids.slice(0, 2).join(',')}&months=7`);
    expect(lines).toEqual([
      `The link says strategies = “${ids.slice(0, 2).join(',')}”; this page takes one of them, “${ids[0]}”.`,
      'The link says months = “7”: this page has no such setting, and it is left aside.',
    ]);
  });

  it('is not complained of when it only names a place on the page, or a look that changes nothing here', async () => {
    expect((await said('how-many-days', '#survival-curves')).lines).toEqual([]);
    const { page, lines } = await said('how-many-days', '#clock=12&degrees=F');
    expect(lines).toEqual([]);
    expect(await page.getByLabel('Clock').count()).toBe(0);
  });

  it('is looked at again when it is changed by hand, and keeps what is still said', async () => {
    const { page } = await said('how-many-days', '#wind=9');
    expect(await page.locator('.trouble').innerText()).toContain('wind = “9”');
    await page.evaluate(() => (location.hash = '#draws=7&months=2,5'));
    await settled(page);
    await expect.poll(() => page.locator('.trouble').count()).toBe(0);
    await expect
      .poll(() => page.locator('#survival-curves .provenance').innerText(), { timeout: 20_000 })
      .toContain('7 simulated outages');
    expect(page.url()).toContain('months=2,5');
    expect(await page.getByLabel('Begins in').locator('option:checked').innerText()).toBe('February, May');
  });

  it('carries the clock where an outage begins at a fixed time', async () => {
    const { page } = await said('fixed', '#clock=12');
    const words = () => page.locator('body').innerText();
    await expect.poll(words).toContain('beginning on 15 January 2026 at 6:05\u00a0pm');
    await page.getByLabel('Clock').selectOption({ index: 0 });
    await expect.poll(words).toContain('beginning on 15 January 2026 at 18:05');
    expect(page.url()).not.toContain('clock=');
  });
});

function without<T extends object, K extends keyof T>(block: T, key: K): Omit<T, K> {
  const rest = { ...block };
  delete rest[key];
  return rest;
}
