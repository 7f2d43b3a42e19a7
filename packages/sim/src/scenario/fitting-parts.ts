/** The parts of a scenario that fit the schema by themselves: what reads no others can be checked all the same. */
import { ladder, type LadderSpec } from './schema-ladder.ts';
import { need } from './schema-needs.ts';
import { strategy } from './schema-strategies.ts';
import { scenarioSchema, type CheckedScenario } from './schema.ts';

export type PartKey = keyof CheckedScenario;

export interface FittingParts {
  /** Of the keys in `whole`. Of those in `some`, lists, the items that fit, each at its place; the others are undefined. */
  readonly parts: CheckedScenario;
  readonly whole: ReadonlySet<PartKey>;
  readonly some: ReadonlySet<PartKey>;
}

/** What the checks of a ladder read. */
export const LADDER_READS: readonly PartKey[] = [
  'units',
  'pair',
  'sources',
  'circuits',
  'usage',
  'person',
  'strategies',
  'prices',
];

const ITEMS: { readonly [key in PartKey]?: typeof need | typeof strategy } = {
  needs: need,
  strategies: strategy,
};

/** A scenario that fits altogether. */
export function allParts(scenario: CheckedScenario): FittingParts {
  return { parts: scenario, whole: new Set(Object.keys(scenarioSchema.shape) as PartKey[]), some: new Set() };
}

/** The parts that fit of one that does not. */
export function fittingParts(value: unknown): FittingParts {
  const block = blockOf(value);
  const parts: Record<string, unknown> = {};
  const whole = new Set<PartKey>();
  const some = new Set<PartKey>();
  for (const [name, schema] of Object.entries(scenarioSchema.shape)) {
    const key = name as PartKey;
    const items: unknown = block[key];
    const result = schema.safeParse(items);
    const itemSchema = ITEMS[key];
    if (result.success) {
      parts[key] = result.data;
      whole.add(key);
    } else if (itemSchema !== undefined && Array.isArray(items)) {
      parts[key] = items.map((item) => itemSchema.safeParse(item).data);
      some.add(key);
    }
  }
  return { parts: parts as unknown as CheckedScenario, whole, some };
}

/** A ladder that may be unsound in parts. */
export interface FittingLadder {
  readonly spec: LadderSpec;
  /** Positions of steps that do not fit the schema; something that does nothing stands in for each. */
  readonly unfit: ReadonlySet<number>;
}

/** @returns undefined where its start does not fit, or it has no list of steps */
export function fittingLadder(value: unknown): FittingLadder | undefined {
  const whole = ladder.safeParse(value);
  if (whole.success) return { spec: whole.data, unfit: new Set() };
  const { start, steps } = blockOf(value);
  const begun = ladder.shape.start.safeParse(start);
  if (!begun.success || !Array.isArray(steps)) return undefined;
  const read = steps.map((step: unknown) => ladder.shape.steps.element.safeParse(step).data);
  return {
    spec: {
      start: begun.data,
      steps: read.map((step, i) => step ?? standIn(steps[i], i, begun.data.strategy)),
      incentivePercent: ladder.shape.incentivePercent.parse(undefined),
      confidence: ladder.shape.confidence.parse(undefined),
    },
    unfit: new Set(read.flatMap((step, i) => (step === undefined ? i : []))),
  };
}

/** Under the name of the step that it stands for, since others may need that one. */
function standIn(step: unknown, i: number, strategyId: string): LadderSpec['steps'][number] {
  const { id } = blockOf(step);
  const name = typeof id === 'string' ? id : `step-${i}`;
  return { id: name, title: name, strategy: strategyId, needs: [], atMost: 1 };
}

function blockOf(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
