/** What a group of circuits wants, held against the plain sum of its circuits, minute by minute. */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { prepareStudy } from '../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../packages/sim/src/node.ts';
import {
  GROUP_EXTRA_W,
  GROUP_FIGURES,
  GROUP_LEAST_W,
  GROUP_MOST_W,
  groupHourAt,
} from '../../../packages/sim/src/step/group-wants.ts';
import { groupWminUntil } from '../../../packages/sim/src/step/prepared-draw.ts';
import { momentBeyond, wantedUntil } from '../../../packages/sim/src/step/wanted-minutes.ts';
import { createWorkspace, fillDraw } from '../../../packages/sim/src/trials/workspace.ts';

const file = fileURLToPath(new URL('../../../data/full-house.yaml', import.meta.url));
const { scenario } = loadScenario(file);
const study = prepareStudy(
  { ...scenario, outage: { ...scenario.outage, horizonDays: 3.3 } },
  { seed: 'sums' },
);
const work = createWorkspace(study);
const { groups } = study.compiled[0]!.household;
const watched = groups.flatMap((group) => group.watched);

/** Per group, the sum of its circuits' watts and the largest extra watts of a start, one value per minute. */
function plainly() {
  const { usage } = work.draws[0]!;
  return groups.map(({ circuits }) =>
    Array.from({ length: study.minutes }, (_, m) => ({
      watts: circuits.reduce((sum, c) => sum + usage.circuits[c]!.demandW[m]!, 0),
      extra: Math.max(...circuits.map((c) => usage.circuits[c]!.startExtraW?.[m] ?? 0)),
    })),
  );
}

describe('the wants of a group, draw after draw in the same buffers', () => {
  it.each([0, 1, 2, 3])('are the sums of its circuits to the last bit, draw %i', (index) => {
    fillDraw(study, work, streamsOf('sums', index));
    const draw = work.draws[0]!;
    plainly().forEach((minutes, g) => {
      expect([...draw.groupW[g]!]).toEqual(minutes.map(({ watts }) => watts));
      if (draw.groupExtraW[g]) expect([...draw.groupExtraW[g]]).toEqual(minutes.map(({ extra }) => extra));
      for (let hour = 0; 60 * hour < study.minutes; hour++) {
        const inHour = minutes.slice(60 * hour, 60 * hour + 60);
        const at = groupHourAt(draw, hour) + g * GROUP_FIGURES;
        const watts = inHour.map((minute) => minute.watts);
        expect(draw.groupHours[at + GROUP_LEAST_W]).toBe(Math.min(...watts));
        expect(draw.groupHours[at + GROUP_MOST_W]).toBe(Math.max(...watts));
        expect(draw.groupHours[at + GROUP_EXTRA_W]).toBe(Math.max(...inHour.map(({ extra }) => extra)));
      }
    });
  });

  it('add up to any moment, inside a minute too, and stay at their end', () => {
    const draw = work.draws[0]!;
    plainly().forEach((minutes, g) => {
      let sum = 0;
      minutes.forEach(({ watts }, m) => {
        expect(groupWminUntil(draw, g, m)).toBe(sum);
        expect(groupWminUntil(draw, g, m + 0.25)).toBe(sum + 0.25 * watts);
        sum += watts;
      });
      expect(groupWminUntil(draw, g, study.minutes)).toBe(sum);
    });
    expect(groups.length).toBeGreaterThan(5);
  });

  it('are counted, where they are watched, to any moment', () => {
    fillDraw(study, work, streamsOf('sums', 5));
    const draw = work.draws[0]!;
    for (const circuit of watched) {
      let wanted = 0;
      draw.usage.circuits[circuit]!.demandW.forEach((w, m) => {
        expect(wantedUntil(draw, circuit, m)).toBe(wanted);
        expect(wantedUntil(draw, circuit, m + 0.25)).toBe(wanted + (w > 0 ? 0.25 : 0));
        wanted += w > 0 ? 1 : 0;
      });
      expect(wantedUntil(draw, circuit, study.minutes)).toBe(wanted);
      expect(wantedUntil(draw, circuit, study.minutes + 5)).toBe(wanted);
    }
    expect(watched.length).toBeGreaterThan(3);
  });

  it('tell the moment at which more than so many minutes were wanted', () => {
    const draw = work.draws[0]!;
    let asked = 0;
    for (const circuit of watched)
      for (let from = 0; from < study.minutes; from += 61.25)
        for (const minutes of [0, 0.5, 1, 10, 240]) {
          const wantedTo = (time: number) =>
            wantedUntil(draw, circuit, time) - wantedUntil(draw, circuit, from);
          if (wantedTo(study.minutes) <= minutes) continue;
          const moment = momentBeyond(draw, circuit, from, minutes);
          expect(wantedTo(moment)).toBe(minutes);
          expect(wantedTo(moment + 1 / 64)).toBeGreaterThan(minutes);
          asked++;
        }
    expect(asked).toBeGreaterThan(100);
  });
});
