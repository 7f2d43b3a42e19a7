/** Charts: study summary in, figure out. */
export { survivalCurves, type SurvivalCurvesOptions } from './survival-curves.ts';
export { whatChanges, type WhatChangesOptions } from './what-changes.ts';
export { alternativeCurves, type AlternativeCurvesOptions } from './alternative-curves.ts';
export { pairedGains, type PairedGainsOptions } from './paired-gains.ts';
export { seasonGains, type SeasonGainsOptions } from './season-gains.ts';
export { whatEnded, type WhatEndedOptions } from './what-ended.ts';
export { yearHeatMap, type YearHeatMapOptions } from './year-heat-map.ts';
export { circuitsOn } from './circuits-on.ts';
export { energyByTier, type EnergyByTierOptions } from './energy-by-tier.ts';
export { inconvenience, type InconvenienceOptions } from './inconvenience.ts';
export { legLoads } from './leg-loads.ts';
export { needsMatrix, type NeedsMatrixOptions } from './needs-matrix.ts';
export type { OutageView } from './outage-view.ts';
export { solarShares } from './solar-shares.ts';
export { temperatures } from './temperatures.ts';
export { unitCharge } from './unit-charge.ts';
