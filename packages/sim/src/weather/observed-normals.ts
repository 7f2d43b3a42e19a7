/** Monthly normals as they were observed, before anything is corrected or filled in. */

/** As the table has them; NaN where a cell is blank (clearness in polar night). */
export interface ObservedNormals {
  readonly clearnessMean: readonly number[];
  readonly clearnessSd: readonly number[];
  readonly clearnessLag1: readonly number[];
  readonly dryBulbMeanC: readonly number[];
  readonly dryBulbDailyRangeC: readonly number[];
  readonly dryBulbSdC: readonly number[];
  readonly dryBulbLag1: readonly number[];
  readonly clearnessDryBulbCorrelation: readonly number[];
}
