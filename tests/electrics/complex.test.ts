import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  abs,
  add,
  arg,
  complex,
  conj,
  div,
  mul,
  neg,
  phasor,
  phasors,
  polar,
  scale,
  sub,
} from '../../src/electrics/index.ts';

const part = fc.integer({ min: -1000, max: 1000 });
const number = fc.record({ re: part, im: part });

describe('complex numbers', () => {
  test('sums, differences and opposites go part by part', () => {
    expect(add(complex(1, 2), complex(3, -5))).toEqual(complex(4, -3));
    expect(sub(complex(1, 2), complex(3, -5))).toEqual(complex(-2, 7));
    expect(neg(complex(1, -2))).toEqual(complex(-1, 2));
    expect(scale(complex(1, -2), 3)).toEqual(complex(3, -6));
    expect(complex(3)).toEqual({ re: 3, im: 0 });
  });

  test('j times j is −1', () => {
    expect(mul(complex(0, 1), complex(0, 1))).toEqual(complex(-1, 0));
  });

  test('a product divided by one factor is the other', () => {
    fc.assert(
      fc.property(number, number, (a, b) => {
        fc.pre(b.re !== 0 || b.im !== 0);
        const back = div(mul(a, b), b);
        expect(abs(sub(back, a))).toBeLessThanOrEqual(1e-12 * (1 + abs(a)));
      }),
    );
  });

  test('a number times its conjugate is its magnitude squared', () => {
    const { re, im } = mul(complex(3, -4), conj(complex(3, -4)));
    expect([re, im, abs(complex(3, -4))]).toEqual([25, 0, 5]);
  });

  test('magnitude and angle make the number again', () => {
    fc.assert(
      fc.property(number, (a) => {
        expect(abs(sub(polar(abs(a), arg(a)), a))).toBeLessThanOrEqual(1e-12 * (1 + abs(a)));
      }),
    );
  });

  test('division survives parts whose squares would overflow', () => {
    expect(div(complex(1e200, 0), complex(1e200, 1e200))).toEqual(complex(0.5, -0.5));
  });

  test('one phasor out of many is refused where there is none', () => {
    const row = phasors(2);
    row.im[1] = 7;
    expect(phasor(row, 1)).toEqual(complex(0, 7));
    expect(() => phasor(row, 2)).toThrow('index 2 is outside 0…1');
  });
});
