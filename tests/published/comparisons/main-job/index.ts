/**
 * The main job against the outside world: a published study of solar and storage for backup, the national average of
 * what homes use, and facts of the trade that have no source.
 */
import type { Comparisons } from '../comparison.ts';
import { backup } from './backup-study.ts';
import { carrying } from './carrying.ts';
import { heavy } from './heavy-loads.ts';
import { lasting } from './lasting.ts';
import { oneThingMore } from './one-thing-more.ts';
import { ordinary } from './ordinary-home.ts';

export const mainJobComparisons: Comparisons = {
  'solar and storage for backup': backup,
  'one thing more': oneThingMore,
  'an ordinary home': ordinary,
  'what a pair can carry': carrying,
  'heavy loads': heavy,
  'idle appetite and no end in sight': lasting,
};
