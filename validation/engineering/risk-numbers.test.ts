/**
 * Why findings are ordered by severity first and not by a product of ranks: products of three ranks from 1 to 10 take
 * few values, and one value stands for very different risks. By enumeration; rows of the check values.
 */
import { describe, expect, test } from 'vitest';

const ranks = Array.from({ length: 10 }, (_, i) => i + 1);
const products = ranks.flatMap((s) =>
  ranks.flatMap((o) => ranks.map((d) => ({ s, o, d, product: s * o * d }))),
);

describe('products of ranks', () => {
  test('a thousand combinations share 120 values, and the second largest is 900', () => {
    const values = [...new Set(products.map(({ product }) => product))].sort((a, b) => b - a);
    expect(products).toHaveLength(1000);
    expect(values).toHaveLength(120);
    expect(values.slice(0, 2)).toEqual([1000, 900]);
  });

  test('the gravest harm, rare and hidden, has the number of the slightest, frequent and hidden', () => {
    const same = products.filter(({ product }) => product === 100);
    expect(same).toContainEqual({ s: 10, o: 1, d: 10, product: 100 });
    expect(same).toContainEqual({ s: 1, o: 10, d: 10, product: 100 });
  });
});
