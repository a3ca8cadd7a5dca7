import { expect, test } from 'vitest';
import { severity } from '../../src/body/index.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import { at, run } from '../../src/scenario/index.ts';

/** A d.c. supply with its minus (or, turned, its plus) on the ground, and somebody between its other pole and the ground. */
function direct(emf_V: number, parts: object = {}, frequency_Hz = 0) {
  const build = compile(
    installationSchema.parse({
      place: 'A battery',
      region: 'iec',
      frequency_Hz,
      parts: {
        battery: { kind: 'source', emf_V: Math.abs(emf_V), angle_deg: emf_V < 0 ? 180 : 0, resistance_ohm: 0.1 },
        electrode: { kind: 'impedance', between: ['battery.minus', 'earth'], resistance_ohm: 1, as: 'electrode' },
        floor: { kind: 'floor', resistance_ohm: 10 },
        Ada: { kind: 'person', 'left hand': 'battery.plus', feet: 'floor' },
        ...parts,
      },
    }),
  );
  const timeline = run(build, {});
  // Whoever can let go has done so after half a second, and keeps the zone they came to.
  return { ...at(timeline, 0.1).people[0]!, zone: at(timeline, 100).people[0]!.zone };
}

test('at the same volts the body lets less direct current through, and it reaches a milder zone', () => {
  const [dc, ac] = [direct(75), direct(75, {}, 50)];
  expect(dc.body_A).toBeLessThan(0.95 * ac.body_A);
  expect(dc.zone).toBe('DC-2');
  expect(severity(ac.zone)).toBeGreaterThan(severity(dc.zone));
  expect(dc.letGo).toBe(true);
  expect(ac.letGo).toBe(false);
});

test('down to the feet a direct current counts half of one that comes up from them', () => {
  const [down, up] = [direct(230), direct(-230)];
  expect(down.body_A).toBeCloseTo(up.body_A, 12);
  expect(down.heart_A).toBeCloseTo(up.heart_A / 2, 9);
  expect(severity(up.zone)).toBeGreaterThan(severity(down.zone));
});

test('a capacitor passes none of it, and a transformer is refused by name', () => {
  expect(
    direct(100, {
      Ada: { kind: 'person', 'left hand': 'pad', feet: 'floor' },
      pad: { kind: 'fitting' },
      c: { kind: 'capacitance', between: ['battery.plus', 'pad'], capacitance_F: 1e-6 },
    }).body_A,
  ).toBeLessThan(1e-6);
  expect(() =>
    installationSchema.parse({
      place: 'A mistake',
      region: 'iec',
      frequency_Hz: 0,
      parts: { t: { kind: 'isolating-transformer' } },
    }),
  ).toThrow();
});
