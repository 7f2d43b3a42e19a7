/** How long an outage lasts, as a law of probability. MODEL.md §20.1. Hours. */
import { mean } from 'simple-statistics';
import { exp, log } from '../../portable/elementary.ts';
import type { OutageKindSpec } from '../../scenario/schema-outage-lengths.ts';
import { normalProbability } from '../../trials/normal-probability.ts';

export interface LengthLaw {
  readonly meanHours: number;
  /** Chance that it is over after `hours` (or just then). */
  readonly overBy: (hours: number) => number;
  /** Mean of the hours that it goes on past `hours`, counting 0 where it does not: E max(L − t, 0). */
  readonly meanBeyond: (hours: number) => number;
}

/** Exponential by its mean, log-normal by mean and standard deviation, or a list. */
export function lawOf({ meanHours, sdHours, hours }: OutageKindSpec): LengthLaw {
  if (hours !== undefined) return listLaw(hours);
  return sdHours === undefined ? exponentialLaw(meanHours!) : logNormalLaw(meanHours!, sdHours);
}

export function exponentialLaw(meanHours: number): LengthLaw {
  return {
    meanHours,
    overBy: (t) => 1 - exp(-t / meanHours),
    meanBeyond: (t) => meanHours * exp(-t / meanHours),
  };
}

/** `σ² = ln(1 + (sd/mean)²)`, `μ = ln mean − σ²/2`; `E max(L − t, 0) = mean Φ(σ − d) − t Φ(−d)`, `d = (ln t − μ)/σ`. */
export function logNormalLaw(meanHours: number, sdHours: number): LengthLaw {
  const ratio = sdHours / meanHours;
  const variance = log(1 + ratio * ratio);
  const sigma = Math.sqrt(variance);
  const mu = log(meanHours) - variance / 2;
  const d = (t: number) => (log(t) - mu) / sigma;
  return {
    meanHours,
    overBy: (t) => (t > 0 ? normalProbability(d(t)) : 0),
    meanBeyond: (t) =>
      t > 0 ? meanHours * normalProbability(sigma - d(t)) - t * normalProbability(-d(t)) : meanHours,
  };
}

export function listLaw(hours: readonly number[]): LengthLaw {
  const share = (holds: (h: number) => boolean) => hours.filter(holds).length / hours.length;
  return {
    meanHours: mean([...hours]),
    overBy: (t) => share((h) => h <= t),
    meanBeyond: (t) => mean(hours.map((h) => Math.max(0, h - t))),
  };
}

/** Outages of several kinds, each as often as it comes. */
export function mixedLaw(parts: readonly { readonly weight: number; readonly law: LengthLaw }[]): LengthLaw {
  const all = parts.reduce((sum, { weight }) => sum + weight, 0);
  const weighted = (of: (law: LengthLaw) => number) =>
    parts.reduce((sum, { weight, law }) => sum + (weight / all) * of(law), 0);
  return {
    meanHours: weighted((law) => law.meanHours),
    overBy: (t) =>
      Math.min(
        1,
        weighted((law) => law.overBy(t)),
      ), // weights may add up to a last digit more
    meanBeyond: (t) => weighted((law) => law.meanBeyond(t)),
  };
}
