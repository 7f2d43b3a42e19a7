/**
 * Prints outside figures beside ours: batteries and inverters, the main job, chances known exactly, then generated
 * weather. The tests assert the same comparisons; a figure outside its band ends with exit code 1.
 * Run: npx tsx scripts/validate.ts [part of a claim, source or group]
 */
import { batteryComparisons } from '../tests/published/comparisons/battery/index.ts';
import { agrees, type Comparison } from '../tests/published/comparisons/comparison.ts';
import { mainJobComparisons } from '../tests/published/comparisons/main-job/index.ts';
import { monteCarloComparisons } from '../tests/published/comparisons/monte-carlo/index.ts';

const SUBJECTS = {
  'Batteries and inverters': batteryComparisons,
  'The main job': mainJobComparisons,
  'Chances known exactly': monteCarloComparisons,
};

const wanted = (process.argv[2] ?? '').toLowerCase();
let compared = 0;
let outside = 0;

for (const [subject, groups] of Object.entries(SUBJECTS)) {
  for (const [group, comparisons] of Object.entries(groups)) {
    const chosen = comparisons.filter(({ claim, source }) =>
      `${subject} ${group} ${claim} ${source}`.toLowerCase().includes(wanted),
    );
    if (chosen.length === 0) continue;
    console.log(`\n${subject}: ${group}\n`);
    chosen.forEach(print);
  }
}
console.log(`\n${compared} comparisons, ${outside} outside their bands.`);
console.log('Sun, irradiance, panels, appliances and statistics: npx vitest run tests/published');
console.log('\nGenerated weather beside observed weather');
await import('./validate-weather.ts');
if (outside > 0) process.exitCode = 1;

function print({ claim, source, unit, band, ours }: Comparison): void {
  const value = ours();
  const holds = agrees(value, band);
  compared++;
  if (!holds) outside++;
  const difference = band.expected === undefined ? '' : `  difference ${short(value - band.expected)}`;
  console.log(`  ${claim}\n    [${source}]`);
  console.log(
    `    expected ${band.text}  ours ${short(value)} ${unit}${difference}${holds ? '' : '  OUTSIDE'}`,
  );
}

/** Six digits; what is smaller than rounding is 0. */
function short(value: number): string {
  return Math.abs(value) < 1e-9 ? '0' : String(Number(value.toPrecision(6)));
}
