import fc from 'fast-check';

const ohm = fc.oneof(
  fc.constant(0),
  fc.double({ min: 0, max: 1e10, noNaN: true }),
  fc.double({ min: 0.01, max: 100, noNaN: true }),
);
const reactance = fc.oneof(
  fc.constant(0),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc.double({ min: -50, max: 50, noNaN: true }),
);
const node = fc.integer({ min: 0, max: 5 });
const pair = fc.tuple(node, node).filter(([a, b]) => a !== b);
const current = fc.double({ min: 0, max: 1000, noNaN: true });

const part = fc.oneof(
  fc.record({ kind: fc.constant('impedance' as const), between: pair, resistance_ohm: ohm, reactance_ohm: reactance }),
  fc.record({
    kind: fc.constant('capacitance' as const),
    between: pair,
    capacitance_F: fc.double({ min: 1e-12, max: 1, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('switch' as const), between: pair, closed: fc.boolean() }),
  fc.record({ kind: fc.constant('fixed-body' as const), between: pair, resistance_ohm: ohm }),
  fc.record({
    kind: fc.constant('harmonic-source' as const),
    between: pair,
    currents: fc.uniqueArray(fc.record({ order: fc.integer({ min: 1, max: 9 }), current_A: current }), {
      selector: ({ order }) => order,
      minLength: 1,
      maxLength: 3,
    }),
    shift_deg: fc.constantFrom(0, -120, 120),
  }),
);

const two = fc.record({
  kind: fc.constantFrom('source', 'ideal-transformer', 'coupled-windings'),
  emf_V: fc.double({ min: 0.1, max: 1000, noNaN: true }),
  angle_deg: fc.constantFrom(0, 90, 180, -120),
  resistance_ohm: ohm,
  turns: fc.double({ min: 0.01, max: 100, noNaN: true }),
  self: fc.tuple(fc.double({ min: 0.1, max: 100, noNaN: true }), fc.double({ min: 0.1, max: 100, noNaN: true })),
  tightness: fc.double({ min: -1, max: 1, noNaN: true }),
  ends: fc.tuple(node, node, node, node),
});

/** Any network of plain parts between six pieces of metal, the first of which is earthed: well formed, and as silly as may be. */
export const anyPlainCircuit = fc
  .record({
    parts: fc.array(part, { maxLength: 8 }),
    twos: fc.array(two, { minLength: 1, maxLength: 4 }),
    joint: fc.constantFrom(0, 0.0005),
  })
  .map(({ parts, twos, joint }): object => {
    const metal = (at: number) => `node ${'abcdef'[at]}.metal`;
    const joins: object[] = [{ between: [metal(0), 'earth'], resistance_ohm: joint }];
    const written: Record<string, object> = Object.fromEntries(
      [...'abcdef'].map((letter) => [`node ${letter}`, { kind: 'fitting' }]),
    );
    written.first = { kind: 'source', emf_V: 230 };
    joins.push({ between: ['first.plus', metal(1)], resistance_ohm: joint });
    joins.push({ between: ['first.minus', metal(0)], resistance_ohm: joint });
    parts.forEach((made, at) => {
      const [a, b] = made.between;
      written[`part ${'abcdefgh'[at]}`] = { ...made, between: [metal(a), metal(b)] };
    });
    twos.forEach(({ kind, emf_V, angle_deg, resistance_ohm, turns, self, tightness, ends }, at) => {
      const name = `two ${'abcd'[at]}`;
      const mutual = tightness * Math.sqrt(self[0] * self[1]);
      written[name] =
        kind === 'source'
          ? { kind, emf_V, angle_deg, resistance_ohm }
          : kind === 'ideal-transformer'
            ? { kind, windings: { one: 1, other: turns } }
            : {
                kind,
                windings: ['one', 'other'],
                reactance_ohm: [
                  [self[0], mutual],
                  [mutual, self[1]],
                ],
              };
      const own = kind === 'source' ? ['plus', 'minus'] : ['one.dot', 'one.end', 'other.dot', 'other.end'];
      own.forEach((end, index) =>
        joins.push({ between: [`${name}.${end}`, metal(ends[index] ?? 0)], resistance_ohm: joint }),
      );
    });
    return { place: 'Any circuit', region: 'iec', parts: written, joins };
  });
