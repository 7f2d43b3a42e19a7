import { describe, expect, it } from 'vitest';
import { meantHint } from '../../../packages/sim/src/scenario/nearest.ts';

const APPLIANCES = [
  ...['freezer-chest', 'freezer-upright', 'refrigerator', 'sump-pump', 'well-pump-half-hp', 'kettle'],
  ...Array.from({ length: 12 }, (_, i) => `other-${i}`),
];

describe('a name that is not in a long list', () => {
  it.each([
    ['kettel', 'Did you mean kettle?'],
    ['chest-freezer', 'Did you mean freezer-chest?'],
    ['Chest freezer', 'Did you mean freezer-chest?'],
    ['freezer', 'There is: freezer-chest, freezer-upright.'],
    ['pump-for-water', 'There is: sump-pump, well-pump-half-hp.'],
  ])('%s: by its letters, or else by the words it shares', (word, hint) => {
    expect(meantHint(word, APPLIANCES)).toBe(hint);
  });

  it('that shares nothing gets no hint, but the list where that is short', () => {
    expect(meantHint('hair-dryer', APPLIANCES)).toBeUndefined();
    expect(meantHint('zzzzzzzzz', ['lamp', 'kettle'])).toBe('There is: lamp, kettle.');
  });
});
