/** A made-up study: no physics, only rows with the shape of real ones. Not a prediction of anything. */
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { exp, log } from '../../../packages/sim/src/portable/elementary.ts';
import { OUTCOME_COLUMNS } from '../../../packages/sim/src/trials/outcome-rows.ts';
import type { OutcomeRows } from '../../../packages/sim/src/trials/outcome-rows.ts';
import type { StudyOutline } from '../../../packages/sim/src/trials/study.ts';

/** `scenario` holds a title only: nothing in trials reads more of it, but for the sources of its households. */
export function fabricatedOutline(changes: Partial<StudyOutline> = {}): StudyOutline {
  return {
    scenario: {
      title: 'A made-up house on a hill, January',
      alternatives: [] as const,
    } as unknown as StudyOutline['scenario'],
    scenarioHash: '3f2a9c41d07b8e6655aa00ff11ee22dd3f2a9c41d07b8e6655aa00ff11ee22dd',
    seed: 'winter',
    rows: 'outcomes',
    horizonDays: 14,
    alternatives: [
      { id: 'as-is', title: 'As it stands' },
      { id: 'two-modules', title: 'Two modules per unit' },
    ],
    strategies: [
      { id: 'everything', title: 'Everything stays on', carriedOutBy: 'person' },
      { id: 'by-charge', title: 'Comforts off below half charge', carriedOutBy: 'person' },
      {
        id: 'essentials',
        title: 'Essentials only, from the first minute to the last',
        carriedOutBy: 'switch',
      },
    ],
    unitIds: ['west', 'east'],
    needs: ['food', 'water'],
    weatherName: 'made-up normals',
    version: '0.1.0',
    ...changes,
  };
}

/** Rows of draws `from` … `to` − 1: longer runtimes for later strategies and alternatives, cut off at the horizon. */
export function fabricatedRows(outline: StudyOutline, from: number, to: number): OutcomeRows {
  const perDraw = outline.alternatives.length * outline.strategies.length;
  const length = (to - from) * perDraw;
  const needColumns = outline.needs.flatMap((need) => [`need:${need}:firstMinute`, `need:${need}:minutes`]);
  const columns: Record<string, Float64Array> = {};
  for (const name of [...OUTCOME_COLUMNS, ...needColumns]) columns[name] = new Float64Array(length);
  for (let draw = from, row = 0; draw < to; draw += 1) {
    const chance = streamsOf('fabricated', draw)('household');
    const luck = -log(1 - chance());
    outline.alternatives.forEach((_, alternative) => {
      outline.strategies.forEach((_, strategy) => {
        fillRow(outline, columns, row, { draw, alternative, strategy, luck, scatter: chance() });
        row += 1;
      });
    });
  }
  return { length, columns };
}

function fillRow(
  outline: StudyOutline,
  columns: Readonly<Record<string, Float64Array>>,
  row: number,
  at: { draw: number; alternative: number; strategy: number; luck: number; scatter: number },
): void {
  const horizon = outline.horizonDays * 1440;
  const set = (name: string, value: number) => (columns[name]![row] = value);
  const scale = 900 * exp(0.9 * at.strategy + 0.7 * at.alternative);
  const minutes = scale * (0.6 + at.luck) * (0.85 + 0.3 * at.scatter);
  const censored = minutes >= horizon;
  set('draw', at.draw);
  set('alternative', at.alternative);
  set('strategy', at.strategy);
  set('startEpochMinute', 29_460_000 + 1440 * (at.draw % 28));
  set('runtimeMinutes', Math.min(minutes, horizon));
  set('censored', censored ? 1 : 0);
  set('endCause', censored ? 0 : at.draw % 5 === 0 ? 2 : 1);
  set('endUnit', censored ? NaN : at.draw % 3 === 0 ? 1 : 0);
  set('firstShedMinute', at.strategy === 0 ? NaN : 60 * at.strategy);
  set('first240LossMinute', NaN);
  set('firstBlackoutMinute', censored ? NaN : minutes);
  set('trips', at.draw % 5 === 0 ? 1 : 0);
  set('servedTier1Wh', 90 * (minutes / 60));
  set('unservedTier2Wh', 5000 * at.strategy);
  set('minutesUnit1Down', outline.unitIds.length > 1 ? horizon - Math.min(minutes, horizon) : NaN);
  for (const [i, need] of outline.needs.entries()) {
    const first = minutes * (1 + i);
    set(`need:${need}:firstMinute`, first >= horizon ? NaN : first);
    set(`need:${need}:minutes`, Math.max(0, horizon - first));
  }
}

/** The same rows in another order: last first, as late shards might arrive. */
export function reversedRows(rows: OutcomeRows): OutcomeRows {
  const columns = Object.entries(rows.columns).map(
    ([name, values]) => [name, values.slice().reverse()] as const,
  );
  return { length: rows.length, columns: Object.fromEntries(columns) };
}
