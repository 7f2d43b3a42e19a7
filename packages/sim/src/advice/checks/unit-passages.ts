/** What a unit's output goes through on its way to the panel, and what each part may carry. */
import { ampacityA, cordAmpacityA } from '../../power/conductors.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { inAwg } from './amounts.ts';
import { CHECK_RULES, type CheckRule } from './check-rules.ts';

export const PASSAGE_KEYS = ['breakerA', 'inletA', 'cordAwg', 'wireAwg'] as const;
/** Above this the cord table was not read but remembered. */
const CORDS_READ = [18, 16, 14, 12, 10];

/** One thing that the unit's whole output goes through. */
export interface Passage {
  readonly key: (typeof PASSAGE_KEYS)[number];
  readonly name: string;
  /** What it may carry, A. */
  readonly carriesA: number;
  readonly rule: CheckRule;
}

export function passages({ wiring }: UnitSpec): Passage[] {
  if (wiring === undefined) return [];
  const { breakerA, inletA, cordAwg, wireAwg, terminalC = 60 } = wiring;
  const list: Passage[] = [];
  if (breakerA !== undefined)
    list.push({
      key: 'breakerA',
      name: 'breaker',
      carriesA: breakerA,
      rule: CHECK_RULES.sourceWires,
    });
  if (inletA !== undefined)
    list.push({ key: 'inletA', name: 'inlet', carriesA: inletA, rule: CHECK_RULES.inlet });
  if (cordAwg !== undefined)
    list.push({
      key: 'cordAwg',
      name: `cord of ${inAwg(cordAwg)}`,
      carriesA: cordAmpacityA(cordAwg) ?? 0,
      rule: CORDS_READ.includes(cordAwg as number) ? CHECK_RULES.cord : CHECK_RULES.largeCord,
    });
  if (wireAwg !== undefined)
    list.push({
      key: 'wireAwg',
      name: `wire of ${inAwg(wireAwg)}`,
      carriesA: ampacityA(wireAwg, terminalC) ?? 0,
      rule: CHECK_RULES.sourceWires,
    });
  return list;
}
