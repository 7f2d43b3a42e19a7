/** The first columns of a chart's file: which household and which strategy a row is of, by id and by title. */
import type { StrategySummary } from '@rideout/sim';

export function cellColumns({
  alternativeId,
  alternativeTitle,
  strategyId,
  strategyTitle,
}: Pick<StrategySummary, 'alternativeId' | 'alternativeTitle' | 'strategyId' | 'strategyTitle'>) {
  return { alternative: alternativeId, alternativeTitle, strategy: strategyId, strategyTitle };
}
