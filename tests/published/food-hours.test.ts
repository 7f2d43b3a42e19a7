/**
 * Hours that food keeps without power. US government food-safety guidance (USDA FSIS, FDA, FoodSafety.gov): a closed
 * refrigerator about 4 hours, a full freezer about 48, a half-full one about 24; above 40 °F (4.4 °C) for more than 2
 * hours, perishable food is thrown away. The drift of the typical rows is fitted to the first three in a room of 22 °C
 * (MODEL.md U10); here they come back out of the need as a household sees it.
 */
import { describe, expect, it } from 'vitest';
import { openJob, readTypicalAppliances, type Scenario } from '../../packages/sim/src/index.ts';
import { readDataFile } from '../../packages/sim/src/node.ts';
import { need } from '../../packages/sim/src/scenario/schema-needs.ts';
import { tinyScenario, type ApplianceInput } from '../units/step/tiny-house.ts';
import { within } from './within.ts';

const typical = readTypicalAppliances(readDataFile('appliances.csv'));

function hoursUntilFailed(appliance: string, hoursAbove: number): number {
  // at its setting when the grid goes, and never fed
  const row = { ...typical.get(appliance), bandC: 0.02 } as unknown as ApplianceInput;
  const scenario: Scenario = {
    ...tinyScenario({
      circuits: { store: { appliances: [row], need: 'food' } },
      rules: [{ by: 'outage', circuits: { tiers: [1] } }],
      hours: 96,
      indoorC: 22,
    }),
    needs: [need.parse({ measure: 'cold', id: 'food', hoursAbove })],
  };
  return openJob({ job: 'needs', scenario, seed: 'food' })(0, 1).columns['firstMinute']![0]! / 60;
}

describe('food without power', () => {
  it.each([
    ['refrigerator', 4, 0.1],
    ['freezer-chest', 48, 0.25],
    ['freezer-chest-half-full', 24, 0.25],
  ])('%s reaches 4.4 °C after %d hours: ± %d for the band it starts in', (appliance, hours, tolerance) => {
    within(hoursUntilFailed(appliance, 0), hours, tolerance, appliance);
  });

  it('is thrown away 2 hours later, unless the household says otherwise', () => {
    const two = hoursUntilFailed('refrigerator', 2);
    within(two, hoursUntilFailed('refrigerator', 0) + 2, 1 / 60, 'the two-hour rule');
    expect(need.parse({ measure: 'cold', id: 'food' })).toMatchObject({ limitC: 4.4, hoursAbove: 2 });
  });
});

describe('other published figures that needs start from', () => {
  it('are a US gallon a person a day (US emergency guidance) and 18 °C (WHO Housing and health guidelines 2018)', () => {
    const water = need.parse({ measure: 'water', id: 'water', persons: 1 });
    within(
      water.measure === 'water' ? water.litresPerPersonPerDay : NaN,
      3.785,
      0.02,
      'one US gallon, litres',
    );
    expect(need.parse({ measure: 'warmth', id: 'warmth' })).toMatchObject({ limitC: 18 });
  });
});
