import fc from 'fast-check';
import { expect, test } from 'vitest';
import { heartCurrent_A } from '../../src/body/index.ts';
import type { Limb } from '../../src/body/index.ts';

/** Currents in phase, counted into the body, A. */
function inPhase(
  into_A: Readonly<Partial<Record<Limb, number>>>,
  turned = 0,
): Partial<Record<Limb, { re: number; im: number }>> {
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return Object.fromEntries(Object.entries(into_A).map(([limb, a]) => [limb, { re: a * c, im: a * s }]));
}

const amperes = fc.double({ min: 0, max: 1, noNaN: true });

test('a right hand on the case with the left on the sink counts more for the way down to the feet than for the way across', () => {
  const into = inPhase({ 'right hand': 0.1, 'left hand': -0.06, feet: -0.04 });
  const { amperes: heart, factor, path } = heartCurrent_A(into);
  expect(heart).toBeCloseTo(0.4 * 0.06 + 0.8 * 0.04, 12);
  expect(factor).toBeCloseTo(heart / 0.1, 12);
  expect(path).toBe('right hand to left hand and feet');
  expect(heartCurrent_A(inPhase({ 'right hand': 0.1, 'left hand': -0.04, feet: -0.06 })).path).toBe(path);
});

test('a left hand on the case with the right on the sink counts the way down in full', () => {
  const { amperes: heart, path } = heartCurrent_A(inPhase({ 'left hand': 0.1, 'right hand': -0.06, feet: -0.04 }));
  expect(heart).toBeCloseTo(0.4 * 0.06 + 1.0 * 0.04, 12);
  expect(path).toBe('left hand to right hand and feet');
});

test('where both hands lead to the feet, the right counts as much as the left does', () => {
  const { amperes: heart, path } = heartCurrent_A(inPhase({ 'left hand': 0.03, 'right hand': 0.07, feet: -0.1 }));
  expect(heart).toBeCloseTo(0.03 + 0.03 + 0.8 * 0.04, 12);
  expect(path).toBe('both hands to feet');
  const apart = { 'left hand': 0.03, 'right hand': 0.07, 'left foot': -0.04, 'right foot': -0.06 };
  expect(heartCurrent_A(inPhase(apart)).amperes).toBeCloseTo(heart, 12);
});

test('what enters by one place leaves by all others as they carry', () => {
  const chest = heartCurrent_A(inPhase({ chest: 0.1, 'right hand': -0.05, 'left hand': -0.03, seat: -0.02 }));
  expect(chest.amperes).toBeCloseTo(1.3 * 0.05 + 1.5 * 0.03 + 1.5 * 0.02, 12);
  const two = heartCurrent_A(inPhase({ 'left hand': 0.06, 'right hand': 0.04, back: -0.05, seat: -0.05 }));
  expect(two.amperes).toBeCloseTo(0.5 * (0.7 * 0.06 + 0.3 * 0.04) + 0.5 * 0.7 * 0.1, 12);
});

test('two currents a quarter turn apart add as such', () => {
  const { amperes: heart } = heartCurrent_A({
    'left hand': { re: 0.03, im: 0 },
    'right hand': { re: 0, im: 0.01 },
    'left foot': { re: -0.03, im: 0 },
    'right foot': { re: 0, im: -0.01 },
  });
  expect(heart).toBeCloseTo(Math.hypot(0.03, 0.8 * 0.01), 12);
});

test('a direct current down to the feet counts half of one up from them, from hand to hand both ways the same', () => {
  const up = heartCurrent_A(inPhase({ feet: 0.1, 'left hand': -0.1 }), true);
  const down = heartCurrent_A(inPhase({ feet: -0.1, 'left hand': 0.1 }), true);
  expect([up.amperes, down.amperes]).toEqual([0.1, 0.05]);
  const across = (a: number) => heartCurrent_A(inPhase({ 'right hand': a, 'left hand': -a }), true).amperes;
  expect(across(0.1)).toBe(across(-0.1));
});

test('a third limb that carries next to nothing changes neither the name of the path nor the current', () => {
  const { amperes: heart, path } = heartCurrent_A(inPhase({ 'right hand': 0.1, 'left hand': -1e-6, feet: -0.1 }));
  expect(heart).toBeCloseTo(0.08, 5);
  expect(path).toBe('right hand to feet');
  expect(heartCurrent_A(inPhase({ 'left hand': 0.1, 'right hand': 0.1, feet: -1e-6 })).path).toBe('unknown');
  expect(heartCurrent_A(inPhase({ 'left hand': -0.1, 'right hand': 0.1, feet: 1e-6 })).path).toBe(
    'left hand to right hand',
  );
});

test('no current is no path, and a limb whose current goes nobody knows where counts in full', () => {
  expect(heartCurrent_A({})).toEqual({ amperes: 0, factor: 0, path: 'none' });
  expect(heartCurrent_A(inPhase({ 'right hand': 0, feet: 0 })).path).toBe('none');
  expect(heartCurrent_A(inPhase({ 'right hand': 0.02 }))).toEqual({ amperes: 0.02, factor: 1, path: 'unknown' });
});

test('the heart current is at least two fifths of the whole, whatever the phase, and never jumps', () => {
  fc.assert(
    fc.property(amperes, amperes, fc.double({ min: 0, max: 6, noNaN: true }), (one, other, turned) => {
      const limbs = { 'right hand': one, 'left hand': other, feet: -one - other } as const;
      const { amperes: heart, factor } = heartCurrent_A(inPhase(limbs, turned));
      const whole = one + other;
      expect(heart).toBeGreaterThanOrEqual(0.4 * whole - 1e-12);
      expect(heart).toBeCloseTo(heartCurrent_A(inPhase(limbs)).amperes, 9);
      if (whole > 0) expect(factor * whole).toBeCloseTo(heart, 12);
      const nudged = heartCurrent_A(
        inPhase({ ...limbs, 'left hand': other - 1e-9, feet: -one - other + 1e-9 }, turned),
      );
      expect(Math.abs(nudged.amperes - heart)).toBeLessThan(4e-9);
      const twice = heartCurrent_A(
        inPhase({ 'right hand': 2 * one, 'left hand': 2 * other, feet: -2 * whole }, turned),
      );
      expect(twice.amperes).toBeCloseTo(2 * heart, 12);
    }),
    { numRuns: 2000, seed: 8 },
  );
});
