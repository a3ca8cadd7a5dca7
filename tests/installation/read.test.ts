import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { printDiagnostics, readInstallation, type Diagnostic } from '../../src/installation/index.ts';
import { bakeryText, installationFrom } from './places.ts';

function faults(text: string): readonly Diagnostic[] {
  const reading = readInstallation(text, 'lessons/places/wrong.yaml');
  return reading.ok ? [] : reading.diagnostics;
}

/** The bakery with one piece of its text changed. */
function bakeryBut(was: string, is: string): string {
  expect(bakeryText).toContain(was);
  return bakeryText.replace(was, is);
}

/** What stands under the carets, what is wrong with it and what to write instead. */
function found(text: string): readonly string[] {
  const lines = text.split('\n');
  return faults(text).map(({ code, line, column, length, instead }) =>
    [code, lines[line - 1]?.slice(column - 1, column - 1 + length), instead].join(' | '),
  );
}

const small = (parts: string, joins = '', conditions = ''): string =>
  [
    'place: A bench',
    'region: iec',
    'parts:',
    '  supply: { kind: source, emf_V: 230 }',
    '  heater: { kind: appliance, power_W: 1000 }',
    parts,
    'joins:',
    '  - [supply.plus, heater.line]',
    '  - [supply.minus, heater.neutral]',
    joins,
    ...(conditions === '' ? [] : ['conditions:', conditions]),
  ].join('\n');

test('the small bench itself is right', () => {
  expect(found(small(''))).toEqual([]);
});

describe('one fault in the bakery is found in its place, with what to write instead', () => {
  test.each([
    ['rating_A: 20 }', 'rating: 20 }', 'unit-missing | rating | rating_A: 20'],
    [
      'drop: { kind: cable, length_m: 30',
      'drop: { kind: cable, length_ft: 100',
      'wrong-unit | length_ft | length_m: 30.48',
    ],
    ['drop: { kind: cable, length_m: 30', 'drop: { kind: cable, length_m: -30', 'out-of-range | -30 | length_m: 30'],
    ['length_m: 12', 'length_m: 1e999', 'not-finite | 1e999 | length_m: 12'],
    ['length_m: 12', 'length_m: .nan', 'not-finite | .nan | length_m: 12'],
    ['length_m: 12', 'length_m: 12 m', 'wrong-type | 12 m | length_m: 12'],
    ['{ kind: meter }', '{ kind: metre }', 'unknown-kind | metre | kind: meter'],
    ['line: 12 AWG Cu', 'line: 13 AWG Cu', 'unknown-conductor | 13 AWG Cu | 12 AWG Cu'],
    [
      '[outlet.line, cord.line.supply]',
      '[outlet.lien, cord.line.supply]',
      'dangling-terminal | outlet.lien | outlet.line',
    ],
    ['[outlet.line, cord.line.supply]', '[outlte.line, cord.line.supply]', 'unknown-name | outlte.line | outlet.line'],
    [
      '[panel.neutral bar, service rod]',
      '[panel, service rod]',
      'dangling-terminal | panel | one of panel.a, panel.b, panel.neutral bar, panel.earth bar',
    ],
    ['region: north-america', 'region: north-amerika', 'unknown-choice | north-amerika | region: north-america'],
    ['appliance: oven,', 'appliance: ovn,', 'unknown-name | ovn | oven'],
    ['device: mixer breaker, rating_A: 40', 'device: mixer, rating_A: 40', 'wrong-target | mixer | main breaker'],
    ['at: bonding jumper', 'at: bonding jumpr', 'unknown-name | bonding jumpr | bonding jumper'],
    ['initially: yes }', 'initially: yse }', 'unknown-choice | yse | initially: yes'],
    ['drawing: bakery', 'drawin: bakery', 'unknown-key | drawin | drawing: bakery'],
    ['kind: open, at: drop.neutral', 'kind: open, at: drop.neutrl', 'unknown-name | drop.neutrl | drop.neutral'],
    [
      'ends: [mixer run.line.load, mixer',
      'ends: [outlet.line, mixer',
      'wrong-target | outlet.line | the end of a conductor',
    ],
    [
      'from: mixer run.protective.load',
      'from: mixer run.neutral.load',
      'wrong-target | mixer run.neutral.load | [outlet.protective, mixer run.protective.load]',
    ],
    ['percentile: 50', 'percentile: 60', 'unknown-choice | 60 | percentile: 5'],
  ])('%s → %s', (was, is, expected) => {
    expect(found(bakeryBut(was, is))).toEqual([expected]);
  });

  test('a join that is left out leaves two ends of conductors joined to nothing', () => {
    expect(
      faults(bakeryBut('  - [drop.a.load, meter.a.supply]\n', '')).map(({ code, message }) => [code, message]),
    ).toEqual([
      ['dangling-terminal', 'nothing is joined to drop.a.load'],
      ['dangling-terminal', 'nothing is joined to meter.a.supply'],
    ]);
  });

  test('a part written twice is found at the second, and the first is named by its line', () => {
    const text = bakeryBut('  sink: { kind: fitting }', '  sink: { kind: fitting }\n  sink: { kind: fitting }');
    const first = text.split('\n').findIndex((line) => line.includes('  sink: '));
    expect(faults(text)).toMatchObject([
      {
        code: 'duplicate-name',
        line: first + 2,
        column: 3,
        length: 4,
        path: 'parts.sink',
        message: `two things are called "sink"; the first is in line ${first + 1}`,
      },
    ]);
  });

  test('a condition with the name of a part is a second thing with one name', () => {
    expect(found(bakeryBut('  loose joint:', '  outlet:'))).toEqual(['duplicate-name | outlet | another name']);
  });

  test('without its transformer nothing drives a current, and what was joined to it hangs in the air', () => {
    const text = bakeryText.replace(/^ {2}transformer:.*\n/m, '');
    const codes = faults(text).map(({ code }) => code);
    expect(codes[0]).toBe('no-source');
    expect(codes.slice(1)).toEqual(['unknown-name', 'unknown-name', 'unknown-name', 'unknown-name']);
  });
});

describe('faults on a bench', () => {
  test.each([
    [
      'joined to itself',
      small('', '  - [heater.case, heater.case]'),
      'joined-to-itself | [heater.case, heater.case] | two different terminals',
    ],
    [
      'joined twice, the other way round',
      small('', '  - [heater.line, supply.plus]'),
      'joined-twice | [heater.line, supply.plus] | nothing: leave this join out',
    ],
    [
      'joined twice, by its short name',
      small('  rod: { kind: rod, resistance_ohm: 5 }', '  - [supply.minus, rod]\n  - [rod.top, supply.minus]'),
      'joined-twice | [rod.top, supply.minus] | nothing: leave this join out',
    ],
    [
      'an impedance across one terminal',
      small('  z: { kind: impedance, between: [heater.case, heater.case], resistance_ohm: 1 }'),
      'joined-to-itself | [heater.case, heater.case] | two different terminals',
    ],
    ['the name earth', small('  earth: { kind: fitting }'), 'bad-name | earth | another name'],
    ['a name with a dot', small('  a.b: { kind: fitting }'), 'bad-name | a.b | a b'],
    ['a name without a letter', small('  12: { kind: fitting }'), 'bad-name | 12 | a name in plain words'],
    ['the name __proto__', small('  __proto__: { kind: fitting }'), 'bad-name | __proto__ | a name in plain words'],
    [
      'a join of one terminal',
      small('', '  - [heater.case]'),
      'out-of-range | [heater.case] | [panel.neutral bar, service rod]',
    ],
    [
      'a join that is a text',
      small('', '  - heater.case'),
      'wrong-type | heater.case | [panel.neutral bar, service rod]',
    ],
    ['a rod without a size', small('  rod: { kind: rod }'), 'missing-key | rod | resistance_ohm: 25'],
    [
      'a rod as thick as it is long',
      small('  rod: { kind: rod, length_m: 0.5, diameter_m: 0.4, soil: clay and loam }'),
      'out-of-range | 0.5 | length_m: 2.44',
    ],
    [
      'a pipe without a size',
      small('  pipe: { kind: pipe, earth_resistance_ohm: 3 }'),
      'missing-key | pipe | resistance_ohm: 0.002',
    ],
    [
      'a pipe all wall',
      small(
        '  pipe: { kind: pipe, earth_resistance_ohm: 3, material: steel, length_m: 1, outside_mm: 10, wall_mm: 6 }',
      ),
      'out-of-range | 6 | wall_mm: 0.9',
    ],
    ['a floor of nothing', small('  slab: { kind: floor }'), 'missing-key | slab | resistivity_ohm_m: 100'],
    [
      'a transformer half described',
      small('  t: { kind: centre-tapped-transformer, rating_VA: 1000, impedance_percent: 2 }'),
      'missing-key | t | resistance_percent: 1.3, reactance_percent: 1.4',
    ],
    [
      'a load described twice',
      small('', '', '').replace('power_W: 1000', 'power_W: 1000, resistance_ohm: 3'),
      'missing-key | heater | power_W: 750',
    ],
    [
      'a person who stands on a heater',
      small('  ann: { kind: person, feet: heater.case }'),
      'wrong-target | heater.case | feet: the name of a floor',
    ],
    [
      'two people on one floor',
      small(
        '  slab: { kind: floor, resistance_ohm: 9 }\n  ann: { kind: person, feet: slab }\n  ben: { kind: person, feet: slab }',
      ),
      'wrong-target | slab | a floor of their own',
    ],
    [
      'a fault with no option',
      small('', '', '  f: { kind: insulation-fault, between: [heater.line, heater.case], resistance_ohm: {} }'),
      'missing-key | resistance_ohm | one option at least, by name',
    ],
    [
      'a fault whose option is no',
      small('', '', '  f: { kind: insulation-fault, between: [heater.line, heater.case], resistance_ohm: { no: 3 } }'),
      'duplicate-name | no | another name',
    ],
    [
      'a loose thing without a place',
      small('', '', '  f: { kind: loose, resistance_ohm: 3 }'),
      'missing-key | f | at: mixer run.protective',
    ],
    [
      'an open join that is not there',
      small('', '', '  f: { kind: open, between: [heater.line, supply.minus] }'),
      'wrong-target | [heater.line, supply.minus] | [heater.line, supply.plus]',
    ],
    [
      'a limb without a thing to touch',
      small(
        '  ann: { kind: person, right hand: heater.case }',
        '',
        '  t: { kind: touching, person: ann, limbs: { off: [], on: [feet] } }',
      ),
      'wrong-target | [feet] | feet: a terminal, in the part ann',
    ],
    [
      'magnetic band upside down',
      small(
        '  b: { kind: breaker, rating_A: 16, magnetic_from: 9, magnetic_to: 5 }',
        '  - [b.line, supply.plus]\n  - [b.load, heater.case]',
      ),
      'out-of-range | 9 | magnetic_from: 5',
    ],
    [
      'a cable without cores',
      small('  c: { kind: cable, cores: {} }'),
      'missing-key | cores | cores: { line: 12 AWG Cu, neutral: 12 AWG Cu, protective: 12 AWG Cu }',
    ],
    ['an alias for nothing', small('  c: *nothing'), 'unknown-name | *nothing | the value itself'],
  ])('%s', (_, text, expected) => {
    expect(found(text)).toEqual([expected]);
  });

  test('an unset key says what belongs there', () => {
    expect(faults('region: iec\nparts: {}').map(({ code, path, instead }) => [code, path, instead])).toEqual([
      ['missing-key', 'place', 'place: The bakery'],
      ['no-source', 'parts', 'supply: { kind: source, emf_V: 120 }'],
    ]);
  });

  test('an empty file is told what a file looks like', () => {
    expect(faults('')).toMatchObject([{ code: 'wrong-type', line: 1, column: 1, length: 1 }]);
  });

  test('a file may use anchors and aliases sparingly', () => {
    const text = small('  rod: &rod { kind: rod, resistance_ohm: 25 }\n  other rod: *rod', '  - [rod, supply.minus]');
    expect(installationFrom(text).parts['other rod']).toEqual({ kind: 'rod', resistance_ohm: 25 });
  });

  test('a fault in an aliased part is shown where it is written', () => {
    const text = small('  rod: &rod { kind: rod, resistance_ohm: -25 }\n  other rod: *rod');
    expect(found(text)).toEqual(['out-of-range | -25 | resistance_ohm: 25', 'out-of-range | -25 | resistance_ohm: 25']);
  });
});

describe('a terminal that is not there', () => {
  const joined = (terminal: string) => found(small('', `  - [${terminal}, heater.case]`));

  test('is never guessed where obeying the guess could short the source', () => {
    expect(joined('supply.b')).toEqual(['dangling-terminal | supply.b | one of supply.plus, supply.minus']);
    expect(joined('supply.x')).toEqual(['dangling-terminal | supply.x | one of supply.plus, supply.minus']);
  });

  test('is guessed where it is nearly one of the part', () => {
    expect(joined('supply.minsu')).toEqual(['dangling-terminal | supply.minsu | supply.minus']);
    expect(joined('supply.Plus')).toEqual(['dangling-terminal | supply.Plus | supply.plus']);
  });

  test('of short name is listed with its neighbours, as x4 is near x1, x2 and x3', () => {
    const transformer =
      '  t: { kind: centre-tapped-transformer, rating_VA: 1000, resistance_ohm: 1, reactance_ohm: 1 }';
    expect(found(small(transformer, '  - [t.x4, heater.case]'))).toEqual([
      'dangling-terminal | t.x4 | one of t.x1, t.x2, t.x3',
    ]);
  });
});

describe('a file in which everything is wrong', () => {
  const text = readFileSync(new URL('../found/everything-wrong.yaml', import.meta.url), 'utf8');

  test('all faults are found at once, in the order of the text', () => {
    const all = faults(text);
    expect(all.map(({ line, code }) => `${line} ${code}`)).toEqual([
      '3 unknown-choice',
      '4 unknown-key',
      '5 no-source',
      '6 unit-missing',
      '6 unknown-conductor',
      '6 out-of-range',
      '7 wrong-unit',
      '8 unknown-kind',
      '9 wrong-type',
      '10 not-finite',
      '12 out-of-range',
      '12 not-finite',
      '13 missing-key',
      '14 bad-name',
      '16 wrong-type',
      '17 duplicate-name',
      '18 bad-name',
      '19 wrong-target',
      '19 dangling-terminal',
      '21 dangling-terminal',
      '23 joined-twice',
      '24 joined-to-itself',
      '25 unknown-name',
      '26 out-of-range',
      '27 unit-missing',
      '28 wrong-type',
      '30 duplicate-name',
      '31 unknown-name',
      '32 wrong-target',
      '33 unknown-name',
      '33 unknown-choice',
      '34 missing-key',
      '35 unknown-kind',
      '36 missing-key',
      '37 wrong-target',
    ]);
  });

  test('every one of them says what to write instead, and its carets lie inside its line', () => {
    const lines = text.split('\n');
    for (const { instead, line, column, length, file } of faults(text)) {
      expect(instead).toBeTruthy();
      expect(file).toBe('lessons/places/wrong.yaml');
      expect(column - 1 + length).toBeLessThanOrEqual(lines[line - 1]?.length ?? 0);
    }
  });
});

describe('what is printed', () => {
  test('place, code, message; the line; carets; what to write instead', () => {
    const text = small(
      '  run: { kind: cable, length: 22, cores: { line: 1.5 mm² Cu } }',
      '  - [run.line.supply, run.line.load]',
    );
    expect(printDiagnostics(faults(text), text)).toBe(
      [
        'lessons/places/wrong.yaml:6:23  unit-missing  "length" needs its unit in the key',
        '    6 |   run: { kind: cable, length: 22, cores: { line: 1.5 mm² Cu } }',
        '      |                       ^^^^^^',
        '   write instead: length_m: 22',
      ].join('\n'),
    );
  });

  test('a very long line is cut around its fault, and control characters are blanked', () => {
    const text = small(`  heat: { kind: appliance, power_W: 5, feet: "${'x'.repeat(300)}\u001b[31m", powr: 3 }`);
    const printed = printDiagnostics(faults(text), text);
    for (const line of printed.split('\n')) expect(line.length).toBeLessThan(260);
    expect(printed).not.toContain('\u001b');
  });
});
