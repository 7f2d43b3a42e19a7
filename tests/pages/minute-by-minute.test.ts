/** The page "One outage, minute by minute", opened from a file with the network off. */
import fc from 'fast-check';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { atLeastThisLong, traceDraw, traceTable, type Scenario } from '@rideout/sim';
import { circuitStretches, minutesIn } from '../../packages/notebooks/src/charts/circuit-stretches.ts';
import {
  clockText,
  dateText,
  longDateText,
  momentText,
  stretchText,
} from '../../packages/notebooks/src/charts/local-clock.ts';
import { minuteBuckets } from '../../packages/notebooks/src/charts/minute-buckets.ts';
import { shownText, type OutageView } from '../../packages/notebooks/src/charts/outage-view.ts';
import { outageEvents } from '../../packages/notebooks/src/page/outage-events.ts';
import { outageLink, outageSettingsFrom } from '../../packages/notebooks/src/page/outage-link.ts';
import { pickedDraw } from '../../packages/notebooks/src/page/outage-picks.ts';
import { noBrowser } from './browser.ts';
import { smallHouse, studyInNode } from './houses.ts';
import {
  accessibility,
  harmDone,
  NO_HARM,
  pageBench,
  savedFrom,
  settled,
  standsStill,
  widthTaken,
} from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const SEED = 'minutes';
const DRAWS = 20;
const scenario = smallHouse();
const { study, rows, summary } = studyInNode(scenario, { seed: SEED, draws: DRAWS });
const TIERS = 1; // position of the strategy “tiers”
const trace = traceDraw(study, { draw: 3, alternative: 0, strategy: TIERS });
const view: OutageView = {
  trace,
  household: scenario.alternatives[0]!.household,
  carriedOutBy: 'person',
  from: 0,
  to: trace.minutes,
  at: undefined,
  clock: 24,
  temperature: 'C',
  width: 800,
  provenance: '',
};

describe.skipIf(noBrowser())('the page "One outage, minute by minute"', () => {
  const bench = pageBench();
  let file: PublishedFile;
  /** With its answer: only the one outage is played in it. */
  let answered: PublishedFile;

  beforeAll(async () => {
    file = await published('minute-by-minute', { scenario, seed: SEED, draws: DRAWS });
    answered = await published('minute-by-minute', { scenario, summary });
  }, 60_000);

  const open = async (hash: string, options = {}, of = answered) => {
    const opened = await bench.open(of, { locale: 'en-GB', hash, ...options });
    await opened.page.locator('#temperatures').waitFor();
    return opened;
  };
  const headline = (page: Page) => page.locator('.headline').innerText();
  const answer = (page: Page) => page.locator('.answer').innerText();

  it('opens from a file, asks nothing of any network, and tells of the outage what Node tells', async () => {
    const { page, requests, troubles } = await open('#draw=3&strategies=tiers', {}, file);
    await settled(page);
    expect(await answer(page)).toContain('outage 3');
    expect(await answer(page)).toContain(atLeastThisLong((trace.runtimeMinutes ?? trace.minutes) / 1440));
    expect(await headline(page)).toContain(
      `The grid fails on ${longDateText(trace, 0)} at ${clockText(trace, 0, 24)}`,
    );
    expect(await page.locator('.chart-picture > svg').count()).toBe(5);
    const events = outageEvents(view);
    const listed = await page.locator('.outage-events li').allTextContents();
    expect(listed).toHaveLength(events.length);
    events.forEach((event, i) => {
      expect(listed[i]).toContain(event.text);
      expect(listed[i]).toContain(clockText(trace, event.minute, 24));
    });
    expect(events.length).toBeGreaterThan(5);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('writes out the very minutes that Node writes out', async () => {
    const { page } = await open('#draw=3&strategies=tiers');
    const csv = (await savedFrom(page, 'main', 'Save every minute as CSV')).toString('utf8');
    const from = await page.locator('#unit-charge .provenance').innerText();
    const study = new Array<string>(trace.minutes).fill(from);
    expect(csv.trim()).toBe(traceTable(trace).assign({ study }).toCSV().trim());
  });

  it('finds a typical, a bad and the worst outage among those simulated', async () => {
    const { page } = await open('#strategies=tiers', {}, file);
    await settled(page);
    for (const [label, pick] of [
      ['The worst one', 'worst'],
      ['A typical one', 'typical'],
      ['A bad one', 'bad'],
    ] as const) {
      const draw = pickedDraw(rows, 0, TIERS, pick)!;
      await page.getByRole('button', { name: label }).click();
      await expect.poll(() => answer(page), { timeout: 20_000 }).toContain(`outage ${draw} `);
      expect(await page.getByLabel('Outage number').inputValue()).toBe(String(draw));
    }
  });

  it('simulates the outages first where the page came with its answer, and then keeps its word', async () => {
    const { page, troubles } = await open('#strategies=tiers');
    await page.getByRole('button', { name: 'The worst one' }).click();
    expect(await page.locator('.outage-picks').innerText()).toContain('simulated first');
    const draw = pickedDraw(rows, 0, TIERS, 'worst')!;
    await expect
      .poll(() => page.locator('.outage-picks').innerText(), { timeout: 30_000 })
      .toContain(`outage ${draw} of those simulated`);
    await expect.poll(() => answer(page), { timeout: 20_000 }).toContain(`outage ${draw} `);
    expect(troubles).toEqual([]);
  });

  it('follows a link typed into the address bar', async () => {
    const other = scenario.alternatives[0]!.household.strategies[0]!;
    const { page } = await open('#draw=3');
    await page.evaluate(
      (id) => (location.hash = `#draw=5&degrees=F&strategies=${id}&minutes=100-1500`),
      other.id,
    );
    await expect.poll(() => answer(page), { timeout: 20_000 }).toContain('outage 5 ');
    await expect.poll(() => headline(page)).toContain('°F');
    expect(await page.getByLabel('Strategy', { exact: true }).locator('option:checked').innerText()).toBe(
      other.title,
    );
    for (const part of ['draw=5', 'degrees=F', `strategies=${other.id}`, 'minutes=100-1500'])
      expect(page.url()).toContain(part);
  });

  it('looks closer by day buttons, keeps the focus, and keeps the part in the link', async () => {
    const { page } = await open('#draw=3&strategies=tiers');
    const days = page.locator('.outage-range .buttons button');
    const second = (await days.nth(6).innerText()).trim();
    await days.nth(6).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.outage-range p').innerText()).toContain(`${second}, 00:00`);
    expect(page.url()).toMatch(/minutes=\d+-\d+/);
    expect(page.url()).toContain('draw=3');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent?.trim())).toBe(second);
    const linked = await open(new URL(page.url()).hash);
    expect(await linked.page.locator('.outage-range p').innerText()).toContain(`${second}, 00:00`);
    await linked.page.getByRole('button', { name: 'All of it', exact: true }).click();
    await expect.poll(() => linked.page.url()).not.toContain('minutes=');
  });

  it('says in every chart, and in the picture it saves, which part it shows; titles say what is of the whole', async () => {
    const { page } = await open('#draw=3&strategies=tiers&minutes=2000-2080');
    const shown = shownText({ ...view, from: 2000, to: 2080 });
    const notes = await page.locator('.chart-note').allInnerTexts();
    expect(notes).toHaveLength(5);
    for (const note of notes) expect(note).toContain(shown);
    const svg = (await savedFrom(page, '#unit-charge', 'Save as SVG'))
      .toString('utf8')
      .replace(/<[^>]*>/g, ' ');
    expect(svg.replace(/\s+/g, ' ')).toContain(shown);
    expect(await page.locator('#unit-charge h2').innerText()).toContain('in the whole outage');
    expect(await page.locator('#temperatures h2').innerText()).toMatch(/whole outage/i);
    const axis = await page.locator('#unit-charge [aria-label="x-axis tick label"]').textContent();
    expect(axis).toContain(dateText(trace, 2000)); // no midnight is in view
  });

  it('prints every day of what happens, and folds them again', async () => {
    const { page } = await open('#draw=3&strategies=tiers');
    const folded = () => page.locator('.outage-events details:not([open])').count();
    const before = await folded();
    expect(before).toBeGreaterThan(2);
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await folded()).toBe(0);
    await page.emulateMedia({ media: 'print' });
    await standsStill(page); // the list may be drawn anew for the paper's width
    const seen = await page
      .locator('.outage-events li')
      .evaluateAll((all) => all.filter((li) => li.getBoundingClientRect().height > 0).length);
    expect(seen).toBe(outageEvents(view).length);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await folded()).toBe(before);
  });

  it('looks closer by dragging on the strip', async () => {
    const { page } = await open('#draw=3&minutes=2000-4000');
    const strip = (await page.locator('.outage-strip svg').boundingBox())!;
    await page.locator('.outage-strip').scrollIntoViewIfNeeded();
    await page.mouse.move(strip.x + strip.width * 0.6, strip.y + 40);
    await page.mouse.down();
    await page.mouse.move(strip.x + strip.width * 0.7, strip.y + 40, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => page.url()).not.toContain('minutes=2000-4000');
    const [, from, to] = /minutes=(\d+)-(\d+)/.exec(page.url())!.map(Number);
    expect(from! / trace.minutes).toBeGreaterThan(0.5);
    expect((to! - from!) / trace.minutes).toBeCloseTo(0.1, 1);
  });

  it('marks the minute of an event in the charts', async () => {
    const { page } = await open('#draw=3&strategies=tiers');
    const event = outageEvents(view)[0]!;
    await page.locator('.outage-events li button').first().click();
    await expect.poll(() => page.url()).toContain(`at=${event.minute}`);
    await expect
      .poll(() => page.locator('.outage-events button[aria-pressed=true]').first().innerText())
      .toBe(clockText(trace, event.minute, 24));
  });

  it('writes clocks and degrees as asked', async () => {
    const { page } = await open('#draw=3&clock=12&degrees=F');
    expect(await headline(page)).toMatch(/\d+:\d\d\sam|\d+:\d\d\spm/);
    expect(await page.locator('#temperatures .chart-key').innerText()).toContain('limit 40\u00a0°F'); // 4.4 °C
    await page.getByLabel('Clock').selectOption({ index: 0 });
    await page.getByLabel('Temperatures').selectOption({ index: 0 });
    await expect.poll(() => headline(page)).toContain('°C');
    expect(await headline(page)).not.toMatch(/\d\s[ap]m/);
    expect(await page.locator('#temperatures .chart-key').innerText()).toContain('4.4\u00a0°C');
  });

  it('writes out another outage for another number, strategy or seed', async () => {
    const { page } = await open('#draw=3');
    const seen = [await headline(page)];
    const changed = async () => {
      await expect.poll(() => headline(page), { timeout: 20_000 }).not.toBe(seen.at(-1));
      seen.push(await headline(page));
    };
    await page.getByLabel('Strategy', { exact: true }).selectOption({ index: 2 });
    await changed();
    await page.getByLabel('Outage number').fill('7');
    await changed();
    await page.getByLabel('Seed').fill('another');
    await changed();
    expect(page.url()).toMatch(/draw=7/);
    expect(page.url()).toMatch(/seed=another/);
  });

  it('says which part of a link it cannot follow, and what to do when an outage cannot be written', async () => {
    const { page } = await open('#draw=many&degrees=K&minutes=9');
    const said = await page.locator('.trouble').innerText();
    for (const part of ['draw = “many”', 'degrees = “K”', 'minutes = “9”']) expect(said).toContain(part);
    const broken = await published('minute-by-minute', {
      scenario: { ...scenario, site: { ...scenario.site, timeZone: 'Nowhere/At_All' } },
      draws: 5,
    });
    const failed = await bench.open(broken);
    await failed.page.locator('.outage-line .trouble').waitFor();
    expect(await failed.page.locator('.outage-line').innerText()).toContain('Put the settings back');
  });

  for (const [screen, width, colorScheme] of [
    ['phone, dark', 320, 'dark'],
    ['desktop, light', 1280, 'light'],
  ] as const) {
    it(`has nothing an accessibility check objects to, and fits its screen (${screen})`, async () => {
      const { page } = await open('#draw=3&strategies=tiers', {
        viewport: { width, height: 800 },
        colorScheme,
      });
      const { objections, passes } = await accessibility(page);
      expect(objections).toEqual([]);
      expect(passes).toBeGreaterThan(20);
      expect(await widthTaken(page)).toBeLessThanOrEqual(width);
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.outage-picks').isVisible()).toBe(false);
      expect(await page.locator('.cautions').isVisible()).toBe(true);
    });
  }

  it('shows hostile names as text', async () => {
    const name = '</script><img src=x onerror="globalThis.harm = 1">';
    const hostile: Scenario = {
      ...scenario,
      title: name,
      alternatives: scenario.alternatives.map((a) => ({
        ...a,
        title: name,
        household: {
          ...a.household,
          strategies: a.household.strategies.map((s) => ({ ...s, title: name })),
          circuits: a.household.circuits.map((c) => ({ ...c, title: name })),
        },
      })),
    };
    const bad = await published('minute-by-minute', { scenario: hostile, draws: 5 });
    const { page, troubles } = await open('', {}, bad);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('#circuits-on').textContent()).toContain(name);
    expect(await page.locator('.outage-events').textContent()).toContain(name);
    expect(troubles).toEqual([]);
  });
});

describe('minuteBuckets(values, from, to, most)', () => {
  it('loses no peak and no minute, whatever the values, and never gives more buckets than asked', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 500 }),
        fc.integer({ min: 1, max: 60 }),
        (values, most) => {
          const buckets = minuteBuckets(values, 0, values.length, most);
          expect(buckets.length).toBeLessThanOrEqual(most);
          expect(Math.max(...buckets.map((b) => b.max))).toBe(Math.max(...values));
          expect(Math.min(...buckets.map((b) => b.min))).toBe(Math.min(...values));
          expect(buckets.reduce((sum, b) => sum + (b.to - b.from), 0)).toBe(values.length);
        },
      ),
    );
  });
});

describe('circuitStretches(trace, circuit)', () => {
  it('fill the outage without a gap, and are on for no fewer minutes than the circuit drew', () => {
    let drawn = 0;
    trace.circuits.forEach((circuit, c) => {
      const stretches = circuitStretches(trace, c);
      expect(stretches[0]!.from).toBe(0);
      expect(stretches.at(-1)!.to).toBe(trace.minutes);
      stretches.slice(1).forEach((s, i) => expect(s.from).toBe(stretches[i]!.to));
      const serving = circuit.servedW.filter((w) => w > 1e-9).length;
      drawn += serving;
      expect(minutesIn(stretches, 'on', 0, trace.minutes)).toBeGreaterThanOrEqual(serving - stretches.length);
    });
    expect(drawn).toBeGreaterThan(1000);
  });
});

describe('outageEvents(outage)', () => {
  it('tells every event of the trace, those of one minute and kind together, in words without ids', () => {
    const events = outageEvents(view);
    const titles = view.household.circuits.map((c) => c.title!);
    expect(events.length).toBeLessThan(trace.events.length);
    for (const { minute, id, kind } of trace.events) {
      const title = view.household.circuits.find((c) => c.id === id)?.title;
      const told = events.filter((e) => e.minute === minute);
      expect(told.length).toBeGreaterThan(0);
      if (kind === 'circuit') expect(told.some((e) => e.text.includes(title!))).toBe(true);
    }
    expect(events.some((e) => e.kind === 'empty' && e.text.includes('cut-off'))).toBe(true);
    expect(events.some((e) => e.kind === 'shed' && titles.some((t) => e.text.includes(t)))).toBe(true);
    expect(events.some((e) => e.kind === 'restore')).toBe(true);
    expect(events.some((e) => e.kind === 'end')).toBe(trace.runtimeMinutes !== null);
  });
});

describe('pickedDraw(rows, alternative, strategy, pick)', () => {
  it('is the shortest run, the one in ten, the middle one', () => {
    const runtimes = [50, 10, 40, 30, 20, 60, 70, 90, 80, 100];
    const column = (values: number[]) => Float64Array.from(values);
    const rows = {
      length: 10,
      columns: {
        draw: column(runtimes.map((_, i) => i)),
        alternative: column(runtimes.map(() => 0)),
        strategy: column(runtimes.map(() => 0)),
        runtimeMinutes: column(runtimes),
      },
    };
    const runtimeOf = (pick: 'worst' | 'bad' | 'typical') => runtimes[pickedDraw(rows, 0, 0, pick)!];
    expect([runtimeOf('worst'), runtimeOf('bad'), runtimeOf('typical')]).toEqual([10, 10, 50]);
    expect(pickedDraw(rows, 0, 1, 'worst')).toBeUndefined();
  });
});

describe('the part of a link about one outage', () => {
  const anyRange = fc
    .tuple(
      fc.integer({ min: 0, max: 20_000 }),
      fc.integer({ min: 1, max: 20_000 }),
      fc.option(fc.integer({ min: 0, max: 20_000 }), { nil: undefined }),
    )
    .map(([from, length, at]) => ({ from, to: from + length, at }));

  it('comes back as it was', () => {
    fc.assert(
      fc.property(
        fc.record({
          draw: fc.integer({ min: 0, max: 999_999 }),
          range: fc.option(anyRange, { nil: undefined }),
        }),
        (settings) => {
          const back = outageSettingsFrom(outageLink(settings));
          expect(back).toEqual({ settings, complaints: [] });
        },
      ),
    );
  });
});

describe('momentText(clock, minute, style)', () => {
  it('reads local time over the end of daylight saving time', () => {
    // Clocks go back at 02:00 on 1 November 2026 in New York: the hour from 01:00 comes twice. IANA zone tables.
    const minuteOfDay = Array.from({ length: 240 }, (_, m) => (m < 120 ? m : m - 60));
    const clock = {
      minutes: 240,
      firstLocalDay: Date.UTC(2026, 10, 1) / 86_400_000,
      localDay: new Uint16Array(240),
      localMinuteOfDay: Uint16Array.from(minuteOfDay),
    };
    expect(momentText(clock, 119, 24)).toBe('Sun 1 Nov, 01:59');
    expect(momentText(clock, 120, 24)).toBe('Sun 1 Nov, 01:00');
    expect(momentText(clock, 0, 12)).toBe('Sun 1 Nov, 12:00\u00a0am');
  });
});

describe('stretchText(clock, from, to, style)', () => {
  const hour = (of: number) => Array.from({ length: 60 }, (_, m) => of * 60 + m);
  const clock = {
    minutes: 180,
    firstLocalDay: Date.UTC(2026, 9, 20) / 86_400_000,
    localDay: Uint16Array.from({ length: 180 }, (_, m) => (m < 120 ? 0 : 1)),
    localMinuteOfDay: Uint16Array.from([...hour(22), ...hour(23), ...hour(0)]),
  };

  it('says the day once where it is one, and midnight with the day that it ends', () => {
    expect(stretchText(clock, 42, 60, 24)).toBe('Tue 20 Oct, 22:42 to 23:00');
    expect(stretchText(clock, 42, 60, 12)).toBe('Tue 20 Oct, 10:42\u00a0pm to 11:00\u00a0pm');
    expect(stretchText(clock, 0, 120, 24)).toBe('Tue 20 Oct, 22:00 to 24:00');
    expect(stretchText(clock, 0, 120, 12)).toBe('Tue 20 Oct, 10:00\u00a0pm to midnight');
    expect(stretchText(clock, 60, 180, 24)).toBe('Tue 20 Oct, 23:00 to Wed 21 Oct, 01:00');
  });
});
