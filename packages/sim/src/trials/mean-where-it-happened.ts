import { mean } from 'simple-statistics';

/** Mean of the values that are not NaN ("did not happen"); null when none is left. */
export function meanWhereItHappened(values: Float64Array): number | null {
  const happened: number[] = [];
  for (let i = 0; i < values.length; i += 1) if (!Number.isNaN(values[i])) happened.push(values[i]!);
  return happened.length === 0 ? null : mean(happened);
}
