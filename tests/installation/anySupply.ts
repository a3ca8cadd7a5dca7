import fc from 'fast-check';
import { installationSchema, type Installation } from '../../src/installation/index.ts';
import type { z } from 'zod';

type Written = z.input<typeof installationSchema>;
type Parts = Written['parts'];
type Joins = [string, string][];

/** What a supply offers: its lines, the point that may be earthed and is the neutral if it is one, a frame if it has one. */
interface Offered {
  readonly parts: Parts;
  readonly joins: Joins;
  readonly lines: readonly string[];
  readonly neutral?: string;
  readonly frame?: string;
}

const between = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
const plate = fc.record({ impedance_percent: between(0.5, 8), x_over_r: between(0.1, 20) });
const line3 = (part: string): readonly string[] => ['a', 'b', 'c'].map((line) => `${part}.${line}`);

const threePhase: fc.Arbitrary<Offered> = fc
  .record({
    plate,
    connection: fc.constantFrom('delta-wye' as const, 'wye-wye' as const, 'delta' as const, 'high-leg-delta' as const),
    rating_VA: between(1e4, 2e6),
    secondary_V: fc.constantFrom(208, 240, 400, 480),
    utility: fc.option(fc.record({ primary_VA: between(1e6, 1e9), primary_x_over_r: between(0.5, 20) })),
    zero_sequence_ratio: between(0.5, 3),
    capacitance_nF: fc.option(between(1, 2000)),
  })
  .map(({ plate: own, utility, capacitance_nF, ...rest }) => ({
    parts: {
      supply: {
        kind: 'three-phase-transformer' as const,
        ...own,
        ...rest,
        ...utility,
        ...(capacitance_nF === null ? {} : { capacitance_nF }),
      },
    },
    joins: [],
    lines: line3('supply'),
    ...(rest.connection === 'delta' ? {} : { neutral: 'supply.neutral' }),
  }));

const splitPhase: fc.Arbitrary<Offered> = fc
  .record({ plate, rating_VA: between(5e3, 1.67e5) })
  .map(({ plate: own, rating_VA }) => ({
    parts: { supply: { kind: 'centre-tapped-transformer' as const, ...own, rating_VA } },
    joins: [],
    lines: ['supply.x1', 'supply.x3'],
    neutral: 'supply.x2',
  }));

const CONNECTIONS = ['single-phase', 'split-phase', 'three-phase'] as const;
const machine: fc.Arbitrary<Offered> = fc
  .record({
    kind: fc.constantFrom('generator' as const, 'inverter' as const),
    connection: fc.constantFrom(...CONNECTIONS),
    rating_VA: between(500, 5e4),
    neutral: fc.constantFrom('floating' as const, 'bonded' as const),
  })
  .map((supply) => ({
    parts: { supply },
    joins: [],
    lines: line3('supply').slice(0, CONNECTIONS.indexOf(supply.connection) + 1),
    neutral: 'supply.neutral',
    frame: 'supply.frame',
  }));

const plain: fc.Arbitrary<Offered> = fc
  .record({ emf_V: between(12, 500), resistance_ohm: between(1e-3, 5), reactance_ohm: between(1e-3, 5) })
  .map((supply) => ({
    parts: { supply: { kind: 'source' as const, ...supply } },
    joins: [],
    lines: ['supply.plus'],
    neutral: 'supply.minus',
  }));

interface Derived {
  readonly connection: 'single-phase' | 'centre-tapped' | 'delta-wye';
  readonly rating_VA: number;
  readonly primary_V: number;
  readonly secondary_V: number;
  readonly impedance_percent: number;
  readonly x_over_r: number;
}

/** Puts a transformer of its own between a supply and what follows; the supply’s own star is earthed before it. */
const derived = (offered: Offered, own: Derived): Offered => {
  const [a = '', b = offered.neutral ?? '', c] = offered.lines;
  const connection = c === undefined && own.connection === 'delta-wye' ? 'single-phase' : own.connection;
  const primaries: Joins = [
    [a, 'derived.primary.a'],
    [b, 'derived.primary.b'],
    ...(connection === 'delta-wye' && c !== undefined ? [[c, 'derived.primary.c'] as [string, string]] : []),
  ];
  return {
    parts: {
      ...offered.parts,
      derived: { kind: 'isolating-transformer', ...own, connection },
      'supply rod': { kind: 'rod', resistance_ohm: 3 },
    },
    joins: [...offered.joins, ...primaries, [offered.neutral ?? a, 'supply rod']],
    lines: (connection === 'delta-wye' ? ['a', 'b', 'c'] : connection === 'single-phase' ? ['a'] : ['a', 'b']).map(
      (line) => `derived.secondary.${line}`,
    ),
    neutral: connection === 'single-phase' ? 'derived.secondary.b' : 'derived.secondary.neutral',
    frame: 'derived.case',
  };
};

const anyDerived: fc.Arbitrary<Derived> = fc.record({
  connection: fc.constantFrom('single-phase' as const, 'centre-tapped' as const, 'delta-wye' as const),
  rating_VA: between(500, 1e5),
  primary_V: fc.constantFrom(120, 230, 400, 480),
  secondary_V: fc.constantFrom(48, 120, 208, 230, 240),
  impedance_percent: between(1, 8),
  x_over_r: between(0.2, 10),
});

const cores = fc.constantFrom('1.5 mm² Cu', '10 mm² Cu', '12 AWG Cu', '2 AWG Al', '95 mm² Al');
const resistor = (a: string, b: string, resistance_ohm: number): Parts[string] => ({
  kind: 'impedance',
  between: [a, b],
  resistance_ohm,
});

/** An installation on any supply: earthed in any way or not, perhaps with a transformer of its own inside, a feeder, a panel,
 *  bonds that are there, missing or doubled, loads between any two lines, and a fault. */
export const anySupply: fc.Arbitrary<Installation> = fc
  .record({
    offered: fc.oneof({ weight: 4, arbitrary: threePhase }, splitPhase, { weight: 2, arbitrary: machine }, plain),
    own: fc.option(anyDerived, { freq: 2 }),
    region: fc.constantFrom('north-america' as const, 'iec' as const),
    star_ohm: fc.option(fc.oneof(between(0.5, 100), between(50, 2000)), { freq: 3 }),
    core: cores,
    length_m: between(1, 300),
    bonded: fc.boolean(),
    protective: fc.constantFrom('the star' as const, 'a rod' as const, 'nothing' as const),
    rod_ohm: between(1, 500),
    loads: fc.array(fc.record({ power_W: between(10, 5000), from: fc.nat(2), to: fc.nat(3) }), { maxLength: 3 }),
    fault_ohm: fc.option(between(0.01, 1e4), { freq: 4 }),
    body_ohm: between(500, 1e4),
  })
  .map(
    ({ offered, own, region, star_ohm, core, length_m, bonded, protective, rod_ohm, loads, fault_ohm, body_ohm }) => {
      const supply = own === null ? offered : derived(offered, own);
      const names = ['a', 'b', 'c'].slice(0, supply.lines.length);
      const all = [...names, ...(supply.neutral === undefined ? [] : ['neutral'])];
      const bar = (name: string): string => (name === 'neutral' ? 'panel.neutral bar' : `panel.${name}`);
      const star = supply.neutral ?? supply.lines[0] ?? '';
      const pick = (at: number): string => all[at % all.length] ?? 'a';
      const parts: Parts = {
        ...supply.parts,
        panel: {
          kind: 'panel',
          lines: [1, 2, 3][names.length - 1] as 1 | 2 | 3,
          neutral: supply.neutral !== undefined,
        },
        feeder: {
          kind: 'cable',
          length_m,
          cores: Object.fromEntries([...all, 'protective'].map((name) => [name, core])),
        },
        case: { kind: 'fitting' },
        body: resistor('case', 'earth', body_ohm),
        ...(star_ohm === null ? {} : { star: resistor(star, 'earth', star_ohm) }),
        ...(protective === 'a rod' ? { rod: { kind: 'rod' as const, resistance_ohm: rod_ohm } } : {}),
        ...(fault_ohm === null ? {} : { fault: resistor(bar(pick(0)), 'case', fault_ohm) }),
        ...Object.fromEntries(
          loads.flatMap(({ power_W, from, to }, at): [string, Parts[string]][] =>
            pick(from) === pick(to)
              ? []
              : [[`load ${'abc'[at]}`, resistor(bar(pick(from)), bar(pick(to)), 230 ** 2 / power_W)]],
          ),
        ),
      };
      const joins: Joins = [
        ...supply.joins,
        ...names.map((name, at): [string, string] => [supply.lines[at] ?? '', `feeder.${name}.supply`]),
        ...all.map((name): [string, string] => [`feeder.${name}.load`, bar(name)]),
        ...(supply.neutral === undefined ? [] : [[supply.neutral, 'feeder.neutral.supply'] as [string, string]]),
        ['feeder.protective.load', 'panel.earth bar'],
        ['panel.earth bar', 'case'],
        ...(supply.frame === undefined ? [] : [[supply.frame, 'feeder.protective.supply'] as [string, string]]),
        ...(protective === 'the star' ? [[star, 'feeder.protective.supply'] as [string, string]] : []),
        ...(protective === 'a rod' ? [['panel.earth bar', 'rod'] as [string, string]] : []),
        ...(bonded && supply.neutral !== undefined
          ? [['panel.neutral bar', 'panel.earth bar'] as [string, string]]
          : []),
      ];
      return installationSchema.parse({ place: 'Any supply', region, parts, joins });
    },
  );
