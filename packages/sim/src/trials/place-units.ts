/** A row tells units by their position in its household; the study's columns by their position in `unitIds`. */
import type { OutcomeRows } from './outcome-rows.ts';
import type { StudyOutline } from './study.ts';

/** Minutes down of the units at the first positions of the study's list. */
const DOWN = ['minutesUnit0Down', 'minutesUnit1Down'] as const;

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
  const down = DOWN.map((name) => columns[name]![row]!);
  DOWN.forEach((name, at) => {
    const unit = positions.indexOf(at);
    columns[name]![row] = unit < 0 ? NaN : down[unit]!;
  });
}

/** The unit whose minutes down the column holds, undefined where the study has none there; null for any other column. */
export function unitOfDownColumn(
  { unitIds }: Pick<StudyOutline, 'unitIds'>,
  column: string,
): string | undefined | null {
  const at = DOWN.findIndex((name) => name === column);
  return at < 0 ? null : unitIds[at];
}
