/** "One outage, minute by minute" of a household that gets energy back: what each source brought. */
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareStudy, traceDraw } from '@rideout/sim';
import { sourceSentences, sourceTotals } from '../../packages/notebooks/src/charts/source-totals.ts';
import { noBrowser } from './browser.ts';
import { energyBackHouse } from './houses.ts';
import { pageBench } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

const scenario = energyBackHouse();
const SEED = 'sources';
const study = prepareStudy(scenario, { seed: SEED });
const [DRAW, TIERS] = [1, 0];
const plain = (text: string) => text.replaceAll(/\s+/g, ' ');

function lived(id: string) {
  const alternative = scenario.alternatives.findIndex((a) => a.id === id);
  const trace = traceDraw(study, { draw: DRAW, alternative, strategy: TIERS });
  const totals = sourceTotals(trace, 0, trace.minutes);
  const { household } = scenario.alternatives[alternative]!;
  return { trace, totals, told: sourceSentences(totals, household).map(plain) };
}

describe('sourceTotals(trace, from, to) and their sentences', () => {
  it('tell hours, energy and fuel of a generator, in parts that add up', () => {
    const { trace, totals, told } = lived('generator');
    const [all] = totals;
    expect(all).toMatchObject({ id: 'generator' });
    expect(all!.kWh).toBeGreaterThan(5);
    expect(told).toEqual([
      `The generator runs for ${all!.hours.toFixed(1)} hours and gives ${all!.kWh.toFixed(1)} kWh, for ${all!.fuelL.toFixed(1)} of 60 L of fuel.`,
    ]);
    const middle = trace.minutes / 2;
    const parts = [sourceTotals(trace, 0, middle)[0]!, sourceTotals(trace, middle, trace.minutes)[0]!];
    for (const of of ['hours', 'kWh', 'fuelL'] as const)
      expect(parts[0]![of] + parts[1]![of]).toBeCloseTo(all![of], 6);
  });

  it('tell of hours of grid and of a car, and say plainly when nothing came', () => {
    expect(lived('rolling').told[0]).toMatch(/^The grid is back for \d+\.\d hours and gives \d+\.\d kWh\.$/);
    expect(lived('vehicle').told[0]).toMatch(/^The car is plugged in for \d+\.\d hours and gives \d/);
    expect(lived('two-modules').told).toEqual([]);
    const none = [{ id: 'generator' as const, hours: 0, kWh: 0, fuelL: 0 }];
    expect(sourceSentences(none, {})).toEqual(['The generator does not run.']);
  });
});

describe.skipIf(noBrowser())('the page "One outage, minute by minute"', () => {
  const bench = pageBench();
  let file: PublishedFile;

  beforeAll(async () => {
    file = await published('minute-by-minute', { scenario, seed: SEED, draws: 5 });
  }, 60_000);

  const open = async (household: string) => {
    const opened = await bench.open(file, { hash: `#draw=${DRAW}&household=${household}`, locale: 'en-GB' });
    await opened.page.locator('#temperatures').waitFor();
    return opened;
  };

  it('says in its headline, draws and lists what a generator brought', async () => {
    const { page, troubles } = await open('generator');
    const { told, totals } = lived('generator');
    expect(plain(await page.locator('.headline').innerText())).toContain(told[0]);
    const chart = page.locator('#source-watts');
    expect(plain(await chart.locator('h2').innerText())).toContain(
      `${totals[0]!.kWh.toFixed(1)} kWh came in`,
    );
    expect(plain(await chart.locator('.chart-key').innerText())).toContain(told[0]);
    expect(await chart.locator('thead').textContent()).toContain('Generator (W)');
    expect(await chart.locator('svg [aria-label=area] path').count()).toBeGreaterThan(0);
    expect(troubles).toEqual([]);
  });

  it('has no such chart where nothing but the sun brings energy', async () => {
    const { page } = await open('two-modules');
    expect(await page.locator('#source-watts').count()).toBe(0);
    expect(await page.locator('.headline').innerText()).not.toMatch(/generator|grid is back|car/i);
  });
});
