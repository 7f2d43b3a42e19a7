/** Figures of several households, a group for each alternative. */
import { paragraph } from './render-lines.ts';
import type { TerminalLook } from './render-style.ts';

interface OfAlternative {
  readonly alternativeId: string;
  readonly alternativeTitle: string;
}

/** One list per alternative, in order of first mention. */
export function byAlternative<One extends OfAlternative>(all: readonly One[]): One[][] {
  const groups = new Map<string, One[]>();
  for (const one of all) {
    const group = groups.get(one.alternativeId);
    if (group) group.push(one);
    else groups.set(one.alternativeId, [one]);
  }
  return [...groups.values()];
}

/** What is said of each alternative, under its title where there are several. */
export function underTitles<One extends OfAlternative>(
  all: readonly One[],
  { width }: TerminalLook,
  heading: (text: string) => string,
  lines: (group: readonly One[]) => readonly string[],
): string[] {
  const groups = byAlternative(all);
  return groups.flatMap((group) => [
    ...(groups.length > 1 ? paragraph(group[0]!.alternativeTitle, width).map(heading) : []),
    ...lines(group),
  ]);
}
