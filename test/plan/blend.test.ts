import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BlendRow, blend, missOf } from '../../server/plan/blend.ts';

const row = (perUnit: readonly number[], low: number, high: number, base = 0): BlendRow => ({
  base,
  perUnit,
  low,
  high,
  weight: 1 / ((low + high) / 2) ** 2,
});

describe('by hand', () => {
  test('one feed goes to the middle of one band', () => {
    expect(blend([row([100], 120, 180)], [10])[0]).toBeCloseTo(1.5, 6);
  });

  test('a limit stops it, and zero does', () => {
    expect(blend([row([100], 120, 180)], [0.8])).toEqual([0.8]);
    expect(blend([row([100], 120, 180, 300)], [0.8])).toEqual([0]);
  });

  test('two feeds solve two sums exactly: 2a + b = 8, a + 3b = 9', () => {
    const [a, b] = blend([row([2, 1], 8, 8), row([1, 3], 9, 9)], [100, 100]);
    expect(a).toBeCloseTo(3, 9);
    expect(b).toBeCloseTo(2, 9);
  });

  test('where both cannot be met, the miss is shared by its weight', () => {
    // 10a should be 10 and 20, each by its share: least of (10a-10)²/100 + (10a-20)²/400 is at a = 1.2.
    expect(blend([row([10], 10, 10), row([10], 20, 20)], [100])[0]).toBeCloseTo(1.2, 6);
  });

  test('what brings nothing is left out, and nothing asked gives nothing', () => {
    expect(blend([row([0, 5], 10, 12)], [10, 10])[0]).toBe(0);
    expect(blend([], [1, 2])).toEqual([0, 0]);
    expect(blend([row([1], 1, 2)], []).length).toBe(0);
  });
});

const feeds = 4;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const drawnRow = fc
  .record({
    base: number(0, 50),
    perUnit: fc.array(fc.oneof(fc.constant(0), number(0.01, 200)), { minLength: feeds, maxLength: feeds }),
    low: number(1, 200),
    width: number(0, 80),
  })
  .map(({ base, perUnit, low, width }) => row(perUnit, low, low + width, base));
const rows = fc.array(drawnRow, { minLength: 1, maxLength: 8 });
const limits = fc.array(fc.oneof(number(0.01, 5), fc.constant(Number.POSITIVE_INFINITY)), {
  minLength: feeds,
  maxLength: feeds,
});

test('law: within its limits, the same each time, and no random amounts are better', () => {
  const shares = fc.array(fc.array(number(0, 1), { minLength: feeds, maxLength: feeds }), {
    minLength: 20,
    maxLength: 20,
  });
  fc.assert(
    fc.property(rows, limits, shares, (drawn, most, trials) => {
      const amounts = blend(drawn, most);
      expect(blend(drawn, most)).toEqual(amounts);
      amounts.forEach((amount, index) => {
        expect(amount).toBeGreaterThanOrEqual(0);
        expect(amount).toBeLessThanOrEqual((most[index] ?? 0) * (1 + 1e-12));
      });
      const miss = missOf(drawn, amounts);
      const near = (amount: number, index: number, share: number): number =>
        Math.min(most[index] ?? 0, amount * 2 * share + (share - 0.5) ** 2);
      for (const trial of trials) {
        const random = trial.map((share, index) => share * Math.min(most[index] ?? 0, 10));
        const close = trial.map((share, index) => near(amounts[index] ?? 0, index, share));
        expect(miss).toBeLessThanOrEqual(missOf(drawn, random) * (1 + 1e-6) + 1e-9);
        expect(miss).toBeLessThanOrEqual(missOf(drawn, close) * (1 + 1e-6) + 1e-9);
      }
    }),
    { numRuns: 400 },
  );
});
