import { limitsAt } from '../../src/body/index.ts';
import { createSolver } from '../../src/electrics/index.ts';
import type { Phasors, Values } from '../../src/electrics/index.ts';
import type { Build, Conditions } from '../../src/installation/index.ts';
import { COLD } from '../../src/scenario/device.ts';
import { zoneRises, untouched } from '../../src/scenario/exposure.ts';
import { outlooks } from '../../src/scenario/memory.ts';
import { phaseOf } from '../../src/scenario/phase.ts';
import { run } from '../../src/scenario/index.ts';
import type { ScenarioSnapshot } from '../../src/scenario/index.ts';
import { broken, electricsWrong, isWhole } from './holds.ts';

/** Numbers from 0 up to 1, the same for the same seed (mulberry32). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Open contacts and gaps are 1 GΩ and more; they stay what they are. */
const GAP_OHM = 1e8;

/** What the whole range of the solver is tried in, Ω. */
const RANGE_OHM = { least: 1e-5, most: 1e10 };

/** A place whose every value is drawn anew for each case: ohms up to a hundred times more or less, or anything the solver
 *  takes; EMFs of any phase. Returns a function that draws one case and says what is wrong with it. */
export function campaign(build: Build): (seed: number) => readonly string[] {
  const { branches } = build.network;
  const scales = { re: new Float64Array(branches.length), im: new Float64Array(branches.length) };
  const instead_ohm = new Float64Array(branches.length);
  const wound = new Float64Array(build.network.windings.length);
  const turn = { re: new Float64Array(branches.length), im: new Float64Array(branches.length) };
  const limbs = new Set(build.people.flatMap((person) => person.limbs.map(({ branch }) => branch)));

  const shaken: Build = {
    ...build,
    values(conditions, open, limb_ohm): Values {
      const { impedance, emf, coupling } = build.values(conditions, open, limb_ohm);
      const { re, im } = impedance;
      for (let b = 0; b < re.length; b += 1) {
        if (limbs.has(b) || re[b]! >= GAP_OHM) continue;
        im[b] = instead_ohm[b]! > 0 ? 0 : im[b]! * scales.im[b]!;
        re[b] = instead_ohm[b]! > 0 ? instead_ohm[b]! : Math.max(RANGE_OHM.least, re[b]! * scales.re[b]!);
      }
      return { impedance, emf: times(emf, turn), coupling: coupling.map((matrix, w) => scaled(matrix, wound[w]!)) };
    },
  };
  const solver = createSolver(build.network);

  const draw = (seed: number): readonly string[] => {
    const next = chance(seed);
    const power = (decades: number): number => Math.exp(Math.LN10 * decades * (2 * next() - 1));
    // One case in four replaces values altogether; the others keep the shape of the place.
    const replaces = next() < 0.25 ? 0.5 : 0;
    for (let b = 0; b < branches.length; b += 1) {
      scales.re[b] = power(2);
      scales.im[b] = power(2);
      instead_ohm[b] = next() < replaces ? RANGE_OHM.least * (RANGE_OHM.most / RANGE_OHM.least) ** next() : 0;
      const angle = next() < 0.5 ? 0 : 2 * Math.PI * next();
      turn.re[b] = 2 * next() * Math.cos(angle);
      turn.im[b] = 2 * next() * Math.sin(angle);
    }
    for (let w = 0; w < wound.length; w += 1) wound[w] = power(2);
    const given: Conditions = Object.fromEntries(
      Object.entries(build.installation.conditions).map(([name, { options }]) => [name, oneOf(options, next)]),
    );
    const snapshot: ScenarioSnapshot = {
      defects: each(build, 'insulation-fault', () => (next() < 0.8 ? 'struck' : 'absent')),
      devices: Object.fromEntries(build.devices.map(({ name }) => [name, next() < 0.15 ? 'tripped' : 'closed'])),
      people: Object.fromEntries(build.people.map(({ name }) => [name, next() < 0.9 ? 'touching' : 'released'])),
    };
    const tolerance = oneOf(['fast', 'middle', 'slow'] as const, next);
    const phase = phaseOf(shaken, solver, given, snapshot);
    const memory = {
      devices: build.devices.map(() => (next() < 0.5 ? COLD : [{ heat: 4 * next(), share: next() }])),
      people: build.people.map(({ limits }) => ({ exposure: untouched(limits), urgedSince_s: Infinity })),
    };
    const told = {
      outlooks: outlooks(phase, memory, tolerance),
      rises: phase.people.map((person) => zoneRises(untouched(limitsAt(50)), person.heart_A)),
    };
    const found = [
      ...electricsWrong(build.network, phase.values, phase.solution),
      ...(isWhole(phase) && isWhole(told) ? [] : ['something is no number']),
      // A whole run is ten times the work of one solved state.
      ...(seed % 50 === 0 ? broken(run(shaken, given, { tolerance })) : []),
    ];
    return found;
  };
  return (seed) => {
    try {
      return draw(seed).map((what) => `seed ${seed}: ${what}`);
    } catch (error) {
      return [`seed ${seed}: throws ${String(error)}`];
    }
  };
}

function each<State>(build: Build, kind: string, state: () => State): Readonly<Record<string, State>> {
  const names = Object.entries(build.installation.conditions).filter(([, condition]) => condition.kind === kind);
  return Object.fromEntries(names.map(([name]) => [name, state()]));
}

function oneOf<T>(list: readonly T[], next: () => number): T {
  return list[Math.floor(next() * list.length)]!;
}

function times(phasors: Phasors, by: Phasors): Phasors {
  return {
    re: phasors.re.map((re, b) => re * by.re[b]! - phasors.im[b]! * by.im[b]!),
    im: phasors.im.map((im, b) => im * by.re[b]! + phasors.re[b]! * by.im[b]!),
  };
}

function scaled({ re, im }: Phasors, by: number): Phasors {
  return { re: re.map((value) => value * by), im: im.map((value) => value * by) };
}
