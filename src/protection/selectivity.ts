import { coldOperation, type OvercurrentSettings } from './device.ts';

/** How two devices in series share a fault: `total`: only the downstream one opens whatever flows; `partial`: only up to this
 *  current; above it both or the wrong one may open. `none`: not even at the least current at which the downstream one acts. */
export type Selectivity =
  | { readonly kind: 'total'; readonly upTo_A: number }
  | { readonly kind: 'partial'; readonly upTo_A: number }
  | { readonly kind: 'none'; readonly upTo_A: 0 };

/** Of two gG fuses the larger is selective from this ratio on, whatever flows: 1.6 : 1, two steps of the preferred ratings, of
 *  which the least is 25 : 16. IEC 60269-1, seen second-hand. The gates alone would not show it: no fuse is at one edge
 *  of its band and at the other. */
const GG_RATIO = 25 / 16;

const STEPS = 400;
const HALVINGS = 40;

/** Selectivity of two devices that carry the same fault current, both cold: the slowest downstream must be open before the
 *  earliest upstream is past holding (a fuse: before it melts).
 *  @param most_A the largest fault current there is */
export function selectivity(
  upstream: OvercurrentSettings,
  downstream: OvercurrentSettings,
  most_A: number,
): Selectivity {
  if (upstream.family === 'gg' && downstream.family === 'gg' && upstream.rating_A >= GG_RATIO * downstream.rating_A)
    return { kind: 'total', upTo_A: most_A };
  const alone = (amperes: number): boolean => {
    const below = coldOperation(downstream, { amperes });
    const above = coldOperation(upstream, { amperes });
    // While neither must act nothing is lost yet; an upstream one that may act first is.
    return above.earliest_s === Infinity || below.latest_s < above.earliest_s;
  };
  const least_A = downstream.rating_A;
  let held_A = least_A;
  for (let step = 0; step <= STEPS; step++) {
    const amperes = least_A * (most_A / least_A) ** (step / STEPS);
    if (alone(amperes)) {
      held_A = amperes;
      continue;
    }
    if (step === 0) return { kind: 'none', upTo_A: 0 };
    let lost_A = amperes;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle_A = (held_A + lost_A) / 2;
      if (alone(middle_A)) held_A = middle_A;
      else lost_A = middle_A;
    }
    return coldOperation(downstream, { amperes: held_A }).earliest_s === Infinity
      ? { kind: 'none', upTo_A: 0 }
      : { kind: 'partial', upTo_A: held_A };
  }
  return { kind: 'total', upTo_A: most_A };
}
