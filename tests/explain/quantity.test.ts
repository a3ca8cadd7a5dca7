import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figure, quantity, type Unit } from '../../src/explain/index.ts';

const NBSP = '\u00a0';

test.each([
  [448.3588, 'A', '448 A'],
  [0.01823, 'A', '18.2 mA'],
  [0.0000007, 'A', '700 nA'],
  [20, 'A', '20 A'],
  [7.65, 'A', '7.65 A'],
  [0.9996, 'A', '1 A'],
  [0.99949, 'A', '999 mA'],
  [1561, 'A', '1.56 kA'],
  [12175, 'A', '12.2 kA'],
  [-3.25, 'V', '−3.25 V'],
  [0.268, 'Ω', '268 mΩ'],
  [1e9, 'Ω', '1 GΩ'],
  [25000, 'VA', '25 kVA'],
  [0.0125, 's', '12.5 ms'],
  [1.04, 's', '1.04 s'],
  [119.9, 's', '120 s'],
  [600, 's', '10 min'],
  [3600, 's', '60 min'],
  [7200, 's', '2 h'],
  [0, 'A', '0 A'],
  [1e-15, 'A', '0 A'],
  [Infinity, 's', '∞ s'],
] as const)('%d %s is written %s', (value, unit, text) => {
  expect(quantity(value, unit)).toBe(text.replace(' ', NBSP));
});

test('three figures, a prefix that leaves 1 to 999, and the value itself within half of the last figure', () => {
  const factors: Readonly<Record<string, number>> = { G: 1e9, M: 1e6, k: 1e3, '': 1, m: 1e-3, µ: 1e-6, n: 1e-9 };
  fc.assert(
    fc.property(
      fc.double({ min: -7.9, max: 11.9, noNaN: true }),
      fc.boolean(),
      fc.constantFrom<Unit>('A', 'V', 'Ω'),
      (exponent, negative, unit) => {
        const value = (negative ? -1 : 1) * 10 ** exponent;
        const text = quantity(value, unit);
        const [number = '', prefixed = ''] = text.split(NBSP);
        const digits = number.replace('−', '-');
        const factor = factors[prefixed.slice(0, -unit.length)];
        expect(factor).toBeDefined();
        expect(digits.replace(/[-.]/g, '').replace(/^0+/, '').length).toBeLessThanOrEqual(3);
        expect(Math.abs(Number(digits))).toBeLessThan(1000);
        expect(Math.abs(Number(digits) * (factor ?? 0) - value)).toBeLessThanOrEqual(Math.abs(value) * 0.00501);
      },
    ),
  );
});

test('what is not a number is refused, not printed', () => {
  expect(() => quantity(NaN, 'A')).toThrow(RangeError);
  expect(() => figure(NaN)).toThrow(RangeError);
});
