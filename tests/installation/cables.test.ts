import { describe, expect, test } from 'vitest';
import { readInstallation } from '../../src/installation/index.ts';
import { built, solved } from './places.ts';

const place = (parts: string, joins: readonly string[], conditions = ''): string =>
  `place: A run of cable\nregion: iec\nparts:\n  supply: { kind: source, emf_V: 230 }\n${parts}\njoins:\n${joins
    .map((join) => `  - { between: [${join}], resistance_ohm: 0 }\n`)
    .join('')}${conditions}`;

const HOME = ['supply.plus, run.line.supply', 'supply.minus, earth'];

describe('what carries a fault home beside a wire', () => {
  // 20 m: 2.5 mm² 0.1482 Ω; armour 8.2 Ω/km 0.164 Ω; EMT 1/2 2.441 mΩ/m 0.0488 Ω.
  test.each([
    ['armour', 'SWA 2.5 mm² 3-core', 230 / (0.1482 + 0.164)],
    ['conduit', 'EMT 1/2', 230 / (0.1482 + 0.04882)],
    ['protective', '4 mm² Cu bare', 230 / (0.1482 + 0.0922)],
  ])('the %s, %s, is its protective conductor', (core, written, amperes) => {
    const build = built(
      place(
        `  run: { kind: cable, length_m: 20, temperature_C: 20, cores: { line: 2.5 mm² Cu, ${core}: ${written} } }
  fault: { kind: impedance, between: [run.line.load, run.${core}.load], resistance_ohm: 0, as: fault }`,
        [...HOME, `supply.minus, run.${core}.supply`],
      ),
    );
    expect(solved(build).amperes('fault') / amperes).toBeCloseTo(1, 3);
    expect(build.branches[build.branch(`run.${core}`)]?.role).toBe('protective');
    expect(build.branches[build.branch('run.line')]?.metal).toEqual({ of: 'Cu', area_mm2: 2.5 });
  });

  test('a PEN is a neutral in its daily duty: it is insulated, and joins to it are neutral ones', () => {
    const build = built(
      place(
        `  run: { kind: cable, length_m: 20, cores: { line: 16 mm² Cu, PEN: 16 mm² Cu } }
  load: { kind: impedance, between: [run.line.load, run.PEN.load], resistance_ohm: 20 }`,
        [...HOME, 'supply.minus, run.PEN.supply'],
      ),
    );
    expect(build.branches[build.branch('run.PEN')]?.role).toBe('neutral');
    expect(build.branches[build.branch('supply.minus – run.PEN.supply')]?.role).toBe('neutral');
    expect(build.branch('run.PEN.insulation')).toBeGreaterThan(0);
  });

  test('a screen ties the earths of two buildings together, so a lost neutral comes home over it', () => {
    const text = (neutral: string) =>
      place(
        `  run: { kind: cable, length_m: 100, cores: { line: 16 mm² Cu, neutral: 16 mm² Cu } }
  data: { kind: cable, length_m: 100, cores: { screen: { resistance_ohm: 2 } } }
  far earth: { kind: rod, resistance_ohm: 50 }
  load: { kind: impedance, between: [run.line.load, run.neutral.load], resistance_ohm: 20 }`,
        [
          ...HOME,
          'supply.minus, run.neutral.supply',
          'supply.minus, data.screen.supply',
          'data.screen.load, far earth',
          'run.neutral.load, far earth',
        ],
        `conditions:\n  neutral lost: { kind: open, at: run.neutral, initially: ${neutral} }\n`,
      );
    // 0.115 Ω of neutral beside 2 Ω of screen: by the divider 5 %; without the neutral 2 Ω beside 50 Ω of soil take 96 %.
    const whole = solved(built(text('"no"')));
    expect(whole.amperes('data.screen') / whole.amperes('load')).toBeCloseTo(0.0543, 3);
    const lost = solved(built(text('"yes"')));
    expect(lost.amperes('data.screen') / lost.amperes('load')).toBeCloseTo(50 / 52, 3);
  });

  test('a screen or an armour may end free, a neutral may not', () => {
    const ended = (core: string) =>
      readInstallation(
        place(
          `  run: { kind: cable, length_m: 10, cores: { line: 2.5 mm² Cu, ${core}: 2.5 mm² Cu } }
  load: { kind: impedance, between: [run.line.load, supply.minus], resistance_ohm: 20 }`,
          HOME,
        ),
        'test.yaml',
      ).ok;
    expect([ended('screen'), ended('armour'), ended('protective'), ended('neutral'), ended('PEN')]).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
  });

  // 0.15 nF/m · 100 m · 2π · 50 Hz · 230 V = 1.084 mA.
  test('the charging current of a core goes to the protective conductor beside it, else to earth', () => {
    const text = (cores: string, more: readonly string[]) =>
      place(
        `  run: { kind: cable, length_m: 100, capacitance_nF_m: 0.15, cores: { line: 2.5 mm² Cu${cores} } }
  lamp: { kind: impedance, between: [run.line.load, supply.minus], resistance_ohm: 529 }`,
        [...HOME, ...more],
      );
    const beside = solved(built(text(', protective: 1.5 mm² Cu', ['supply.minus, run.protective.supply'])));
    expect(beside.amperes('run.line.capacitance')).toBeCloseTo(1.084e-3, 5);
    expect(beside.amperes('run.protective')).toBeCloseTo(1.084e-3, 5);
    expect(solved(built(text('', []))).amperes('supply.minus – earth')).toBeCloseTo(1.084e-3, 5);
  });
});

describe('silly but well-formed', () => {
  const written = (core: string, length_m: string) =>
    readInstallation(
      place(
        `  run: { kind: cable, length_m: ${length_m}, cores: { line: ${core}, neutral: ${core} } }
  lamp: { kind: impedance, between: [run.line.load, run.neutral.load], resistance_ohm: 529 }`,
        [...HOME, 'supply.minus, run.neutral.supply'],
      ),
      'test.yaml',
    );

  test('a wire of 0.1 mm² is refused by name, with one there is', () => {
    const reading = written('0.1 mm² Cu', '10000');
    expect(reading.ok).toBe(false);
    if (reading.ok) return;
    expect(reading.diagnostics[0]?.code).toBe('unknown-conductor');
    expect(reading.diagnostics[0]?.instead).toBe('0.5 mm² Cu');
  });

  // 1.72 Ω·m·1e-8 / 0.1 mm² is 0.172 Ω/m: 1720 Ω each way.
  test('the same wire measured is answered: ten kilometres of it leave next to nothing for the lamp', () => {
    const reading = written('{ resistance_ohm: 1724 }', '10000');
    expect(reading.ok).toBe(true);
    if (!reading.ok) return;
    const circuit = solved(
      built(
        place(
          `  run: { kind: cable, length_m: 10000, cores: { line: { resistance_ohm: 1724 }, neutral: { resistance_ohm: 1724 } } }
  lamp: { kind: impedance, between: [run.line.load, run.neutral.load], resistance_ohm: 529 }`,
          [...HOME, 'supply.minus, run.neutral.supply'],
        ),
      ),
    );
    expect(circuit.amperes('lamp')).toBeCloseTo(230 / (2 * 1724 + 529), 4);
  });

  test('a thousand kilometres of thin wire are answered', () => {
    const circuit = solved(
      built(
        place(
          `  run: { kind: cable, length_m: 1.0e6, capacitance_nF_m: 1000, cores: { line: 0.5 mm² Cu, neutral: 0.5 mm² Cu } }
  lamp: { kind: impedance, between: [run.line.load, run.neutral.load], resistance_ohm: 529 }`,
          [...HOME, 'supply.minus, run.neutral.supply'],
        ),
      ),
    );
    expect(Number.isFinite(circuit.amperes('lamp'))).toBe(true);
    expect(circuit.amperes('supply')).toBeLessThan(1);
  });

  test('two sources in parallel out of phase, without impedance, are answered by their least resistance', () => {
    const circuit = solved(
      built(
        place('  second: { kind: source, emf_V: 230, angle_deg: 180 }', [
          'supply.plus, second.plus',
          'supply.minus, second.minus',
          'supply.minus, earth',
        ]),
      ),
    );
    // 460 V round two sources and two joins of 10 µΩ each.
    expect(circuit.amperes('supply') / (460 / 4e-5)).toBeCloseTo(1, 3);
  });
});
