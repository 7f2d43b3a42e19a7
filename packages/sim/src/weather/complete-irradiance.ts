/** DNI and DHI, where a file leaves them out. */
import { hourlyDiffuseFraction } from '../sky/diffuse-split.ts';
import type { RawColumns } from './raw-year.ts';
import type { WeatherFinding } from './weather-finding.ts';
import type { YearSun } from './year-sun.ts';

/** Below this the beam on the level says nothing about the beam: cosine of 87°. */
const LOW_SUN_COS_ZENITH = 0.0523;

/**
 * Both missing: DHI by the hourly correlation of Erbs, Klein & Duffie 1982, DNI by difference. One missing: from the
 * closure GHI = DNI cos z + DHI.
 *
 * @param sun undefined where the place is not known; then a missing column is a fault.
 */
export function completeIrradiance(
  columns: RawColumns,
  sun: YearSun | undefined,
  findings: WeatherFinding[],
): void {
  const { ghi, dni, dhi } = columns;
  const noBeam = dni.every(Number.isNaN);
  const noDiffuse = dhi.every(Number.isNaN);
  if (!noBeam && !noDiffuse) return;
  if (sun === undefined) {
    findings.push({ code: 'no-location' });
    return;
  }
  findings.push({
    code: noBeam && noDiffuse ? 'diffuse-estimated' : noBeam ? 'beam-by-difference' : 'diffuse-by-difference',
  });
  ghi.forEach((global, hour) => {
    const cosZenith = sun.cosZenith[hour]!;
    if (noDiffuse)
      dhi[hour] = noBeam
        ? estimated(global, sun.aboveWm2[hour]!)
        : within(global - dni[hour]! * cosZenith, global);
    if (noBeam) dni[hour] = cosZenith > LOW_SUN_COS_ZENITH ? Math.max(0, global - dhi[hour]!) / cosZenith : 0;
  });
}

function estimated(global: number, aboveWm2: number): number {
  return aboveWm2 > 0 ? global * hourlyDiffuseFraction(global / aboveWm2) : global;
}

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));
