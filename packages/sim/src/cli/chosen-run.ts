/** Which alternative and strategy a person means, by id; the first of each when they do not say. */
import { meantHint } from '../scenario/nearest.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { OptionError } from './report-error.ts';

export interface RunOptionTexts {
  readonly alternative?: string;
  readonly strategy?: string;
}

/** @throws OptionError when there is no such id */
export function chosenRun(
  { alternatives }: Pick<Scenario, 'alternatives'>,
  options: RunOptionTexts,
): { alternative: number; strategy: number } {
  const { strategies } = alternatives[0]!.household;
  return {
    alternative: positionOf('--alternative', options.alternative, alternatives),
    strategy: positionOf('--strategy', options.strategy, strategies),
  };
}

function positionOf(option: string, id: string | undefined, items: readonly { id: string }[]): number {
  if (id === undefined) return 0;
  const position = items.findIndex((item) => item.id === id);
  if (position >= 0) return position;
  const ids = items.map((item) => item.id);
  throw new OptionError(
    `${option}: found ${JSON.stringify(id)}; expected one of ${ids.join(', ')}. ${meantHint(id, ids) ?? ''}`.trimEnd(),
  );
}
