/** A survival curve in one sentence. */
import { percent, reachText, type StrategySummary } from '@rideout/sim';

export function curveSentence(summary: StrategySummary, horizonDays: number): string {
  const { strategyTitle, nineInTenDays, medianDays, censoredDraws, draws } = summary;
  const half = medianDays.value === null ? '' : `, half reach ${reachText(medianDays.value, horizonDays)}`;
  const running =
    censoredDraws === 0 ? '' : `; ${percent(censoredDraws / draws)} still run when the simulation ends`;
  return `${strategyTitle}: nine outages in ten reach ${reachText(nineInTenDays.value, horizonDays)}${half}${running}.`;
}
