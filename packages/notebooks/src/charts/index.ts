/** Charts: study summary in, figure out. */
export { survivalCurves, type SurvivalCurvesOptions } from './survival-curves.ts';
export { whatChanges, type WhatChangesOptions } from './what-changes.ts';
export { alternativeCurves, type AlternativeCurvesOptions } from './alternative-curves.ts';
export { pairedGains, type PairedGainsOptions } from './paired-gains.ts';
export { seasonGains, type SeasonGainsOptions } from './season-gains.ts';
export { whatEnded, type WhatEndedOptions } from './what-ended.ts';
export { yearHeatMap, type YearHeatMapOptions } from './year-heat-map.ts';
