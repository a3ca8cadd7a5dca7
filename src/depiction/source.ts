import { abs, phasor, type Complex } from '../electrics/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';

/** The largest current that leaves a winding, A r.m.s. */
export function largestSource_A({ sources }: Build, { solution }: Interval): number {
  return sources.reduce((most, branch) => Math.max(most, abs(phasor(solution.amperes, branch))), 0);
}

/** The instant at which directions are shown: the half cycle in which the live end of the winding that tells the story
 *  (that feeds the fault; without one, that carries most) is positive. A unit phasor; one for the whole picture, so that
 *  what flows into a junction flows out of it. */
export function reference(build: Build, { solution, values, fault }: Interval): Complex {
  const { amperes } = fault && abs(fault.amperes) > 0 ? fault.change : solution;
  const [first = 0, ...others] = build.sources;
  const telling = others.reduce(
    (best, one) => (abs(phasor(amperes, one)) > abs(phasor(amperes, best)) * 1.001 ? one : best),
    first,
  );
  const current = phasor(amperes, telling);
  const size = abs(current);
  const along = size > 0 ? { re: current.re / size, im: current.im / size } : unit(phasor(values.emf, telling));
  const sign = liveAtItsStart(build, telling) ? -1 : 1;
  return { re: along.re * sign, im: along.im * sign };
}

/** The part of a phasor in phase with the reference. */
export function inPhase(value: Complex, along: Complex): number {
  return value.re * along.re + value.im * along.im;
}

/** The centre tap is the end that two halves share; the live end is the other one. A winding alone is live at its plus end. */
function liveAtItsStart({ sources, network }: Build, winding: number): boolean {
  const own = network.branches[winding];
  return sources.some((other) => {
    const half = network.branches[other];
    return other !== winding && half !== undefined && own !== undefined && (half.from === own.to || half.to === own.to);
  });
}

function unit(value: Complex): Complex {
  const size = abs(value);
  return size > 0 ? { re: value.re / size, im: value.im / size } : { re: 1, im: 0 };
}
