/** Solar panels: from light to watts at the unit's solar input. */
import type { ArraySpec } from '../scenario/schema.ts';
import { faimanCellC } from './cell-temperature.ts';

/** What of an array turns light into watts; its tilt and azimuth are the sky's business. */
export type ArrayPower = Pick<
  ArraySpec,
  'peakW' | 'powerTemperatureCoefficientPerC' | 'lossFraction' | 'openBackHeatLossU0' | 'windHeatLossU1'
>;

/** Irradiance and temperature at which panels are rated. */
const RATED_WM2 = 1000;
const RATED_C = 25;

/**
 * DC watts of an array: peakW · G/1000 · (1 + γ(Tc - 25)) · (1 - loss), never below 0. The linear temperature
 * coefficient of the data sheet (IEC 60891); all other losses in one fraction.
 */
export function arrayDcW(
  planeWm2: number,
  cellC: number,
  peakW: number,
  powerTemperatureCoefficientPerC: number,
  lossFraction: number,
): number {
  const dcW =
    ((peakW * planeWm2) / RATED_WM2) *
    (1 + powerTemperatureCoefficientPerC * (cellC - RATED_C)) *
    (1 - lossFraction);
  return Math.max(0, dcW);
}

/**
 * Adds an array's DC watts to `outW` for every minute from `from` up to `to`, all of them unless told; call once for each
 * array on the same input, `outW` zeroed first. Nothing while snow hides the panels. All arrays hold one value a
 * minute, as many as `outW`.
 */
export function addArrayW(
  planeWm2: Float32Array,
  dryBulbC: Float32Array,
  windMs: Float32Array,
  snowOnPanels: Uint8Array,
  array: ArrayPower,
  outW: Float32Array,
  from = 0,
  to = outW.length,
): void {
  // plain numbers before the loop: what comes from outside is else looked at anew in every minute
  const peakW = +array.peakW;
  const perC = +array.powerTemperatureCoefficientPerC;
  const lossFraction = +array.lossFraction;
  const u0 = +array.openBackHeatLossU0;
  const u1 = +array.windHeatLossU1;
  for (let minute = from; minute < to; minute++) {
    const plane = planeWm2[minute]!;
    if (plane <= 0 || snowOnPanels[minute] !== 0) continue;
    const cellC = faimanCellC(plane, dryBulbC[minute]!, windMs[minute]!, u0, u1);
    outW[minute] = outW[minute]! + arrayDcW(plane, cellC, peakW, perC, lossFraction);
  }
}

/** The watts a unit can take of what its arrays give; the rest, `arrayW - outUsableW`, is clipped. */
export function clipToInput(
  arrayW: Float32Array,
  inputLimitW: number,
  outUsableW: Float32Array,
  from = 0,
  to = arrayW.length,
): void {
  for (let minute = from; minute < to; minute++) {
    outUsableW[minute] = Math.min(arrayW[minute]!, inputLimitW);
  }
}
