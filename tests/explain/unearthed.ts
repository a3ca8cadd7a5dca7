import { compile, installationSchema, type Build } from '../../src/installation/index.ts';

/** 230/400 V that nothing earths, two circuits each with a breaker, a cable and a machine in a metal case; the cases joined by
 *  their protective conductors, or each on a rod of its own. */
export function unearthed({
  family = 'iec60898-c',
  rating_A = 10,
  line = { resistance_ohm: 0.5 },
  protective = { resistance_ohm: 0.5 },
  neutral = false,
  rods_ohm,
  monitor = true,
  capacitance_F = 1e-7,
}: {
  readonly family?: 'iec60898-b' | 'iec60898-c';
  readonly rating_A?: number;
  readonly line?: { readonly resistance_ohm: number };
  readonly protective?: { readonly resistance_ohm: number };
  /** Distributed to both machines. */
  readonly neutral?: boolean;
  readonly rods_ohm?: number;
  readonly monitor?: boolean;
  /** Of each phase to earth. */
  readonly capacitance_F?: number;
} = {}): Build {
  const circuit = (at: 'first' | 'second', phase: string) => ({
    parts: {
      [`${at} breaker`]: { kind: 'breaker', family, rating_A, resistance_ohm: 0, ...(neutral ? {} : { poles: 2 }) },
      [`${at} run`]: { kind: 'cable', cores: { line, protective, ...(neutral ? { neutral: line } : { back: line }) } },
      // A machine that needs no neutral is fed between its phase and the third.
      [`${at} machine`]: neutral
        ? { kind: 'appliance', power_W: 1000, voltage_V: 230 }
        : { kind: 'appliance', supply: ['line', 'back'], power_W: 1000, voltage_V: 400 },
      ...(rods_ohm === undefined ? {} : { [`${at} rod`]: { kind: 'rod', resistance_ohm: rods_ohm } }),
    },
    joins: [
      [`winding.${phase}`, `${at} breaker.${neutral ? '' : 'a.'}line`],
      [`${at} breaker.${neutral ? '' : 'a.'}load`, `${at} run.line.supply`],
      [`${at} run.line.load`, `${at} machine.line`],
      [rods_ohm === undefined ? 'earth bar' : `${at} rod`, `${at} run.protective.supply`],
      [`${at} run.protective.load`, `${at} machine.case`],
      ...(neutral
        ? [
            ['winding.neutral', `${at} run.neutral.supply`],
            [`${at} run.neutral.load`, `${at} machine.neutral`],
          ]
        : [
            ['winding.c', `${at} breaker.b.line`],
            [`${at} breaker.b.load`, `${at} run.back.supply`],
            [`${at} run.back.load`, `${at} machine.back`],
          ]),
    ],
  });
  const [one, two] = [circuit('first', 'a'), circuit('second', 'b')];
  const phases = ['a', 'b', 'c'];
  return compile(
    installationSchema.parse({
      place: 'The mill',
      region: 'iec',
      parts: {
        winding: {
          kind: 'three-phase-transformer',
          rating_VA: 1e8,
          secondary_V: 400,
          impedance_percent: 1,
          x_over_r: 1,
        },
        'earth bar': { kind: 'fitting' },
        'main electrode': { kind: 'rod', resistance_ohm: 10 },
        ...Object.fromEntries(
          phases.map((phase) => [
            `stray ${phase}`,
            { kind: 'capacitance', between: [`winding.${phase}`, 'earth'], capacitance_F, as: 'insulation' },
          ]),
        ),
        ...(monitor ? { monitor: { kind: 'insulation-monitor' } } : {}),
        ...one.parts,
        ...two.parts,
      },
      joins: [
        ['earth bar', 'main electrode'],
        ...(monitor
          ? [
              ['winding.neutral', 'monitor.system'],
              ['monitor.earth', 'earth bar'],
            ]
          : []),
        ...one.joins,
        ...two.joins,
      ].map((between) => ({ between, resistance_ohm: 0 })),
    }),
  );
}
