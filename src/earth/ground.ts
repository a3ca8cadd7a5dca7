/** Soil under one place: even all the way down, or an upper layer of `thickness_m` over another without end. */
export type Ground =
  | { readonly kind: 'even'; readonly soil_ohm_m: number }
  | {
      readonly kind: 'layered';
      readonly upper_ohm_m: number;
      readonly lower_ohm_m: number;
      readonly thickness_m: number;
    };

/** Resistivity at the surface, Ω·m. */
export function surfaceSoil_ohm_m(ground: Ground): number {
  return ground.kind === 'even' ? ground.soil_ohm_m : ground.upper_ohm_m;
}

/** The same ground in another season: what lies at the surface changes by a factor, a lower layer keeps its moisture. */
export function inSeason(ground: Ground, factor: number): Ground {
  if (ground.kind === 'even') return { kind: 'even', soil_ohm_m: ground.soil_ohm_m * factor };
  return { ...ground, upper_ohm_m: ground.upper_ohm_m * factor };
}

/** Checks that a ground can be solved.
 *  @throws RangeError naming the resistivity or thickness that is out of bounds */
export function checkGround(ground: Ground): void {
  if (ground.kind === 'even') return checkSoil(ground.soil_ohm_m);
  checkSoil(ground.upper_ohm_m);
  checkSoil(ground.lower_ohm_m);
  if (!(ground.thickness_m > 0 && ground.thickness_m < Infinity))
    throw new RangeError(`An upper layer ${ground.thickness_m} m thick: write a finite thickness above zero`);
}

/** @throws RangeError if a resistivity is not a finite number above zero */
export function checkSoil(soil_ohm_m: number): void {
  if (!(soil_ohm_m > 0 && soil_ohm_m < Infinity))
    throw new RangeError(`Soil of ${soil_ohm_m} Ω·m: write a finite resistivity above zero`);
}

/** Checks lengths, all in metres, that must be finite and above zero.
 *  @throws RangeError naming the electrode and the dimension */
export function checkSizes(electrode: string, sizes_m: Readonly<Record<string, number>>): void {
  for (const [size, metres] of Object.entries(sizes_m))
    if (!(metres > 0 && metres < Infinity))
      throw new RangeError(`A ${electrode} with a ${size} of ${metres} m: write a finite one above zero`);
}
