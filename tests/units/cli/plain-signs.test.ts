/** `--ascii`: plain signs everywhere, in columns as wide as before; and the options that figures were asked for with. */
import { describe, expect, it } from 'vitest';
import { overridesTyped } from '../../../packages/sim/src/cli/render-overrides.ts';
import { plainSigns } from '../../../packages/sim/src/cli/render-style.ts';
import { rideout, SMALL } from './rideout.ts';

describe('plain signs', () => {
  it('keep the width of what stands in tables', () => {
    const cells = '  °C·h  1/10, °C  −3.5  1–2  ≥ 4';
    expect(plainSigns(cells)).toBe('   C*h  1/10,  C  -3.5  1-2  >=4');
    expect(plainSigns(cells)).toHaveLength(cells.length);
  });

  it('read well in prose', () => {
    expect(plainSigns('above 4.4 °C, 2 × 3 kWh, W/m² … ± 0.2')).toBe(
      'above 4.4 C, 2 x 3 kWh, W/m2 ... +- 0.2',
    );
  });

  it.each([
    ['check', ['-d', '1']],
    ['needs', ['-d', '2', '-w', '0']],
    ['next-outage', ['-d', '2', '-w', '0']],
  ])('are all that %s prints, remarks included', async (verb, options) => {
    const { code, out, told } = await rideout([verb, SMALL, ...options, '--ascii']);
    expect(code).toBe(0);
    expect(out + told).toMatch(/^[\x00-\x7f]+$/); // eslint-disable-line no-control-regex
  });
});

describe('options instead of what the file says', () => {
  it('are told as typed', () => {
    expect(overridesTyped({})).toBe('');
    expect(overridesTyped({ months: [1, 7], weather: 'my year.epw', perYear: 2 })).toBe(
      '--weather\u00a0"my year.epw" --months\u00a01,7 --per-year\u00a02',
    );
  });

  it('stand below how to repeat the figures, and only where there are any', async () => {
    const asked = await rideout(['days', SMALL, '-d', '2', '-w', '0', '-q', '--months', '1,7']);
    expect(asked.out).toMatch(/They were asked for with --months 1,7; give the same again\.\n$/);
    const plain = await rideout(['next-outage', SMALL, '-d', '2', '-w', '0', '-q']);
    expect(plain.out).not.toContain('They were asked for');
    const json = await rideout(['days', SMALL, '-d', '2', '-w', '0', '--months', '1,7', '--json']);
    expect(JSON.parse(json.out)).toMatchObject({ provenance: { askedWith: '--months 1,7' } });
  });
});
