/** A row tells units by their position in its household; the study's columns by their position in `unitIds`. */
import type { OutcomeRows } from './outcome-rows.ts';
import type { StudyOutline } from './study.ts';

/** Minutes down of the units at the first positions of the study's list. */
export const DOWN_COLUMNS = ['minutesUnit0Down', 'minutesUnit1Down'] as const;

/** For each unit of a household its position in the study's list. */
export function unitPositions(
  { unitIds }: Pick<StudyOutline, 'unitIds'>,
  units: readonly { readonly id: string }[],
): number[] {
  return units.map(({ id }) => unitIds.indexOf(id));
}

/** Moves what the row says of unit u to position `positions[u]`. There are columns for the first two positions only. */
export function placeUnits(columns: OutcomeRows['columns'], row: number, positions: readonly number[]): void {
  if (positions.every((position, u) => position === u)) return;
  const ended = columns['endUnit']!;
  if (!Number.isNaN(ended[row]!)) ended[row] = positions[ended[row]!]!;
  const down = DOWN_COLUMNS.map((name) => columns[name]![row]!);
  DOWN_COLUMNS.forEach((name, at) => {
    const unit = positions.indexOf(at);
    columns[name]![row] = unit < 0 ? NaN : down[unit]!;
  });
}
