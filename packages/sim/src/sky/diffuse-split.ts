/**
 * How much of the sunlight on level ground is diffuse, from the clearness index.
 * Source: Erbs, Klein & Duffie 1982, Solar Energy 28:293; Duffie & Beckman §2.10 to 2.12.
 * Each returns a fraction, 0…1; a clearness outside the fit takes the nearer end.
 */

const WINTER_SUNSET_DEG = 81.4;

/** Of an hour. @param clearness hourly kt = GHI / extraterrestrial horizontal. */
export function hourlyDiffuseFraction(clearness: number): number {
  const k = clearness;
  if (k <= 0) return 1;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
  return 0.165;
}

/** Of a day. @param clearness daily Kt. @param sunsetHourAngleDeg short winter days behave differently. */
export function dailyDiffuseFraction(clearness: number, sunsetHourAngleDeg: number): number {
  const k = Math.max(0, clearness);
  if (sunsetHourAngleDeg < WINTER_SUNSET_DEG) {
    return k < 0.715 ? 1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))) : 0.143;
  }
  return k < 0.722 ? Math.min(1, 1 + k * (0.2832 + k * (-2.5557 + k * 0.8448))) : 0.175;
}

/** Of a month's mean day; fitted for 0.3 ≤ clearness ≤ 0.8. */
export function monthlyDiffuseFraction(clearness: number, sunsetHourAngleDeg: number): number {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  if (sunsetHourAngleDeg <= WINTER_SUNSET_DEG) return 1.391 + k * (-3.56 + k * (4.189 + k * -2.137));
  return 1.311 + k * (-3.022 + k * (3.427 + k * -1.821));
}
