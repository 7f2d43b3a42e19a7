/** Where on Earth: what the sky needs to know of a site. */
export interface SkySite {
  /** North is positive, -90…90. */
  readonly latitudeDeg: number;
  /** East is positive, -180…180. */
  readonly longitudeDeg: number;
  /** Above sea level, m; sets the air pressure that bends the sun's light. Left out: 0. */
  readonly elevationM?: number | undefined;
}
