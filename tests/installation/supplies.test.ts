import { describe, expect, test } from 'vitest';
import { measured, type Circuit } from '../reference/bench.ts';
import { built, solved } from './places.ts';

type Part = Circuit['parts'][string];

const ohm = (between: [string, string], resistance_ohm: number): Part => ({
  kind: 'impedance',
  between,
  resistance_ohm,
});
const bolt = (a: string, b: string): Part => ({ kind: 'impedance', between: [a, b], resistance_ohm: 0, as: 'fault' });

/** A weak transformer, so that a bolt of 10 µΩ counts for nothing: 10 kVA, 4 %. */
const weak = {
  kind: 'three-phase-transformer',
  rating_VA: 10_000,
  secondary_V: 400,
  impedance_percent: 4,
  x_over_r: 3,
} as const;
const Z_ohm = 0.04 * (400 ** 2 / 10_000);
const U0 = 400 / Math.sqrt(3);

describe('three phases', () => {
  const alike = (conductance: number): Circuit => ({
    parts: {
      winding: weak,
      star: { kind: 'fitting' },
      a: ohm(['winding.a', 'star'], 10),
      b: ohm(['winding.b', 'star'], 10),
      c: ohm(['winding.c', 'star'], 10),
      neutral: ohm(['star', 'winding.neutral'], conductance),
    },
  });

  test('loaded alike leave nothing for the neutral', () => {
    const { amperes } = measured(alike(0.1));
    expect(amperes('a')).toBeGreaterThan(20);
    expect(amperes('neutral')).toBeLessThan(1e-6);
  });

  test('with one load gone the neutral carries what the other two add up to', () => {
    const { parts } = alike(0);
    const { amperes } = measured({ parts: { ...parts, c: ohm(['winding.c', 'star'], 1e9) } });
    // Two equal currents 120° apart add up to one of them.
    expect(amperes('neutral') / amperes('a')).toBeCloseTo(1, 3);
  });

  test('line to line the bolted fault is √3/2 of the three-phase one', () => {
    const { amperes } = measured({ parts: { winding: weak, fault: bolt('winding.a', 'winding.b') } });
    expect(amperes('fault')).toBeCloseTo(((Math.sqrt(3) / 2) * U0) / Z_ohm, 1);
  });
});

describe('what is behind the transformer', () => {
  const behind = { ...weak, primary_VA: 100_000, primary_x_over_r: 3 } as const;
  const utility_ohm = 400 ** 2 / 100_000;
  const toNeutral = (winding: Part): number =>
    measured({ parts: { winding, fault: bolt('winding.a', 'winding.neutral') } }).amperes('fault');

  test('a delta primary keeps zero sequence from the utility: 3·U0 / (2·(Zt + Zu) + Zt)', () => {
    expect(toNeutral(behind)).toBeCloseTo((3 * U0) / (2 * (Z_ohm + utility_ohm) + Z_ohm), 1);
  });

  test('a wye primary passes it: U0 / (Zt + Zu)', () => {
    expect(toNeutral({ ...behind, connection: 'wye-wye' })).toBeCloseTo(U0 / (Z_ohm + utility_ohm), 1);
  });

  test.each(['delta-wye', 'wye-wye', 'delta'] as const)(
    'a three-phase fault on a %s sees transformer and utility: U0 / (Zt + Zu)',
    (connection) => {
      const parts: Circuit['parts'] = {
        winding: { ...behind, connection, primary_x_over_r: 0.5 },
        star: { kind: 'fitting' },
        a: bolt('winding.a', 'star'),
        b: bolt('winding.b', 'star'),
        c: bolt('winding.c', 'star'),
      };
      // 4 % of 16 Ω at X/R 3, and 1.6 Ω at X/R 0.5.
      const r = Z_ohm / Math.hypot(1, 3) + utility_ohm / Math.hypot(1, 0.5);
      const x = (3 * Z_ohm) / Math.hypot(1, 3) + (0.5 * utility_ohm) / Math.hypot(1, 0.5);
      for (const line of ['a', 'b', 'c'])
        expect(measured({ parts }).amperes(line)).toBeCloseTo(U0 / Math.hypot(r, x), 1);
    },
  );

  test('a transformer with less Z0 gives more to the neutral than between three phases', () => {
    expect(toNeutral({ ...weak, zero_sequence_ratio: 0.85 })).toBeCloseTo((3 * U0) / (2.85 * Z_ohm), 1);
  });
});

describe('deltas', () => {
  const delta = { ...weak, connection: 'delta', secondary_V: 480 } as const;

  test('ungrounded: the first fault is three times one line’s charging current, and the others rise to line volts', () => {
    const winding: Part = { ...delta, capacitance_nF: 200 };
    const fault = measured({ region: 'north-america', parts: { winding, fault: bolt('winding.a', 'earth') } });
    const charging_A = 3 * 2 * Math.PI * 60 * 200e-9 * (480 / Math.sqrt(3));
    expect(fault.amperes('fault') / charging_A).toBeCloseTo(1, 3);
    expect(fault.volts('winding.b')).toBeCloseTo(480, 0);
    expect(fault.volts('winding.c')).toBeCloseTo(480, 0);
  });

  test('ungrounded, without a fault: every line stands at its star volts to earth', () => {
    const winding: Part = { ...delta, capacitance_nF: 200 };
    const sound = measured({ parts: { winding } });
    for (const line of ['a', 'b', 'c']) expect(sound.volts(`winding.${line}`)).toBeCloseTo(480 / Math.sqrt(3), 1);
  });

  test('no current goes round in the ring at no load', () => {
    expect(measured({ parts: { winding: delta } }).amperes('winding.ab')).toBeLessThan(1e-3);
  });

  test('line to line it gives √3/2 of its three-phase fault, like a wye of the same plate', () => {
    const { amperes } = measured({ parts: { winding: delta, fault: bolt('winding.b', 'winding.c') } });
    expect(amperes('fault')).toBeCloseTo(480 / (2 * 0.04 * (480 ** 2 / 10_000)), 1);
  });

  test('with a corner earthed the other two stand at line volts to earth', () => {
    const corner = measured({ parts: { winding: delta, corner: bolt('winding.b', 'earth') } });
    expect(corner.volts('winding.a')).toBeCloseTo(480, 1);
    expect(corner.volts('winding.c')).toBeCloseTo(480, 1);
  });

  test('high leg: 120 V from a and c to the neutral, 208 V from b', () => {
    const winding: Part = { ...weak, connection: 'high-leg-delta', secondary_V: 240 };
    const { between } = measured({ parts: { winding } });
    expect(between('winding.a', 'winding.neutral')).toBeCloseTo(120, 2);
    expect(between('winding.c', 'winding.neutral')).toBeCloseTo(120, 2);
    expect(between('winding.b', 'winding.neutral')).toBeCloseTo(207.85, 1);
    expect(between('winding.a', 'winding.b')).toBeCloseTo(240, 2);
  });

  test('high leg: a fault from a to the neutral is the lighting winding’s own, 1.5R + j1.2X, and the other two in its ring', () => {
    const winding: Part = { ...weak, connection: 'high-leg-delta', secondary_V: 240, x_over_r: 0 };
    // Resistances only. z: one winding of the ring. Fed in the half a–n: half 1.5·z/4; round the other way c–n, c–b, b–a.
    const z = 3 * 0.04 * (240 ** 2 / 10_000);
    const [own, common] = [(1.5 * z) / 4, (0.5 * z) / 4];
    // Loops: i through half a and the fault, k round the ring through both halves and the other two windings.
    // 120 = own·i + (own + common)·k;  0 = (own + common)·i + (2·own + 2·common + 2·z)·k.
    const ring = 2 * own + 2 * common + 2 * z;
    const i = 120 / (own - (own + common) ** 2 / ring);
    const { amperes } = measured({ parts: { winding, fault: bolt('winding.a', 'winding.neutral') } });
    expect(amperes('fault') / i).toBeCloseTo(1, 4);
  });
});

describe('a neutral resistor', () => {
  test('of 55.4 Ω keeps the first fault on 480Y/277 V at 5 A', () => {
    const winding: Part = { ...weak, secondary_V: 480, rating_VA: 1e6 };
    const parts = { winding, resistor: ohm(['winding.neutral', 'earth'], 55.4), fault: bolt('winding.a', 'earth') };
    expect(measured({ parts }).amperes('fault')).toBeCloseTo(5, 2);
  });
});

describe('an isolating transformer', () => {
  const single = {
    kind: 'isolating-transformer',
    rating_VA: 1000,
    primary_V: 230,
    secondary_V: 115,
    resistance_ohm: 0.4,
    reactance_ohm: 0.3,
  } as const;
  const fed = (winding: Part, extra: Circuit['parts'], joins: readonly (readonly [string, string])[] = []) =>
    measured({
      parts: { supply: { kind: 'source', emf_V: 230, resistance_ohm: 1 }, winding, ...extra },
      joins: [
        ['supply.plus', 'winding.primary.a'],
        ['supply.minus', 'winding.primary.b'],
        ['supply.minus', 'earth'],
        ...joins,
      ],
    });

  test('reflects its load: half the amperes at twice the volts, ohms by the turns squared', () => {
    const { amperes } = fed(single, { load: ohm(['winding.secondary.a', 'winding.secondary.b'], 10) });
    const seen = Math.hypot(1 + 4 * 10.4, 4 * 0.3);
    expect(amperes('winding.primary')).toBeCloseTo(230 / seen, 3);
    expect(amperes('load') / amperes('winding.primary')).toBeCloseTo(2, 4);
  });

  test('passes no earth fault current until something joins its secondary to earth', () => {
    const touch = { fault: ohm(['winding.secondary.a', 'earth'], 1000) };
    expect(fed(single, touch).amperes('fault')).toBeLessThan(1e-6);
    expect(fed(single, touch, [['winding.secondary.b', 'earth']]).amperes('fault')).toBeCloseTo(0.115, 3);
  });

  test('centre-tapped: a fault to the neutral is stronger than one between the lines by the T model’s ratio', () => {
    const winding: Part = {
      kind: 'isolating-transformer',
      connection: 'centre-tapped',
      rating_VA: 100,
      primary_V: 480,
      secondary_V: 240,
      impedance_percent: 4,
      x_over_r: 1,
    };
    const stiff = { kind: 'source', emf_V: 480 } as const;
    const fault = (a: string, b: string) =>
      fed(winding, { supply: stiff, fault: bolt(`winding.secondary.${a}`, `winding.secondary.${b}`) }).amperes('fault');
    // 1.4724: Kersting, IEEE Trans. Ind. Appl. 45(2), 2009; coefficients from memory, ratio computed.
    expect(fault('a', 'neutral') / fault('a', 'b')).toBeCloseTo(1.4724, 3);
  });

  test('delta–wye: a fault to the neutral is a line-to-line load for the supply, 1/√3 of it by the turns', () => {
    const parts: Circuit['parts'] = {
      supply: { ...weak, secondary_V: 480, rating_VA: 1e6, impedance_percent: 0.1 },
      winding: {
        kind: 'isolating-transformer',
        connection: 'delta-wye',
        rating_VA: 45_000,
        primary_V: 480,
        secondary_V: 208,
        impedance_percent: 3,
        x_over_r: 2,
      },
      fault: bolt('winding.secondary.a', 'winding.secondary.neutral'),
    };
    const { amperes, between } = measured({
      parts,
      joins: [
        ['supply.neutral', 'earth'],
        ['supply.a', 'winding.primary.a'],
        ['supply.b', 'winding.primary.b'],
        ['supply.c', 'winding.primary.c'],
        ['winding.secondary.neutral', 'earth'],
      ],
    });
    expect(amperes('fault') / amperes('supply.a')).toBeCloseTo((480 * Math.sqrt(3)) / 208, 3);
    expect(amperes('supply.c')).toBeLessThan(1e-3);
    // The sound phases keep their volts.
    expect(between('winding.secondary.b', 'winding.secondary.neutral')).toBeCloseTo(120, 0);
    // 45 kVA, 208 V, 3 %: 4.16 kA, and 1 % less for what feeds it: the 0.1 % of 1000 kVA, twice, in 3 % of 45.
    expect(amperes('fault')).toBeGreaterThan(4100);
    expect(amperes('fault')).toBeLessThan(4165);
  });
});

describe('a generator', () => {
  const fault = (neutral: 'floating' | 'bonded') =>
    measured({
      region: 'north-america',
      parts: {
        set: { kind: 'generator', rating_VA: 3000, neutral },
        saw: { kind: 'appliance', power_W: 1000, case: 'metal' },
        fault: bolt('saw.line', 'saw.case'),
        person: ohm(['saw.case', 'earth'], 1000),
      },
      joins: [
        ['set.a', 'saw.line'],
        ['set.neutral', 'saw.neutral'],
      ],
    });

  test('with a floating neutral passes no earth fault current', () => {
    expect(fault('floating').amperes('person')).toBeLessThan(1e-6);
  });

  test('with a bonded neutral on rubber feet passes next to none either, until its frame is on earth', () => {
    const { amperes } = fault('bonded');
    expect(amperes('person')).toBeLessThan(2e-5);
    expect(amperes('person')).toBeGreaterThan(1e-6);
  });

  test('gives three times its rating into a lasting short circuit', () => {
    const parts: Circuit['parts'] = {
      set: { kind: 'generator', rating_VA: 3000, neutral: 'bonded' },
      fault: bolt('set.a', 'set.neutral'),
    };
    expect(measured({ region: 'north-america', parts }).amperes('fault')).toBeCloseTo(25 / 0.33, 1);
  });
});

/** A building on the utility or its own set, with the utility's bond at the service and another in the set. */
const changeover = (neutral: 'switched' | 'solid') =>
  built(`
place: A building with its own set
region: north-america
parts:
  transformer: { kind: centre-tapped-transformer, rating_VA: 25000, impedance_percent: 2, x_over_r: 1 }
  service: { kind: panel }
  bond: { kind: joint, between: [service.neutral bar, service.earth bar] }
  service rod: { kind: rod, resistance_ohm: 25 }
  set: { kind: generator, connection: split-phase, rating_VA: 12000, neutral: bonded }
  switch: { kind: transfer-switch, lines: 2, neutral: ${neutral} }
  feeder: { kind: cable, length_m: 15, cores: { neutral: 6 AWG Cu, protective: 8 AWG Cu } }
  load: { kind: appliance, power_W: 3600, case: metal }
joins:
  - [transformer.x1, switch.a.normal]
  - [transformer.x3, switch.b.normal]
  - [transformer.x2, service.neutral bar]
  - [service.neutral bar, service rod]
  - [set.a, switch.a.alternative]
  - [set.b, switch.b.alternative]
  - [set.neutral, feeder.neutral.supply]
  - [set.frame, feeder.protective.supply]
  - [service.earth bar, feeder.protective.load]
  - [switch.a.load, load.line]
  - [switch.b.load, service.b]
  - [service.earth bar, load.case]
  ${
    neutral === 'solid'
      ? '- [switch.neutral, service.neutral bar]\n  - [switch.neutral, feeder.neutral.load]\n  - [switch.neutral, load.neutral]'
      : '- [switch.neutral.normal, service.neutral bar]\n  - [switch.neutral.alternative, feeder.neutral.load]\n  - [switch.neutral.load, load.neutral]'
  }
conditions:
  running on: { kind: transfer, switch: switch }
`);

describe('a transfer switch', () => {
  const onSet = { 'running on': 'alternative' };

  test('moves the load from one supply to the other', () => {
    const build = changeover('switched');
    expect(solved(build).amperes('transformer.upper')).toBeCloseTo(30, 0);
    expect(solved(build).amperes('set.a')).toBeLessThan(1e-6);
    expect(solved(build, onSet).amperes('transformer.upper')).toBeLessThan(1e-6);
    expect(solved(build, onSet).amperes('set.a')).toBeGreaterThan(25);
  });

  test('that leaves the neutral solid lets a double bond share its current with the protective conductor', () => {
    const shared = solved(changeover('solid'), onSet);
    const [neutral, protective] = [shared.amperes('feeder.neutral'), shared.amperes('feeder.protective')];
    // 6 AWG 0.491 and 8 AWG 0.778 Ω/kft over 15 m, and the joints: 39 % or so the wrong way home.
    expect(protective / (neutral + protective)).toBeGreaterThan(0.33);
    expect(protective / (neutral + protective)).toBeLessThan(0.42);
  });

  test('that switches the neutral leaves the protective conductor empty', () => {
    expect(solved(changeover('switched'), onSet).amperes('feeder.protective')).toBeLessThan(1e-3);
  });
});

describe('how a supply is earthed is told from how it is built', () => {
  /** A three-phase supply whose machine’s case is on an electrode of its own. */
  const told = (connection: string, earthing: string): string => {
    const [supply] = built(`
place: A supply
region: iec
parts:
  supply: { kind: three-phase-transformer, connection: ${connection}, rating_VA: 1.0e+5, secondary_V: 480, impedance_percent: 4, x_over_r: 3 }
  rod: { kind: rod, resistance_ohm: 5 }
  case rod: { kind: rod, resistance_ohm: 10 }
  main earth: { kind: fitting }
  machine: { kind: appliance, supply: [a, b], power_W: 1000, voltage_V: 480, case: metal }
${earthing}
  - [supply.a, machine.a]
  - [supply.b, machine.b]
  - [machine.case, main earth]
  - [main earth, case rod]
`).supplies;
    return `${supply?.system} ${Math.round(supply?.nominal_V ?? NaN)}`;
  };
  const joins = (...pairs: readonly string[]): string => `joins:\n${pairs.map((pair) => `  - [${pair}]`).join('\n')}`;

  test.each([
    [
      'a solid star and the case on it',
      'delta-wye',
      joins('supply.neutral, rod', 'supply.neutral, main earth'),
      'TN-S 277',
    ],
    ['a solid star and the case on its own rod', 'delta-wye', joins('supply.neutral, rod'), 'TT 277'],
    ['a star on nothing', 'delta-wye', joins('rod, main earth'), 'IT 277'],
    [
      'a star behind 55 Ω, high-resistance grounded',
      'delta-wye',
      `  resistor: { kind: impedance, between: [supply.neutral, rod], resistance_ohm: 55, as: bond }\n${joins('rod, main earth')}`,
      'IT 277',
    ],
    ['an ungrounded delta', 'delta', joins('rod, main earth'), 'IT 277'],
    ['a corner-grounded delta', 'delta', joins('supply.c, rod', 'supply.c, main earth'), 'TN-S 480'],
    ['a high-leg delta', 'high-leg-delta', joins('supply.neutral, rod', 'supply.neutral, main earth'), 'TN-S 416'],
  ])('%s', (_, connection, earthing, system) => {
    expect(told(connection, earthing)).toBe(system);
  });

  test('a generator by itself, nothing on earth, is separated; behind a solid neutral it is TN by the service’s bond', () => {
    const alone = built(`
place: A set
region: north-america
parts:
  set: { kind: generator, rating_VA: 3000, neutral: floating }
  saw: { kind: appliance, power_W: 1000, case: metal }
joins: [[set.a, saw.line], [set.neutral, saw.neutral], [set.frame, saw.case]]
`);
    expect(alone.supplies.map(({ system }) => system)).toEqual(['separated']);
    expect(changeover('solid').supplies.map(({ part, system }) => `${part} ${system}`)).toEqual([
      'transformer TN-C-S',
      'set TN-S',
    ]);
  });
});
