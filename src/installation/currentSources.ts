import type { Phasors } from '../electrics/index.ts';
import { pieces } from './pieces.ts';
import type { PlannedBranch } from './plan.ts';

/** The sources of current of an installation: harmonics, electronic loads. */
export interface CurrentSources {
  /** Orders above the first that flow anywhere, ascending. */
  readonly harmonics: readonly number[];
  /** What they drive at this order, A, while branches have these impedances and some are cut; absent if there are none. */
  readonly currents?: (impedance: Phasors, order: number, cut: ReadonlySet<number>) => Phasors;
}

/** An impedance beyond this feeds nobody, Ω (invented: far above any conductor, far below any open contact). */
const CUT_OHM = 1e6;

/** Less than this is no current, A (invented: far below what any insulation lets through). */
const NOTHING_A = 1e-15;

/** Finds the sources of current. One that metal feeds as built takes nothing when that metal is cut: an electronic load does not
 *  run on without its supply. One that metal never feeds, as in a textbook, drives whatever it is written across.
 *  @param impedance of every branch as built */
export function currentSourcesOf(
  laid: readonly PlannedBranch[],
  node: (terminal: string) => number,
  impedance: Phasors,
): CurrentSources {
  const sources = laid.flatMap(({ injection }, at) => (injection === undefined ? [] : [{ at, injection }]));
  const orders = new Set(sources.flatMap(({ injection }) => injection.map(({ order }) => order)));
  const harmonics = [...orders].filter((order) => order > 1).sort((one, other) => one - other);
  if (sources.length === 0) return { harmonics };

  const ends = laid.map(({ from, to }) => [node(from), node(to)] as const);
  const metal = laid.flatMap(({ medium, role }, at) => (medium === 'metal' && role !== 'fault' ? [at] : []));
  const count = 1 + ends.reduce((most, pair) => Math.max(most, ...pair), 0);
  const fed = ({ re, im }: Phasors): readonly boolean[] => {
    const whole = metal.filter((at) => Math.hypot(re[at] ?? 0, im[at] ?? 0) < CUT_OHM);
    const piece = new Map<number, number>();
    pieces(
      count,
      whole.flatMap((at) => (ends[at] === undefined ? [] : [ends[at]])),
    ).forEach((nodes, index) => nodes.forEach((each) => piece.set(each, index)));
    return sources.map(({ at }) => piece.get(ends[at]?.[0] ?? 0) === piece.get(ends[at]?.[1] ?? 0));
  };
  const asBuilt = fed(impedance);
  return {
    harmonics,
    currents(now, order, cut) {
      const fedNow = fed(now);
      const re = new Float64Array(laid.length);
      const im = new Float64Array(laid.length);
      sources.forEach(({ at, injection }, index) => {
        const here = injection.find((one) => one.order === order);
        const off = cut.has(at) || (asBuilt[index] === true && fedNow[index] !== true);
        if (here === undefined || off || here.current_A < NOTHING_A) return;
        re[at] = here.current_A * Math.cos(here.angle_rad);
        im[at] = here.current_A * Math.sin(here.angle_rad);
      });
      return { re, im };
    },
  };
}
