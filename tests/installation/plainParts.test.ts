import { describe, expect, test } from 'vitest';
import { readInstallation } from '../../src/installation/index.ts';
import { built, solved } from './places.ts';

const place = (parts: string, joins = ''): string =>
  `place: A circuit on paper\nregion: iec\nparts:\n${parts}\njoins: [${joins}]\n`;

describe('plain parts', () => {
  // Xc = 1/(2π·50·10 µF) = 318.3 Ω; 230 V / |300 − j318.3| = 0.5258 A by hand.
  test('a capacitance in series with a resistance', () => {
    const circuit = solved(
      built(
        place(
          `  supply: { kind: source, emf_V: 230 }
  resistance: { kind: impedance, between: [supply.plus, capacitor.a], resistance_ohm: 300 }
  capacitor: { kind: capacitance, capacitance_F: 10.0e-6 }`,
          '{ between: [capacitor.b, supply.minus], resistance_ohm: 0 }',
        ),
      ),
    );
    expect(circuit.amperes('capacitor')).toBeCloseTo(0.5258, 4);
  });

  test('a switch that is open lets nothing through', () => {
    const circuit = (closed: boolean) =>
      solved(
        built(
          place(
            `  supply: { kind: source, emf_V: 230 }
  contact: { kind: switch, closed: ${closed} }
  lamp: { kind: impedance, between: [contact.b, supply.minus], resistance_ohm: 529 }`,
            '[supply.plus, contact.a]',
          ),
        ),
      ).amperes('lamp');
    expect(circuit(true)).toBeCloseTo(230 / 529, 5);
    expect(circuit(false)).toBeLessThan(1e-6);
  });

  // Loads and volts as the turns: 120 V at 10:1 is 12 V; 12 V on 6 Ω is 2 A, from the line 0.2 A.
  test('an ideal transformer divides volts and multiplies amperes by its turns', () => {
    const circuit = solved(
      built(
        place(
          `  supply: { kind: source, emf_V: 120 }
  bell transformer: { kind: ideal-transformer, windings: { primary: 10, secondary: 1 } }
  bell: { kind: impedance, between: [bell transformer.secondary.dot, bell transformer.secondary.end], resistance_ohm: 6 }`,
          `{ between: [supply.plus, bell transformer.primary.dot], resistance_ohm: 0 },
           { between: [supply.minus, bell transformer.primary.end], resistance_ohm: 0 }`,
        ),
      ),
    );
    expect(circuit.between('bell transformer.secondary.dot', 'bell transformer.secondary.end')).toBeCloseTo(12, 3);
    expect(circuit.amperes('bell')).toBeCloseTo(2, 4);
    expect(circuit.amperes('supply')).toBeCloseTo(0.2, 5);
  });

  // I1 = E / (Z11 − Z12² / (Z22 + R)): Z11 = j10, Z12 = j4, Z22 = j8, R = 10; by hand 100 / (0.9756 + j9.2195) = 10.786 A.
  test('coupled windings take what their matrix says', () => {
    const circuit = solved(
      built(
        place(
          `  supply: { kind: source, emf_V: 100 }
  pair: { kind: coupled-windings, windings: [primary, secondary], reactance_ohm: [[10, 4], [4, 8]] }
  load: { kind: impedance, between: [pair.secondary.dot, pair.secondary.end], resistance_ohm: 10 }`,
          `{ between: [supply.plus, pair.primary.dot], resistance_ohm: 0 },
           { between: [supply.minus, pair.primary.end], resistance_ohm: 0 }`,
        ),
      ),
    );
    expect(circuit.amperes('supply')).toBeCloseTo(10.786, 3);
    expect(circuit.amperes('load')).toBeCloseTo((10.786 * 4) / Math.hypot(10, 8), 3);
  });

  test.each([
    ['more tightly than is possible', '[[10, 12], [12, 8]]'],
    ['more tightly than is possible', '[[0, 4], [4, 8]]'],
    ['not symmetric', '[[10, 4], [3, 8]]'],
    ['2 rows of 2', '[[10, 4]]'],
    ['2 rows of 2', '[[10, 4, 1], [4, 8, 1]]'],
  ])('a matrix that %s is refused', (reason, matrix) => {
    const text = place(
      `  supply: { kind: source, emf_V: 100 }
  pair: { kind: coupled-windings, windings: [primary, secondary], reactance_ohm: ${matrix} }`,
      '[supply.plus, pair.primary.dot], [supply.minus, pair.primary.end]',
    );
    const reading = readInstallation(text, 'test.yaml');
    expect(reading.ok).toBe(false);
    if (!reading.ok)
      expect(reading.diagnostics.map(({ message }) => message).join()).toMatch(
        reason.startsWith('2 rows') ? /2 rows of 2|at least 2 entries/ : new RegExp(reason),
      );
  });

  test('windings coupled to the full are answered, not refused', () => {
    const circuit = solved(
      built(
        place(
          `  supply: { kind: source, emf_V: 100 }
  pair: { kind: coupled-windings, windings: [primary, secondary], reactance_ohm: [[400, 200], [200, 100]] }
  load: { kind: impedance, between: [pair.secondary.dot, pair.secondary.end], resistance_ohm: 10 }`,
          `{ between: [supply.plus, pair.primary.dot], resistance_ohm: 0 },
           { between: [supply.minus, pair.primary.end], resistance_ohm: 0 }`,
        ),
      ),
    );
    expect(circuit.amperes('load')).toBeCloseTo(5, 3);
  });

  test('a body of fixed resistance carries what Ohm says', () => {
    const circuit = solved(
      built(
        place(
          `  supply: { kind: source, emf_V: 120 }
  body: { kind: fixed-body, between: [supply.plus, supply.minus] }`,
        ),
      ),
    );
    expect(circuit.amperes('body')).toBeCloseTo(0.12, 6);
  });

  test('a steel frame is metal up to where it is joined and earth at its feet', () => {
    const build = built(
      place(
        `  supply: { kind: source, emf_V: 100 }
  frame: { kind: structural-steel, earth_resistance_ohm: 2, length_m: 10, section_mm2: 1380 }`,
        '{ between: [supply.plus, frame.tap], resistance_ohm: 0 }, { between: [supply.minus, earth], resistance_ohm: 0 }',
      ),
    );
    expect(build.electrodes.map((at) => build.branches[at]?.name)).toEqual(['frame']);
    // 1.38e-7 Ω·m · 10 m / 1380 mm² is 1 mΩ.
    expect(solved(build).amperes('frame')).toBeCloseTo(49.974, 3);
  });
});
