import { compile, installationSchema } from '../../src/installation/index.ts';
import type { Build } from '../../src/installation/index.ts';

/** A bench of measured values (invented): a 120 V source earthed through 1 Ω, two breakers in series, a machine whose line
 *  can touch its case, and two people who stand on one slab and can each put a hand on the case. */
export function rig({
  first_A = 20,
  second_A = 20,
  load_ohm = 60,
  extra_ohm = 60,
  slab_ohm = 300,
  source_ohm = 0.1,
  protective_ohm = 0.1,
}: {
  readonly first_A?: number;
  readonly second_A?: number;
  readonly load_ohm?: number;
  readonly extra_ohm?: number;
  readonly slab_ohm?: number;
  readonly source_ohm?: number;
  readonly protective_ohm?: number;
} = {}): Build {
  const yesNo = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, ['right hand', 'feet']]));
  return compile(
    installationSchema.parse({
      place: 'A bench',
      region: 'north-america',
      parts: {
        source: { kind: 'source', emf_V: 120, resistance_ohm: source_ohm },
        electrode: { kind: 'impedance', between: ['source.minus', 'earth'], resistance_ohm: 1, as: 'electrode' },
        'first breaker': { kind: 'breaker', rating_A: first_A },
        'second breaker': { kind: 'breaker', rating_A: second_A },
        load: { kind: 'impedance', between: ['second breaker.load', 'source.minus'], resistance_ohm: load_ohm },
        extra: { kind: 'impedance', between: ['first breaker.load', 'source.minus'], resistance_ohm: extra_ohm },
        machine: { kind: 'fitting' },
        protective: {
          kind: 'impedance',
          between: ['machine', 'source.minus'],
          resistance_ohm: protective_ohm,
          as: 'protective',
        },
        slab: { kind: 'floor', resistance_ohm: slab_ohm },
        Ada: { kind: 'person', 'right hand': 'machine', feet: 'slab' },
        Ben: { kind: 'person', percentile: 5, 'right hand': 'machine', feet: 'slab' },
      },
      joins: [
        ['source.plus', 'first breaker.line'],
        ['first breaker.load', 'second breaker.line'],
      ],
      conditions: {
        fault: {
          kind: 'insulation-fault',
          between: ['second breaker.load', 'machine'],
          resistance_ohm: { solid: 0.001, poor: 2 },
        },
        'fault by water': {
          kind: 'insulation-fault',
          between: ['first breaker.load', 'machine'],
          resistance_ohm: { damp: 50 },
        },
        'protective open': { kind: 'open', at: 'protective' },
        'load off': { kind: 'open', at: 'load' },
        'Ada touches': { kind: 'touching', person: 'Ada', limbs: { nothing: [], ...yesNo(['the machine']) } },
        'Ben touches': { kind: 'touching', person: 'Ben', limbs: { nothing: [], ...yesNo(['the machine']) } },
      },
    }),
  );
}
