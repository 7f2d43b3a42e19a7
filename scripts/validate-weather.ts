/**
 * Prints generated weather beside observed weather, figure by figure, with the error budget of each check.
 * Run: npx tsx scripts/validate-weather.ts [part of a check's name or place]
 */
import { readFileSync } from 'node:fs';
import { readNormals } from '../packages/sim/src/weather/normals-table.ts';
import { BUDGETS } from '../tests/published/generated-weather/budgets.ts';
import { compareDays } from '../tests/published/generated-weather/compare-days.ts';
import { compareHours } from '../tests/published/generated-weather/compare-hours.ts';
import { compareMinutes } from '../tests/published/generated-weather/compare-minutes.ts';
import { compareSpells } from '../tests/published/generated-weather/compare-spells.ts';
import { holds } from '../tests/published/generated-weather/comparison.ts';

const wanted = (process.argv[2] ?? '').toLowerCase();
const places = readNormals(readFileSync(new URL('../data/normals.csv', import.meta.url), 'utf8'));
const compared = [compareDays, compareSpells, compareHours, compareMinutes].flatMap((compare) =>
  compare(places),
);

for (const [check, budget] of Object.entries(BUDGETS)) {
  const rows = compared.filter(
    (c) => c.check === check && `${check} ${c.where}`.toLowerCase().includes(wanted),
  );
  if (rows.length === 0) continue;
  console.log(`\n${check}\n  allowed: ${budget}`);
  for (const c of rows) {
    const figures = [c.observed, c.generated, c.low, c.high]
      .map((value) => value.toFixed(3).padStart(9))
      .join('');
    console.log(`  ${c.where.padEnd(58)}${figures}${holds(c) ? '' : '  outside'}`);
  }
}
const outside = compared.filter((c) => !holds(c)).length;
console.log(
  `\n${compared.length} comparisons (columns: observed, generated, allowed from, to), ${outside} outside.`,
);
