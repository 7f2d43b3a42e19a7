/**
 * How much of the sunlight on level ground is diffuse, from the clearness index.
 * Source: Erbs, Klein & Duffie 1982, Solar Energy 28:293; Duffie & Beckman §2.10.
 * A fraction, 0…1; a clearness outside the fit takes the nearer end.
 */

/** Of an hour. @param clearness hourly kt = GHI / extraterrestrial horizontal. */
export function hourlyDiffuseFraction(clearness: number): number {
  const k = clearness;
  if (k <= 0) return 1;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
  return 0.165;
}
