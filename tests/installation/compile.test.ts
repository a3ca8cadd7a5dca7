import { describe, expect, test } from 'vitest';
import { installationJsonSchema, installationSchema } from '../../src/installation/index.ts';
import { nearest } from '../../src/installation/nearest.ts';
import { pieces } from '../../src/installation/pieces.ts';
import { bakeryText, built, installationFrom, solved } from './places.ts';

const file = (...lines: readonly string[]) => ['place: A bench', 'region: iec', ...lines].join('\n');

describe('names', () => {
  const bakery = built(bakeryText);

  test('every branch has a name of its own, and every node', () => {
    const names = bakery.branches.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(new Set(bakery.network.nodes).size).toBe(bakery.network.nodes.length);
    expect(bakery.network.branches.map(({ name }) => name)).toEqual(names);
  });

  test('a branch is found by its name and a terminal by its full or its short name', () => {
    expect(bakery.network.branches[bakery.branch('mixer run.protective')]?.name).toBe('mixer run.protective');
    expect(bakery.node('earth')).toBe(0);
    expect(bakery.node('sink')).toBe(bakery.node('sink.metal'));
    expect(bakery.network.nodes[bakery.node('panel.earth bar')]).toBe('panel.earth bar');
  });

  test('joins are named by their terminals in the order of the file', () => {
    expect(bakery.branches[bakery.branch('panel.neutral bar – service rod')]).toEqual({
      name: 'panel.neutral bar – service rod',
      part: 'panel',
      role: 'bond',
      medium: 'metal',
    });
  });

  test.each([
    ['transformer.upper', 'winding', 'metal'],
    ['drop.a', 'line', 'metal'],
    ['drop.neutral', 'neutral', 'metal'],
    ['mixer run.protective', 'protective', 'metal'],
    ['bonding jumper', 'bond', 'metal'],
    ['service rod', 'electrode', 'soil'],
    ['water pipe', 'pipe', 'soil'],
    ['water pipe.metal', 'pipe', 'metal'],
    ['mixer', 'load', 'load'],
    ['mixer breaker', 'device', 'metal'],
    ['slab', 'floor', 'soil'],
    ['baker.feet', 'person', 'body'],
    ['mixer.feet', 'insulation', 'insulation'],
    ['line touches the case', 'fault', 'metal'],
    ['neutral linked to the case', 'link', 'metal'],
    ['protective conductor to its own rod', 'protective', 'metal'],
    ['cord.protective.load – mixer.case', 'protective', 'metal'],
    ['mixer run.neutral.load – outlet.neutral', 'neutral', 'metal'],
    ['transformer.x2 – drop.neutral.supply', 'neutral', 'metal'],
    ['panel.a – mixer breaker.line', 'line', 'metal'],
    ['water pipe.tap – sink', 'bond', 'metal'],
  ])('%s is %s, of %s', (name, role, medium) => {
    expect(bakery.branches[bakery.branch(name)]).toMatchObject({ role, medium });
  });

  test('the sources, the electrodes and the owner of a condition are known', () => {
    const named = (list: readonly number[]) => list.map((at) => bakery.branches[at]?.name);
    expect(named(bakery.sources)).toEqual(['transformer.upper', 'transformer.lower']);
    expect(named(bakery.electrodes)).toEqual(['pole rod', 'service rod', 'water pipe', 'own rod']);
    expect(bakery.branches[bakery.branch('line and neutral reversed.line')]?.condition).toBe(
      'line and neutral reversed',
    );
    expect(bakery.branches[bakery.branch('mixer')]?.condition).toBeUndefined();
  });
});

describe('nothing floats', () => {
  test('a supply without any earth hangs on the insulation of its winding', () => {
    const island = built(
      file(
        'parts:',
        '  supply: { kind: source, emf_V: 230 }',
        '  heater: { kind: appliance, power_W: 1000, case: insulating }',
        'joins: [[supply.plus, heater.line], [supply.minus, heater.neutral]]',
      ),
    );
    expect(solved(island).amperes('heater')).toBeCloseTo(1000 / 230, 3);
    expect(solved(island).amperes('supply.insulation')).toBeLessThan(1e-6);
  });

  test('a piece that reaches no source is a finding: it is named, hangs on its insulation, and is solved', () => {
    const bench = built(
      file(
        'parts:',
        '  supply: { kind: source, emf_V: 230 }',
        '  heater: { kind: appliance, power_W: 1000 }',
        '  pump: { kind: appliance, power_W: 500 }',
        '  pump cord: { kind: cable, length_m: 3, cores: { line: 1.5 mm² Cu, neutral: 1.5 mm² Cu } }',
        '  socket: { kind: outlet }',
        'joins:',
        '  - [supply.plus, heater.line]',
        '  - [supply.minus, heater.neutral]',
        '  - [socket.line, pump cord.line.supply]',
        '  - [socket.neutral, pump cord.neutral.supply]',
        '  - [pump cord.line.load, pump.line]',
        '  - [pump cord.neutral.load, pump.neutral]',
      ),
    );
    // A case that nothing is joined to, a pump that is not plugged in, a hole of the socket.
    expect(bench.unreached.map((piece) => [...piece].sort())).toEqual([
      ['heater.case'],
      [
        'pump cord.line.load',
        'pump cord.line.supply',
        'pump cord.neutral.load',
        'pump cord.neutral.supply',
        'pump.line',
        'pump.neutral',
        'socket.line',
        'socket.neutral',
      ],
      ['pump.case'],
      ['socket.protective'],
    ]);
    expect(solved(bench).amperes('pump')).toBeLessThan(1e-6);
  });

  test('the drop without its own earth still solves when every earth is absent', () => {
    const noRods = bakeryText
      .replace(/^ {2}- \[transformer\.x2, pole rod\]\n/m, '')
      .replace(/^ {2}- \[panel\.neutral bar, service rod\]\n/m, '')
      .replace(/^ {2}- \[panel\.neutral bar, water pipe\.bond\]\n/m, '');
    expect(solved(built(noRods), { 'line touches the case': 'solid' }).amperes('mixer breaker')).toBeGreaterThan(430);
  });
});

describe('parts by measurement', () => {
  test('a cable may be measured core by core, and a size needs its length', () => {
    const bench = built(
      file(
        'parts:',
        '  supply: { kind: source, emf_V: 10 }',
        '  lead: { kind: cable, length_m: 100, cores: { line: { resistance_ohm: 3, reactance_ohm: 4 }, neutral: 2.5 mm² Cu } }',
        'joins:',
        '  - [supply.plus, lead.line.supply]',
        '  - [lead.line.load, lead.neutral.load]',
        '  - [lead.neutral.supply, supply.minus]',
      ),
    );
    const { re, im } = bench.values({}, new Set()).impedance;
    expect(re[bench.branch('lead.line')]).toBe(3);
    expect(im[bench.branch('lead.line')]).toBe(4);
    // IEC 60228: 7.41 Ω/km; 0.08 mΩ/m at 50 Hz (common practice, from memory).
    expect(re[bench.branch('lead.neutral')]).toBeCloseTo(0.741, 12);
    expect(im[bench.branch('lead.neutral')]).toBeCloseTo(0.008, 12);
  });

  test('a copper water pipe of 22 × 0.9 mm has 0.289 mΩ/m (ρ·l/A, ρ = 1.7241e-8 Ω·m)', () => {
    const bakery = built(bakeryText);
    const ohms = bakery.values({}, new Set()).impedance.re[bakery.branch('water pipe.metal')] ?? NaN;
    expect(ohms / 6).toBeCloseTo(0.289e-3, 6);
  });

  test('a source may stand at an angle', () => {
    const bench = built(
      file(
        'parts:',
        '  supply: { kind: source, emf_V: 100, angle_deg: 90 }',
        '  load: { kind: impedance, between: [supply.plus, supply.minus], resistance_ohm: 10 }',
      ),
    );
    const at = bench.branch('load');
    const { amperes } = solved(bench).solution;
    expect(amperes.re[at]).toBeCloseTo(0, 4);
    expect(amperes.im[at]).toBeCloseTo(10, 4);
  });

  test('a person whom no condition moves touches everything that is written', () => {
    const bench = built(
      file(
        'parts:',
        '  supply: { kind: source, emf_V: 100 }',
        '  load: { kind: impedance, between: [supply.plus, supply.minus], resistance_ohm: 10 }',
        '  tap: { kind: fitting }',
        '  ann: { kind: person, percentile: 5, skin: salt-wet, right hand: tap, left hand: supply.plus }',
      ),
    );
    expect(bench.people[0]?.contacts({})).toEqual({
      body: { percentile: 5, skin: 'salt-wet', area: 'large', direct: false },
      contacts: [
        { limb: 'right hand', outside_ohm: 0 },
        { limb: 'left hand', outside_ohm: 0 },
      ],
    });
  });

  test('the frequency follows the region unless it is written', () => {
    expect(installationFrom(bakeryText).frequency_Hz).toBe(60);
    const iec = file('parts: { s: { kind: source, emf_V: 1 } }', 'joins: [[s.plus, s.minus]]');
    expect(installationFrom(iec).frequency_Hz).toBe(50);
    expect(installationFrom(`${iec}\nfrequency_Hz: 16.7`).frequency_Hz).toBe(16.7);
  });

  test('breakers are of the region’s family', () => {
    const bench = built(
      file(
        'parts: { s: { kind: source, emf_V: 1 }, b: { kind: breaker, rating_A: 16, magnetic_from: 4, magnetic_to: 6 } }',
        'joins: [[s.plus, b.line], [b.load, s.minus]]',
      ),
    );
    expect(bench.devices[0]?.settings({})).toEqual({
      family: 'iec60898-b',
      rating_A: 16,
      magneticFrom: 4,
      magneticTo: 6,
    });
  });
});

describe('the published schema', () => {
  const schema = installationJsonSchema() as {
    readonly properties: Readonly<Record<string, unknown>>;
    readonly required: readonly string[];
  };

  test('is a JSON Schema of the file as it is written', () => {
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      additionalProperties: false,
    });
    expect(Object.keys(schema.properties)).toEqual([
      'place',
      'region',
      'frequency_Hz',
      'drawing',
      'parts',
      'joins',
      'conditions',
    ]);
    expect(schema.required).toEqual(['place', 'region', 'parts']);
  });

  test('names every kind of part and of condition', () => {
    const text = JSON.stringify(schema);
    for (const { kind } of Object.values(installationFrom(bakeryText).parts))
      expect(text).toContain(`"const":"${kind}"`);
    for (const { kind } of Object.values(installationFrom(bakeryText).conditions))
      expect(text).toContain(`"const":"${kind}"`);
  });

  test('reading what was read changes nothing but what is derived', () => {
    const once = installationFrom(bakeryText);
    const plain = JSON.parse(JSON.stringify(once)) as Record<string, unknown>;
    const joins = once.joins.map(({ between, resistance_ohm }) => ({ between, resistance_ohm }));
    const conditions = Object.fromEntries(
      Object.entries(once.conditions).map(([name, { options: _options, group: _group, ...written }]) => [
        name,
        written,
      ]),
    );
    expect(installationSchema.parse({ ...plain, joins, conditions })).toEqual(once);
  });
});

describe('small things', () => {
  test.each([
    ['nuetral', 'neutral'],
    ['Neutral', 'neutral'],
    ['protectiv', 'protective'],
    ['a', undefined],
    ['zebra', undefined],
    ['lin', 'line'],
  ])('who writes %j means %j', (written, meant) => {
    expect(nearest(written, ['line', 'neutral', 'protective'])).toBe(meant);
  });

  test('pieces of a graph', () => {
    expect(
      pieces(7, [
        [1, 2],
        [4, 3],
        [2, 5],
      ]),
    ).toEqual([[0], [1, 2, 5], [3, 4], [6]]);
  });
});
