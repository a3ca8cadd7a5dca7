import fc from 'fast-check';
import { expect, test } from 'vitest';
import { smallestRepair, tellRepair, temptingRepairs, type Repair } from '../../src/explain/index.ts';
import { brokenRules } from '../../src/explain/repair/rules.ts';
import { repaired, repairsOf } from '../../src/explain/repair/repairs.ts';
import { cannotHold } from '../../src/explain/repair/screen.ts';
import { compile, installationSchema } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { bakery, usual } from '../scenario/bakery.ts';

const FAULT = { 'line touches the case': 'solid' };
const DEPARTURES = [
  'protective conductor open',
  'bonding jumper missing',
  'service neutral open',
  'line and neutral reversed',
  'neutral linked to the case',
  'protective conductor to its own rod',
  'loose joint',
  'breaker oversized',
  'breaker jammed',
] as const;

function given(...departures: readonly string[]) {
  return {
    build: bakery,
    conditions: { ...usual, ...FAULT, ...Object.fromEntries(departures.map((one) => [one, 'yes'])) },
  };
}

function named(repair: Repair): string {
  return repair.kind === 'condition' ? `${repair.condition}=${repair.option}` : `${repair.cable}: ${repair.size}`;
}

function sets(...departures: readonly string[]): readonly string[] {
  return smallestRepair(given(...departures)).sets.map((set) => set.map(named).toSorted().join(' + '));
}

/** By brute force: every subset judged by a whole run, those kept of which no smaller one works. */
function byForce(departures: readonly string[]): readonly string[] {
  const it = given(...departures);
  const offered = repairsOf(it);
  const working: number[] = [];
  for (let subset = 1; subset < 1 << offered.length; subset += 1) {
    const after = repaired(
      it,
      offered.filter((_, index) => (subset >> index) & 1),
    );
    if (brokenRules(run(after.build, after.conditions)).length === 0) working.push(subset);
  }
  const minimal = working.filter((set) => !working.some((other) => other !== set && (other & set) === other));
  return minimal.map((set) =>
    offered
      .filter((_, index) => (set >> index) & 1)
      .map(named)
      .toSorted()
      .join(' + '),
  );
}

test('every minimal set of repairs is found and no other: the search agrees with brute force', () => {
  fc.assert(
    fc.property(fc.subarray([...DEPARTURES], { minLength: 1, maxLength: 4 }), (departures) => {
      const before = given(...departures);
      if (brokenRules(run(before.build, before.conditions)).length === 0) return;
      expect(sets(...departures).toSorted()).toEqual(byForce(departures).toSorted());
    }),
    { numRuns: 12, seed: 7 },
  );
});

test('nothing less than a smallest repair is enough: each of its parts, taken back, breaks a rule', () => {
  const before = given('protective conductor open', 'service neutral open', 'breaker jammed', 'loose joint');
  const { sets: found } = smallestRepair(before);
  expect(found.length).toBeGreaterThan(0);
  for (const set of found) {
    expect(brokenRules(run(...spread(repaired(before, set))))).toEqual([]);
    for (const left of set) {
      const less = repaired(
        before,
        set.filter((one) => one !== left),
      );
      expect(brokenRules(run(...spread(less)))).not.toEqual([]);
    }
  }
});

function spread({ build, conditions }: ReturnType<typeof repaired>) {
  return [build, conditions] as const;
}

test('what the quick look refuses no run would accept', () => {
  fc.assert(
    fc.property(
      fc.subarray([...DEPARTURES]),
      fc.constantFrom('solid', '1 ohm', '100 ohm', 'no'),
      fc.constantFrom('nothing', 'the case', 'the case and the sink'),
      fc.constantFrom('dry shoes', 'bare feet'),
      fc.boolean(),
      (departures, fault, touches, wears, gfci) => {
        const { build, conditions } = given(...departures);
        const here = {
          ...conditions,
          'line touches the case': fault,
          'baker touches': touches,
          'baker wears': wears,
          'gfci fitted': gfci ? 'yes' : 'no',
        };
        if (cannotHold({ build, conditions: here })) expect(brokenRules(run(build, here))).not.toEqual([]);
      },
    ),
    { numRuns: 150 },
  );
});

test('a third wire on a rod is put right by taking it to the panel, or by a GFCI, and by nothing smaller', () => {
  expect(sets('protective conductor to its own rod')).toEqual([
    'protective conductor to its own rod=no',
    'gfci fitted=yes',
  ]);
});

test('two breaks in one way home take both repairs, for a GFCI sees nothing where nothing leaves', () => {
  expect(sets('protective conductor open', 'bonding jumper missing')).toEqual([
    'bonding jumper missing=no + protective conductor open=no',
  ]);
});

test('a breaker too large for its cable is put right by the right breaker or by a larger cable', () => {
  expect(sets('breaker oversized')).toEqual(['breaker oversized=no', 'mixer run: 8 AWG Cu']);
});

test('a sound installation needs no repair', () => {
  const found = smallestRepair(given());
  expect(found).toMatchObject({ broken: [], sets: [], tried: 0 });
  expect(tellRepair(found, [], 'iec').verdict).toContain('nothing needs repair');
});

test('with the third wire open one more rod, a bigger breaker and a GFCI are tempting, and the case stays live', () => {
  const found = temptingRepairs(given('protective conductor open'));
  expect(found.map(({ kind }) => kind)).toEqual(['rod', 'bigger-breaker', 'residual-device']);
  expect(found[2]).toMatchObject({ untilTouched: true });
  expect(found[0]).toMatchObject({ rating_A: 20 });
  const [rod] = found;
  if (rod?.kind !== 'rod') throw new Error('the rod comes first');
  // 120 V over 25 Ω and the electrodes of the place: under 4.8 A, and the case keeps nearly all the volts.
  expect(rod.amperes).toBeLessThan(4.8);
  expect(rod.volts).toBeGreaterThan(90);
});

test('a residual device does nothing about line to neutral: all comes back through it', () => {
  const build = compile(
    installationSchema.parse({
      place: 'The bench',
      region: 'north-america',
      parts: {
        source: { kind: 'source', emf_V: 120, resistance_ohm: 3 },
        breaker: { kind: 'breaker', rating_A: 20 },
        gfci: { kind: 'residual-device' },
        machine: { kind: 'appliance', power_W: 100, voltage_V: 120 },
      },
      joins: [
        ['source.minus', 'earth'],
        ['source.plus', 'breaker.line'],
        ['breaker.load', 'gfci.line.supply'],
        ['source.minus', 'gfci.neutral.supply'],
        ['gfci.line.load', 'machine.line'],
        ['gfci.neutral.load', 'machine.neutral'],
        ['source.minus', 'machine.case'],
      ],
      conditions: {
        short: {
          kind: 'insulation-fault',
          between: ['machine.line', 'machine.neutral'],
          resistance_ohm: { solid: 0.01 },
        },
        'gfci fitted': { kind: 'fitted', device: 'gfci' },
      },
    }),
  );
  const conditions = { short: 'solid' };
  const found = temptingRepairs({ build, conditions });
  expect(found.find(({ kind }) => kind === 'residual-device')).toMatchObject({ comesBack: true, untilTouched: false });
  const { sets: none } = smallestRepair({ build, conditions });
  expect(none).toEqual([]);
  expect(tellRepair(smallestRepair({ build, conditions }), found, 'iec').verdict).toContain('The fault itself');
});

test.each(['north-america', 'iec'] as const)('repairs are told in whole words (%s)', (vocabulary) => {
  for (const departures of [
    ['protective conductor open'],
    ['breaker oversized', 'line and neutral reversed'],
    DEPARTURES.slice(0, 4),
  ]) {
    const it = given(...departures);
    const {
      broken,
      verdict,
      sets: told,
      tempting,
      caution,
    } = tellRepair(smallestRepair(it), temptingRepairs(it), vocabulary);
    const texts = [verdict, caution, ...broken, ...told, ...tempting];
    expect(texts.filter((text) => text === '' || /undefined|NaN|∞|[{}]/.test(text))).toEqual([]);
  }
});

test('a wire that is hotter than its insulation stands before the fault is ended breaks a rule', () => {
  const broken = (protective: string): readonly string[] => {
    const build = compile(
      installationSchema.parse({
        place: 'The bench',
        region: 'iec',
        parts: {
          source: { kind: 'source', emf_V: 230, resistance_ohm: 0.1 },
          breaker: { kind: 'breaker', family: 'iec60898-c', rating_A: 16 },
          run: { kind: 'cable', length_m: 5, cores: { line: '2.5 mm² Cu', neutral: '2.5 mm² Cu', protective } },
          machine: { kind: 'appliance', power_W: 1000, voltage_V: 230, case: 'metal' },
        },
        joins: [
          ['source.minus', 'earth'],
          ['source.plus', 'breaker.line'],
          ['breaker.load', 'run.line.supply'],
          ['source.minus', 'run.neutral.supply'],
          ['source.minus', 'run.protective.supply'],
          ['run.line.load', 'machine.line'],
          ['run.neutral.load', 'machine.neutral'],
          ['run.protective.load', 'machine.case'],
        ],
        conditions: {
          fault: {
            kind: 'insulation-fault',
            between: ['machine.line', 'machine.case'],
            resistance_ohm: { solid: 0 },
            initially: 'solid',
          },
        },
      }),
    );
    return smallestRepair({ build, conditions: { fault: 'solid' } }).broken;
  };
  // Closed form: some 720 A for 10 ms are 5 200 A²s; 0.5 mm² stands (115 · 0.5)² = 3 300, 2.5 mm² 25 times as much.
  expect(broken('0.5 mm² Cu')).toContain('withstand');
  expect(broken('2.5 mm² Cu')).not.toContain('withstand');
});
