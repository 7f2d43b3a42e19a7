/** Banks and inverters through the whole simulator, against arithmetic on paper. */
import type { Comparisons } from '../comparison.ts';
import { books } from './books.ts';
import { changingLoads } from './changing-loads.ts';
import { constantLoads } from './constant-loads.ts';
import { lossOfLoads } from './loss-of-load.ts';
import { partLoads } from './part-load.ts';
import { sizing } from './sizing.ts';
import { standingLosses } from './standing-losses.ts';
import { twoBanks } from './two-banks.ts';

export const batteryComparisons: Comparisons = {
  'constant loads': constantLoads,
  'loads that change': changingLoads,
  'two banks': twoBanks,
  'the books': books,
  'part-load efficiency': partLoads,
  'standing losses': standingLosses,
  'sizing for autonomy': sizing,
  'loss of load': lossOfLoads,
};
