import type { Published } from './published.ts';

/** A row that was printed with so many figures: half a unit of the last one is its tolerance. */
export function asPrinted(
  what: string,
  source: string,
  unit: string,
  digits: string,
  computed: () => number,
): Published {
  const places = digits.split('.')[1]?.length ?? 0;
  const printed = Number(digits);
  const tolerance = (0.5001 * 10 ** -places) / printed;
  return {
    what,
    source,
    unit,
    printed,
    within: tolerance,
    because: `half a unit of the last figure of ${digits}`,
    computed,
  };
}

/** A row whose tolerance has a reason of its own. */
export function within(
  what: string,
  source: string,
  unit: string,
  printed: number,
  tolerance: number,
  because: string,
  computed: () => number,
): Published {
  return { what, source, unit, printed, within: tolerance, because, computed };
}
