import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { built, solved } from '../installation/places.ts';

/** A textbook circuit, written as a file as it stands in the book. */
const circuit = (name: string) => built(readFileSync(new URL(`./loops/${name}.yaml`, import.meta.url), 'utf8'));

const near = (value: number, printed: number, relative: number) =>
  expect(Math.abs(value / printed - 1), `${value} against ${printed}`).toBeLessThan(relative);

describe('TN loops: external loop by ENA P23/1 (0.35 Ω TN-C-S, 0.8 Ω TN-S), R1 + R2 by IEC 60228', () => {
  test('0.35 Ω outside and 1.446 Ω of circuit pass 128 A at 230 V (worked example seen second-hand)', () => {
    near(solved(circuit('tncs-measured')).amperes('fault'), 128, 0.002);
  });

  // 20 m of 2.5/1.5 mm² at 70 °C: 19.51·1.2·20/1000 = 0.468 Ω with the simplified factor 1.2; ours is 1 + 0.00393·50 = 1.1965.
  test('TN-C-S, 20 m of 2.5/1.5 mm²: 281 A, enough for the magnetic part of a B32', () => {
    const amperes = solved(circuit('tncs-ring')).amperes('fault');
    near(amperes, 281, 0.003);
    expect(amperes).toBeGreaterThan(5 * 32);
  });

  test('TN-S, the same cable: 181 A, enough for a B32 and too little for a C32', () => {
    const amperes = solved(circuit('tns-ring')).amperes('fault');
    near(amperes, 181, 0.003);
    expect(amperes).toBeLessThan(10 * 32);
  });

  test('TN-S, 20 m of 6/2.5 mm²: 219 A', () => {
    near(solved(circuit('tns-cooker')).amperes('fault'), 219, 0.003);
  });

  test('line and protective conductor of 50 m of 35 mm² each: 3 577 A, touch voltage half of the supply', () => {
    const bolted = solved(circuit('tn-equal-conductors'));
    near(bolted.amperes('fault'), 3577, 0.001);
    near(bolted.between('machine', 'supply.minus'), 115, 0.001);
  });
});

describe('TT: the soil is the only way home', () => {
  test('source 10 Ω, installation 20 Ω, 230 V: 7.7 A and 153 V on the case (French handbook example, from memory)', () => {
    const fault = solved(circuit('tt-handbook'));
    near(fault.amperes('fault'), 7.667, 0.001);
    near(fault.volts('machine'), 153.3, 0.001);
  });

  test('21 Ω outside, 100 Ω rod, 0.468 Ω of circuit: 1.893 A and 189.3 V (computed)', () => {
    const fault = solved(circuit('tt-network'));
    near(fault.amperes('fault'), 1.893, 0.001);
    near(fault.volts('machine'), 189.3, 0.001);
  });

  test('120 V into a 25 Ω rod and a perfect source earth: 4.8 A (standard example)', () => {
    near(solved(circuit('rod-25')).amperes('rod'), 4.8, 0.001);
  });

  test('120 V into a 25 Ω rod and a 10 Ω source earth: 3.43 A and 85.7 V on the case (computed)', () => {
    const fault = solved(circuit('rod-25-source-10'));
    near(fault.amperes('rod'), 3.43, 0.001);
    near(fault.volts('machine'), 85.7, 0.001);
  });

  test('a broken PEN puts 107.9 V on every case: 3 kW, 20 Ω rod, 5 Ω source earth (computed)', () => {
    const broken = solved(circuit('broken-pen'));
    near(broken.amperes('rod'), 5.39, 0.001);
    near(broken.volts('main earth'), 107.9, 0.001);
  });
});

describe('open neutral on 120/240 V', () => {
  test('a 100 W and a 200 W lamp in series on 240 V: 1.111 A, 160 V and 80 V (common example, outputs computed)', () => {
    const lost = solved(circuit('open-neutral-lamps'));
    near(lost.amperes('small lamp'), 1.111, 0.001);
    near(lost.between('small lamp.line', 'small lamp.neutral'), 160, 0.001);
    near(lost.between('large lamp.line', 'large lamp.neutral'), 80, 0.001);
  });

  test('rods hardly help: 1 kW and 2 kW with 25 + 10 Ω of soil as the only neutral: 155.2 V and 84.8 V, 1.005 A (computed)', () => {
    const lost = solved(circuit('open-neutral-rods'));
    near(lost.between('light load.line', 'light load.neutral'), 155.2, 0.001);
    near(lost.between('heavy load.line', 'heavy load.neutral'), 84.8, 0.001);
    near(lost.amperes('service rod'), 1.005, 0.001);
  });
});

describe('neutral and protective conductor joined again downstream', () => {
  // I_PE = I·Z_N / (Z_N + Z_PE), NEC chapter 9 table 8: 6 AWG 0.491, 8 AWG 0.764 Ω/kft.
  test('30 A of unbalance divide into 18.26 A in the neutral and 11.74 A in the protective conductor', () => {
    const shared = solved(circuit('double-bond'));
    near(shared.amperes('feeder.neutral') + shared.amperes('feeder.protective'), 30, 0.002);
    near(shared.amperes('feeder.neutral'), 18.26, 0.003);
    near(shared.amperes('feeder.protective'), 11.74, 0.003);
  });
});

describe('split phase, 25 kVA, |Z| 2 %, X/R 1.1, 30 m of 2 AWG Al, 15 m of 14 AWG Cu; by ngspice 39 and by hand', () => {
  // A join written as 0 Ω has the least resistance there is, 10 µΩ; seven of them in a loop of 0.38 Ω are 0.02 %.
  const JOINS = 3e-4;
  const kestrel = circuit('split-phase');
  const absent = { 'protective conductor open': 'yes' };

  test('bolted with the protective conductor whole: 318.021 A, case at 55.1991 V', () => {
    const bolted = solved(kestrel);
    near(bolted.amperes('branch.line'), 318.021, JOINS);
    near(bolted.volts('machine'), 55.1991, JOINS);
    near(bolted.volts('winding.x2'), 2.8798, 1e-3);
    near(bolted.volts('neutral bar'), 7.1995, 1e-3);
    near(bolted.between('branch.line.supply', 'neutral bar'), 96.0917, JOINS);
  });

  test('a person of 1000 Ω on a 30 Ω floor takes 53.2 mA of it', () => {
    const held = solved(kestrel, {}, [], { 'person.right hand': 500, 'person.feet': 500 });
    near(held.amperes('person.right hand'), 0.053218, 1e-3);
    near(held.amperes('branch.line'), 318.046, JOINS);
  });

  test('without it the person is the way home: 115.7 mA, case at 119.151 V', () => {
    const held = solved(kestrel, absent, [], { 'person.right hand': 500, 'person.feet': 500 });
    near(held.amperes('person.right hand'), 0.115681, 1e-4);
    near(held.volts('machine'), 119.151, 1e-4);
  });

  test('with a 25 Ω rod at the case instead: 3.77987 A, and still 89.57 mA through the person', () => {
    const rod = solved(kestrel, { 'protective conductor to a rod': 'yes' }, [], {
      'person.right hand': 500,
      'person.feet': 500,
    });
    near(rod.amperes('branch.line'), 3.77987, 1e-4);
    near(rod.amperes('case rod'), 3.6903, 1e-4);
    near(rod.amperes('person.right hand'), 0.08957, 1e-4);
    near(rod.volts('machine'), 92.2576, 1e-4);
  });

  test('with a 10 Ω load running: 11.676 A in the breaker, 113.4 mA through the person', () => {
    const running = solved(kestrel, { ...absent, 'load running': 'yes' }, [], {
      'person.right hand': 500,
      'person.feet': 500,
    });
    near(running.amperes('branch.line'), 11.67574, 1e-4);
    near(running.amperes('person.right hand'), 0.113417, 1e-4);
    near(running.volts('machine'), 116.8195, 1e-4);
  });
});
