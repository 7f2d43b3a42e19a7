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
import { groupWminUntil, wantedMinutesOf } from '../../../packages/sim/src/step/prepared-draw.ts';
import { createWorkspace, fillDraw } from '../../../packages/sim/src/trials/workspace.ts';

const file = fileURLToPath(new URL('../../../data/full-house.yaml', import.meta.url));
const { scenario } = loadScenario(file);
const study = prepareStudy(
  { ...scenario, outage: { ...scenario.outage, horizonDays: 3.3 } },
  { seed: 'sums' },
);
const work = createWorkspace(study);
const { groups } = study.compiled[0]!.household;

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

  it('are counted, where they are watched, minute by minute', () => {
    fillDraw(study, work, streamsOf('sums', 5));
    const draw = work.draws[0]!;
    const watched = groups.flatMap((group) => group.watched);
    for (const circuit of watched) {
      let wanted = 0;
      const counts = Array.from(draw.usage.circuits[circuit]!.demandW, (w) => (wanted += w > 0 ? 1 : 0));
      expect([...wantedMinutesOf(draw, circuit)]).toEqual([0, ...counts]);
    }
    expect(watched.length).toBeGreaterThan(3);
  });
});
