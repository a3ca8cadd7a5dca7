import type { Complex } from '../../electrics/index.ts';
import {
  ADIABATIC_K,
  adiabatic_mm2,
  americanArea_mm2,
  carries_A,
  groundingConductor,
  tabulatedProtective_mm2,
} from './conductorLimits.ts';
import { longestRun_m, passes, type Circuit, type Run } from './circuit.ts';
import type { Standing } from './standing.ts';
import type { Verdict } from './verdict.ts';

/** A bolted fault at the end of a circuit and what may at most stand in its way. */
export interface EndFault {
  readonly amperes: number;
  readonly latest_s: number;
  readonly loop: Complex;
  readonly limit_ohm: number;
}

/** What a fault at the end of a circuit asks of the cable it ends with: its length, its protective conductor, and a device
 *  its line can stand. What is plugged in behind a socket answers for its own cord. */
export function cableVerdicts(calm: Standing, circuit: Circuit, fault: EndFault): readonly Verdict[] {
  const fixed = circuit.runs.find(({ plugged }) => !plugged);
  const last = circuit.runs[0];
  if (fixed === undefined || last !== fixed) return [];
  return [
    ...longest(calm, circuit, fixed, fault),
    ...protective(calm, circuit, fixed, fault),
    ...overload(circuit, fixed),
  ];
}

/** No device that counts overcurrent allows a loop of more, Ω (a rating of 1 A would). */
const RESIDUAL_OHM = 50;

function longest(calm: Standing, circuit: Circuit, run: Run, { loop, limit_ohm }: EndFault): readonly Verdict[] {
  if (run.length_m === undefined || run.protective === undefined || !(limit_ohm > 0)) return [];
  // What a residual device allows is no matter of length.
  if (limit_ohm > RESIDUAL_OHM) return [];
  const limit = longestRun_m(loop, passes(calm, run), run.length_m, limit_ohm);
  return [
    {
      kind: 'longest-run',
      part: run.cable,
      ...named(circuit),
      value: run.length_m,
      unit: 'm',
      limit,
      sense: 'at most',
      holds: run.length_m <= limit ? 'yes' : 'no',
      clause: 'run',
    },
  ];
}

function protective({ build }: Standing, circuit: Circuit, run: Run, fault: EndFault): readonly Verdict[] {
  const metal = run.protective === undefined ? undefined : build.branches[run.protective]?.metal;
  const { rating_A } = circuit;
  if (metal === undefined || rating_A === undefined) return [];
  const about = {
    kind: 'protective-size',
    part: run.cable,
    ...named(circuit),
    unit: 'mm²',
    sense: 'at least',
  } as const;
  const value = metal.area_mm2;
  if (build.installation.region === 'north-america') {
    const size = metal.of === 'steel' ? undefined : groundingConductor(rating_A, metal.of);
    if (size === undefined) return [];
    const limit = americanArea_mm2(size);
    const holds = value >= limit * ROUNDING ? 'yes' : 'no';
    return [{ ...about, value, limit, holds, clause: 'protective.north-america', size: `${size} ${metal.of}` }];
  }
  const line = build.branches[run.line]?.metal;
  const tabulated = line === undefined || line.of !== metal.of ? Infinity : tabulatedProtective_mm2(line.area_mm2);
  // A current the device lets pass for ever is a matter of disconnection, not of heat in this conductor.
  const melted = Number.isFinite(fault.latest_s)
    ? adiabatic_mm2(fault.amperes, fault.latest_s, ADIABATIC_K[metal.of])
    : Infinity;
  const limit = Math.min(tabulated, melted);
  if (limit === Infinity) return [];
  const clause = melted <= tabulated ? 'protective.adiabatic' : 'protective.table';
  return [{ ...about, value, limit, holds: value >= limit * ROUNDING ? 'yes' : 'no', clause }];
}

/** A section as tabulated is a little less or more than its size says. */
const ROUNDING = 0.99;

function overload(circuit: Circuit, run: Run): readonly Verdict[] {
  const limit = run.lineSize === undefined ? undefined : carries_A(run.lineSize);
  const { rating_A, guard } = circuit;
  if (limit === undefined || rating_A === undefined || guard === undefined || run.lineSize === undefined) return [];
  const american = / (AWG|kcmil) /.test(run.lineSize);
  return [
    {
      kind: 'overload',
      part: run.cable,
      ...named(circuit),
      value: rating_A,
      unit: 'A',
      limit,
      sense: 'at most',
      holds: rating_A <= limit ? 'yes' : 'no',
      clause: american ? 'overload.north-america' : 'overload.iec',
      size: run.lineSize,
    },
  ];
}

function named({ guard }: Circuit): { readonly device?: string } {
  return guard === undefined ? {} : { device: guard.name };
}
