import type { Ground } from './ground.ts';

/** A mirror image of a source: it stands at depth `sign·z + shift_m` and counts `weight` times. */
export interface Image {
  readonly weight: number;
  readonly sign: 1 | -1;
  readonly shift_m: number;
}

/** All that the boundaries of the soil do to a source in one layer, seen from another: potential = scale/4π ·
 *  (Σ weight/distance + rest), per ampere. `rest` is the sum of the images that are farther away than anything matters. */
export interface Images {
  readonly scale_ohm_m: number;
  readonly images: readonly Image[];
  readonly rest_per_m: number;
}

/** 0: the upper layer, or even soil; 1: the lower. */
export type Layer = 0 | 1;

/** The layer at a depth; what lies on the boundary is in the upper one. */
export function layerAt(ground: Ground, depth_m: number): Layer {
  return ground.kind === 'layered' && depth_m > ground.thickness_m * (1 + 1e-9) ? 1 : 0;
}

const MOST_REFLECTIONS = 3000;
const SMALL = 1e-8;

/** A series whose signs alternate is cut after this many, and the last of them fade out (Euler's transformation). */
const ALTERNATING = 100;
const FADING = 30;

/** Images of a source for a field point, from the reflections at the surface (all comes back) and at the lower layer
 *  (K = (ρ₂ − ρ₁)/(ρ₂ + ρ₁) comes back).
 *  @param span_m the largest distance that matters
 *  @see G. F. Tagg, "Earth Resistances" (1964); IEEE Std 81; from memory, checked by reciprocity and limits in the tests */
export function imagesOf(ground: Ground, source: Layer, field: Layer, span_m: number): Images {
  const [itself, mirrored] = [image(1, 1, 0), image(1, -1, 0)];
  if (ground.kind === 'even') return { scale_ohm_m: ground.soil_ohm_m, images: [itself, mirrored], rest_per_m: 0 };
  const { upper_ohm_m, lower_ohm_m, thickness_m } = ground;
  const k = (lower_ohm_m - upper_ohm_m) / (lower_ohm_m + upper_ohm_m);
  const orders = gathered(k, reflections(k, span_m / (2 * thickness_m)));
  const series = (terms: number, from: 0 | 1, scale: number, each: (weight: number, far_m: number) => Image[]) => ({
    images: orders.list.slice(from).flatMap(({ n, weight }) => each(scale * weight, 2 * n * thickness_m)),
    // Far images of one sign are all 2nh away: Σ Kⁿ/n = −ln(1 − K), less what is counted.
    rest_per_m: (scale * terms * orders.rest) / (2 * thickness_m),
  });
  if (source === 0 && field === 0) {
    const { images, rest_per_m } = series(4, 1, 1, (weight, far_m) => [
      image(weight, 1, far_m),
      image(weight, 1, -far_m),
      image(weight, -1, far_m),
      image(weight, -1, -far_m),
    ]);
    return { scale_ohm_m: upper_ohm_m, images: [itself, mirrored, ...images], rest_per_m };
  }
  if (source === 1 && field === 1) {
    const { images, rest_per_m } = series(1, 0, 1 - k * k, (weight, far_m) => [image(weight, -1, -far_m)]);
    const bounced = image(-k, -1, 2 * thickness_m);
    return { scale_ohm_m: lower_ohm_m, images: [itself, bounced, ...images], rest_per_m };
  }
  const through = series(2, 0, 1, (weight, far_m) => [
    image(weight, 1, source === 0 ? -far_m : far_m),
    image(weight, -1, -far_m),
  ]);
  return { scale_ohm_m: upper_ohm_m * (1 + k), ...through };
}

function image(weight: number, sign: 1 | -1, shift_m: number): Image {
  return { weight, sign, shift_m };
}

/** How many reflections must be counted one by one: until they have died away, or are far beyond anything that matters. */
function reflections(k: number, span: number): number {
  if (k === 0) return 0;
  const dying = Math.ceil(Math.log(SMALL) / Math.log(Math.abs(k)));
  if (k < 0) return Math.min(dying, ALTERNATING);
  return Math.min(dying, Math.ceil(10 * span) + 300, MOST_REFLECTIONS);
}

/** Reflections and what each counts, from the 0th; `rest` is what they leave out of Σ Kⁿ/n. */
interface Orders {
  readonly list: readonly { readonly n: number; readonly weight: number }[];
  readonly rest: number;
}

/** The reflections as they are summed: near ones singly, far ones of one sign in groups of a sixteenth of their distance, and the
 *  last of an alternating series fading out, by the binomials (the mean of its last partial sums). */
function gathered(k: number, counted: number): Orders {
  const list: { n: number; weight: number }[] = [{ n: 0, weight: 1 }];
  if (k < 0) {
    const fade = counted < ALTERNATING ? [] : fading();
    for (let n = 1; n <= counted; n++) list.push({ n, weight: k ** n * (fade[n - (counted - FADING)] ?? 1) });
    return { list, rest: 0 };
  }
  let rest = -Math.log1p(-k);
  for (let n = 1; n <= counted;) {
    const last = Math.min(counted, n + Math.max(0, Math.floor(n / 16) - 1));
    let [weight, moment] = [0, 0];
    for (; n <= last; n++) {
      weight += k ** n;
      moment += k ** n / n;
      rest -= k ** n / n;
    }
    // The group stands where its mean of 1/n is, so that what is far away is exact.
    if (weight > 0) list.push({ n: weight / moment, weight });
  }
  return { list, rest };
}

function fading(): readonly number[] {
  const shares = Array.from({ length: FADING + 1 }, () => 0);
  let binomial = 2 ** -FADING;
  for (let j = 0; j <= FADING; j++) {
    for (let at = 0; at <= j; at++) shares[at] = (shares[at] ?? 0) + binomial;
    binomial *= (FADING - j) / (j + 1);
  }
  return shares;
}
