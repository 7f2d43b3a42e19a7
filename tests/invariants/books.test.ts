/** Every watt-hour is on exactly one line, every minute, in any household. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareStudy, runShard } from '../../packages/sim/src/index.ts';
import {
  groupBooks,
  unitBooks,
  unitImbalanceWh,
  type UnitBooks,
} from '../../packages/sim/src/step/ledger.ts';
import type { Run } from '../../packages/sim/src/step/run.ts';
import { traceDraw } from '../../packages/sim/src/trials/trace-draw.ts';
import { everyMinute, REPEATABLE, SEED } from './every-minute.ts';
import { randomScenario, type RandomScenarioOptions } from './random-scenario.ts';

const RELATIVE = 1e-9;
const RUNS = 60;

/** Half of them with sources of energy besides their panels. */
const randomHouse = (options: RandomScenarioOptions = {}) =>
  fc.oneof(randomScenario(options), randomScenario({ ...options, sources: true }));

/** Usable solar of each unit summed up as the minutes pass. */
function solarMeter(): (run: Run, minute: number) => number[] {
  let sums: number[] = [];
  return (run, minute) => {
    if (minute === 0) sums = run.units.map(() => 0);
    sums = sums.map((wmin, u) => wmin + run.draw.solar[u]!.usableW[minute]!);
    return sums.map((wmin) => wmin / 60);
  };
}

function turnoverWh(books: UnitBooks): number {
  return (
    books.sourceInWh +
    books.solarUsableWh +
    books.loadWh +
    books.inverterLossWh +
    books.dischargedWh +
    books.storedStartWh
  );
}

describe('the books of any household', () => {
  it('close every minute: each unit’s bus and bank, and the circuits’ served sum against the units’ loads', () => {
    let looked = 0;
    fc.assert(
      fc.property(randomHouse(), (scenario) => {
        const meter = solarMeter();
        looked += everyMinute(scenario, (run, minute) => {
          const usableWh = meter(run, minute);
          const books = run.units.map((_, u) => unitBooks(run, u, usableWh[u]));
          for (const unit of books) {
            const { bus, bank } = unitImbalanceWh(unit);
            const tolerance = RELATIVE * (1 + turnoverWh(unit));
            if (!(Math.abs(bus) <= tolerance)) throw new Error(`minute ${minute}: bus ${bus} Wh`);
            if (!(Math.abs(bank) <= tolerance)) throw new Error(`minute ${minute}: bank ${bank} Wh`);
          }
          const groups = run.groups.map((_, g) => groupBooks(run, g));
          const served = groups.reduce((sum, g) => sum + g.servedWh, 0);
          const load = books.reduce((sum, b) => sum + b.loadWh, 0);
          if (!(Math.abs(served - load) <= RELATIVE * (1 + load)))
            throw new Error(`minute ${minute}: served ${served}, load ${load}`);
          for (const { servedWh, wantedWh } of groups) {
            if (!(servedWh >= 0 && servedWh <= wantedWh + RELATIVE * (1 + wantedWh)))
              throw new Error(`minute ${minute}: served ${servedWh} of ${wantedWh}`);
          }
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(looked).toBeGreaterThan(50_000);
  });

  it('hold nothing negative, and a state of charge from 0 to 1', () => {
    let looked = 0;
    fc.assert(
      fc.property(randomScenario(), (scenario) => {
        const meter = solarMeter();
        looked += everyMinute(scenario, (run, minute) => {
          const usableWh = meter(run, minute);
          run.units.forEach((_, u) => {
            const books = unitBooks(run, u, usableWh[u]);
            const slack = RELATIVE * (1 + turnoverWh(books));
            for (const [line, wh] of Object.entries(books))
              if (!(wh >= -slack)) throw new Error(`minute ${minute}: ${line} is ${wh}`);
            const charge = books.storedEndWh / run.household.capacityWh[u]!;
            if (!(charge >= -1e-12 && charge <= 1 + 1e-12))
              throw new Error(`minute ${minute}: unit ${u} charged to ${charge}`);
          });
        });
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(looked).toBeGreaterThan(50_000);
  });

  it('close in every minute’s row of the trace: solar available = used + stored + clipped + curtailed; served ≤ wanted', () => {
    let minutes = 0;
    fc.assert(
      fc.property(randomHouse({ horizonHours: [2, 24] }), (scenario) => {
        const study = prepareStudy(scenario, { seed: SEED });
        const trace = traceDraw(study, { draw: 1, alternative: 0, strategy: 0 });
        minutes += trace.minutes;
        for (let m = 0; m < trace.minutes; m++) {
          let loads = 0;
          for (const unit of trace.units) {
            const {
              solarAvailableW: available,
              solarUsedW,
              solarStoredW,
              solarClippedW,
              solarCurtailedW,
            } = unit;
            const parts = [solarUsedW[m]!, solarStoredW[m]!, solarClippedW[m]!, solarCurtailedW[m]!];
            const scaleW = 1 + available[m]! + unit.loadW[m]! + unit.storedWh[m]! * 60;
            if (parts.some((w) => !(w >= -RELATIVE * scaleW)))
              throw new Error(`minute ${m}: ${parts.join(' ')}`);
            const sum = parts.reduce((a, b) => a + b, 0);
            if (!(Math.abs(sum - available[m]!) <= RELATIVE * scaleW))
              throw new Error(`minute ${m}: ${sum} of ${available[m]}`);
            loads += unit.loadW[m]!;
          }
          let served = 0;
          for (const { servedW, wantedW } of trace.circuits) {
            if (!(servedW[m]! >= -1e-6 && servedW[m]! <= wantedW[m]! * (1 + RELATIVE) + 1e-6))
              throw new Error(`minute ${m}: ${servedW[m]} of ${wantedW[m]}`);
            served += servedW[m]!;
          }
          if (!(Math.abs(served - loads) <= 1e-6 + RELATIVE * loads))
            throw new Error(`minute ${m}: served ${served}, load ${loads}`);
        }
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(minutes).toBeGreaterThan(20_000);
  });

  it('close in every outcome row', () => {
    let rowsSeen = 0;
    fc.assert(
      fc.property(randomHouse({ horizonHours: [1, 30] }), (scenario) => {
        const { length, columns } = runShard(prepareStudy(scenario, { seed: SEED }), 0, 2);
        const at = (name: string, row: number) => columns[name]![row]!;
        for (let row = 0; row < length; row++) {
          const served = [1, 2, 3, 4, 5].reduce((sum, t) => sum + at(`servedTier${t}Wh`, row), 0);
          const available = at('solarAvailableWh', row);
          const solar = ['Used', 'Stored', 'Clipped', 'Curtailed'].reduce(
            (sum, part) => sum + at(`solar${part}Wh`, row),
            0,
          );
          const out =
            served +
            at('inverterLossWh', row) +
            at('batteryLossWh', row) +
            at('chargerLossWh', row) +
            at('storedEndWh', row);
          const into =
            at('storedStartWh', row) +
            at('solarUsedWh', row) +
            at('solarStoredWh', row) +
            at('sourceInWh', row);
          expect(Math.abs(solar - available)).toBeLessThanOrEqual(RELATIVE * (1 + available));
          expect(Math.abs(into - out)).toBeLessThanOrEqual(RELATIVE * (1 + into));
          rowsSeen++;
        }
      }),
      { ...REPEATABLE, numRuns: RUNS },
    );
    expect(rowsSeen).toBeGreaterThan(2 * RUNS);
  });
});
