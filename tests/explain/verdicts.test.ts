import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { margin, tellVerdicts, verdicts, type Verdict } from '../../src/explain/index.ts';
import { allShorted_A } from '../../src/explain/verdicts/shortCircuit.ts';
import { standing } from '../../src/explain/verdicts/standing.ts';
import { compile, initialConditions, installationSchema, readInstallation } from '../../src/installation/index.ts';
import { bakery, usual } from '../scenario/bakery.ts';
import { designed, verdictOf } from './designed.ts';

function judged(
  conditions: Readonly<Record<string, string>>,
  kind: Verdict['kind'],
  part: string,
): Verdict | undefined {
  return verdicts(bakery, { ...usual, ...conditions }).find((one) => one.kind === kind && one.part === part);
}

test('a bolted fault draws what the source drives round source, line and protective conductor', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 2, noNaN: true }),
      fc.double({ min: 1, max: 200, noNaN: true }),
      (outside_ohm, length_m) => {
        const { value } = verdictOf(designed({ outside_ohm, length_m }), 'fault-to-metal', 'machine');
        // IEC 60228: 7.41 and 12.1 Ω/km at 20 °C; 0.08 mΩ/m of reactance in each (common practice).
        const loop_ohm = Math.hypot(outside_ohm + 0.01951 * length_m, 0.00016 * length_m);
        expect(Math.abs(value / (230 / loop_ohm) - 1)).toBeLessThan(2e-3);
      },
    ),
    { numRuns: 40 },
  );
});

test('a cable of its longest run has just the loop its device allows', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 1.5, noNaN: true }), (outside_ohm) => {
      const longest = verdictOf(designed({ outside_ohm }), 'longest-run').limit ?? 0;
      const there = verdictOf(designed({ outside_ohm, length_m: longest }), 'loop', 'machine');
      expect(margin(there) ?? 1).toBeCloseTo(0, 6);
    }),
    { numRuns: 40 },
  );
});

test('a loop is met exactly where the disconnection is in time', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 6, noNaN: true }), (outside_ohm) => {
      const circuit = designed({ outside_ohm });
      const loop = verdictOf(circuit, 'loop', 'machine');
      const time = verdictOf(circuit, 'disconnection', 'machine');
      // The loop is held to 95 % of the volts, the time is told at all of them.
      if (loop.holds === 'yes') expect(time.holds).toBe('yes');
      if (time.holds === 'no') expect(loop.holds).toBe('no');
    }),
    { numRuns: 60 },
  );
});

test('a metal case on a rod of its own has no loop that opens a breaker, and stands near the full voltage', () => {
  const rod = designed({ electrode_ohm: 25 });
  expect(verdictOf(rod, 'fault-to-metal', 'machine').value).toBeCloseTo(230 / 25.39, 1);
  expect(verdictOf(rod, 'loop', 'machine')).toMatchObject({ holds: 'no', clause: 'loop.tt' });
  expect(verdictOf(rod, 'disconnection', 'machine')).toMatchObject({ holds: 'no', limit: 0.2, clause: 'time.tt' });
  expect(verdictOf(rod, 'case-volts', 'machine').value).toBeGreaterThan(200);
});

test('a residual device makes an electrode of 100 Ω enough, which no breaker does', () => {
  const rod = designed({ electrode_ohm: 100, residual_A: 0.03 });
  expect(verdictOf(rod, 'loop', 'machine')).toMatchObject({ holds: 'yes', device: 'rcd', clause: 'loop.tt' });
  expect(verdictOf(rod, 'disconnection', 'machine')).toMatchObject({ holds: 'yes', device: 'rcd' });
  expect(verdictOf(designed({ electrode_ohm: 100 }), 'disconnection', 'machine').holds).toBe('no');
});

test('with equal wires out and home the case stands at half the voltage until the fault is ended', () => {
  const equal = designed({ line: '2.5 mm² Cu', protective: '2.5 mm² Cu', length_m: 50 });
  expect(verdictOf(equal, 'case-volts', 'machine').value).toBeCloseTo(115, 0);
});

test('in the bakery as it is built every limit is met, or may be', () => {
  expect(verdicts(bakery, usual).filter(({ holds }) => holds === 'no')).toEqual([]);
  expect(judged({}, 'disconnection', 'mixer')).toMatchObject({ device: 'mixer breaker', holds: 'yes' });
});

test.each([
  ['a missing bonding jumper', { 'bonding jumper missing': 'yes' }, 'loop', 'oven'],
  ['an open third wire', { 'protective conductor open': 'yes' }, 'disconnection', 'mixer'],
  ['a third wire on its own rod', { 'protective conductor to its own rod': 'yes' }, 'case-volts', 'mixer'],
  ['an oversized breaker', { 'breaker oversized': 'yes' }, 'overload', 'mixer run'],
  ['an oversized breaker', { 'breaker oversized': 'yes' }, 'protective-size', 'mixer run'],
  ['a neutral linked to the case', { 'neutral linked to the case': 'yes' }, 'grounding-current', 'transformer'],
] as const)('%s fails its verdict before any fault strikes', (_, conditions, kind, part) => {
  expect(judged(conditions, kind, part)?.holds).toBe('no');
});

test('a jammed breaker ends nothing, and the verdict falls to the next one up', () => {
  expect(judged({ 'breaker jammed': 'yes' }, 'disconnection', 'mixer')).toMatchObject({ device: 'main breaker' });
});

test('a GFCI ends a fault to metal whatever the loop', () => {
  const rod = { 'protective conductor to its own rod': 'yes', 'gfci fitted': 'yes' };
  expect(judged(rod, 'disconnection', 'mixer')).toMatchObject({ device: 'gfci', holds: 'yes' });
});

test('lines reversed at the outlet stay lines: which terminal stands at the voltage decides, not its name', () => {
  const found = verdicts(bakery, { ...usual, 'line and neutral reversed': 'yes' });
  expect(found.find(({ kind, part }) => kind === 'fault-to-metal' && part === 'mixer')?.line).toBe('mixer.neutral');
});

test('faults and people among the conditions change no verdict', () => {
  const calm = verdicts(bakery, usual);
  expect(verdicts(bakery, { ...usual, 'line touches the case': 'solid', 'baker touches': 'the case' })).toEqual(calm);
});

test('three lines of a star shorted together draw each its own voltage over its own impedance', () => {
  const phase = (angle_deg: number) =>
    ({ kind: 'source', emf_V: 230, angle_deg, resistance_ohm: 0.3, reactance_ohm: 0.4 }) as const;
  const build = compile(
    installationSchema.parse({
      place: 'The bench',
      region: 'iec',
      parts: { a: phase(0), b: phase(-120), c: phase(120) },
      joins: [
        { between: ['a.minus', 'earth'], resistance_ohm: 0 },
        { between: ['a.minus', 'b.minus'], resistance_ohm: 0 },
        { between: ['a.minus', 'c.minus'], resistance_ohm: 0 },
      ],
    }),
  );
  const lines = ['a.plus', 'b.plus', 'c.plus'].map((terminal) => build.node(terminal));
  expect(allShorted_A(standing(build, {}), lines)).toBeCloseTo(460, 1);
  // Two of them: √3 times the voltage over twice the impedance, 87 % of the three.
  expect(allShorted_A(standing(build, {}), lines.slice(0, 2))).toBeCloseTo((460 * Math.sqrt(3)) / 2, 1);
});

test('behind an isolating transformer a first fault draws next to nothing, and the two lines together hundreds of amperes', () => {
  const file = 'lessons/places/clinic.yaml';
  const reading = readInstallation(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(file);
  const found = verdicts(compile(reading.installation), initialConditions(reading.installation));
  const at = (kind: Verdict['kind']) => found.filter((one) => one.kind === kind && one.part === 'pump');
  expect(Math.max(...at('fault-to-metal').map(({ value }) => value))).toBeLessThan(0.01);
  expect(at('fault-between-lines')[0]?.value).toBeGreaterThan(100);
  expect(at('case-volts')[0]).toMatchObject({ holds: 'yes' });
  expect(at('disconnection').map(({ other }) => other)).toEqual(['lamp']);
  expect(found.find(({ kind }) => kind === 'monitor')).toMatchObject({ device: 'monitor', holds: 'yes' });
});

test('an installation without a source has no verdicts and says so', () => {
  const build = compile(
    installationSchema.parse({ place: 'Nothing', region: 'iec', parts: { rod: { kind: 'rod', resistance_ohm: 10 } } }),
  );
  expect(verdicts(build, {})).toEqual([]);
  expect(tellVerdicts(build, [], 'iec').sum).toContain('nothing to judge');
});

test.each(['north-america', 'iec'] as const)('every verdict is told in whole words (%s)', (vocabulary) => {
  const rooms = [bakery, designed(), designed({ electrode_ohm: 100 }), designed({ family: 'ul489' })];
  for (const build of rooms)
    for (const given of [{}, { 'bonding jumper missing': 'yes' }]) {
      const conditions = build === bakery ? { ...usual, ...given } : {};
      const told = tellVerdicts(build, verdicts(build, conditions), vocabulary);
      const texts = [
        told.sum,
        told.caution,
        ...told.clauses,
        ...told.rows.flatMap((row) => Object.values(row).filter((cell) => typeof cell === 'string')),
      ];
      expect(texts.filter((text) => /undefined|NaN|∞|[{}]/.test(text))).toEqual([]);
      expect(told.rows.every(({ what, value }) => what !== '' && value !== '')).toBe(true);
    }
});
