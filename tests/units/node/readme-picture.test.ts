/** The picture of the README is of the demo household as it is. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { scenarioHash } from '../../../packages/sim/src/index.ts';
import { loadScenario } from '../../../packages/sim/src/node.ts';

it('docs/how-many-days.svg names the scenario that data/full-house.yaml is now (else: npm run picture)', () => {
  const picture = readFileSync('docs/how-many-days.svg', 'utf8').replace(/<[^>]+>/g, ' '); // lines break anywhere
  expect(/Scenario\s+([0-9a-f]{12})/.exec(picture)?.[1]).toBe(
    scenarioHash(loadScenario('data/full-house.yaml').scenario),
  );
});
