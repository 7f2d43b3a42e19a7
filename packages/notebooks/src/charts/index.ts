/** Charts: study summary in, figure out. */
export { survivalCurves, type SurvivalCurvesOptions } from './survival-curves.ts';
export { whatChanges, type WhatChangesOptions } from './what-changes.ts';
