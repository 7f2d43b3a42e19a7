import { probit } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { normalDeviate } from '../../../packages/sim/src/chance/normal-deviate.ts';

describe('normalDeviate', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods §1.3.6.7.1, with further digits
  it.each([
    [0.5, 0],
    [0.9, 1.2815515655],
    [0.975, 1.9599639845],
    [0.995, 2.5758293035],
    [0.9999, 3.7190164855],
    [0.00001, -4.2648907939],
    [1e-12, -7.0344838253],
  ])('of %f is %f', (u, z) => {
    expect(Math.abs(normalDeviate(u) - z)).toBeLessThan(2e-7 * Math.max(1, Math.abs(z)));
  });

  it('rises everywhere and is odd about a half', () => {
    let before = -Infinity;
    for (let i = 0; i <= 10_000; i++) {
      const z = normalDeviate(i / 10_000);
      expect(z).toBeGreaterThan(before);
      expect(z).toBeCloseTo(-normalDeviate(1 - i / 10_000), 6);
      before = z;
    }
  });

  it('agrees with another implementation to that one’s three decimals', () => {
    for (let u = 0.01; u < 1; u += 0.01) expect(Math.abs(normalDeviate(u) - probit(u))).toBeLessThan(5e-3);
  });

  it('stays finite at the ends', () => {
    expect([normalDeviate(0), normalDeviate(1)].every(Number.isFinite)).toBe(true);
  });
});
