import { checkSizes, checkSoil } from './ground.ts';
import { checkRod, rodResistance_ohm, rodWires } from './rod.ts';
import { moved, type Segment } from './segment.ts';
import { solveSymmetric } from './symmetric.ts';

/** How several rods stand: in a line, or evenly round a circle or a square. */
export type Arrangement = 'line' | 'circle' | 'square';

/** Mutual resistance of two equal rods side by side in even soil, Ω: volts of one per ampere into the other.
 *  ρ/(2πL)·(asinh(2L/s) − √(1 + (s/2L)²) + s/2L), the closed form whose two series Dwight prints, for s < L and s > L. At s = L
 *  the series for s > L comes out 29 % above the closed form, so that a pair has 3 % more; the other one agrees.
 *  @see H. B. Dwight, AIEE Trans. 55 (1936) */
export function mutualResistance_ohm(length_m: number, spacing_m: number, soil_ohm_m: number): number {
  checkSizes('pair of rods', { length: length_m, spacing: spacing_m });
  checkSoil(soil_ohm_m);
  const apart = spacing_m / (2 * length_m);
  return (soil_ohm_m / (2 * Math.PI * length_m)) * (Math.asinh(1 / apart) - Math.sqrt(1 + apart * apart) + apart);
}

/** Resistance of several equal rods joined by metal, in even soil, Ω: their own and mutual resistances solved together.
 *  @param spacing_m from one rod to the next (along the side, or straight across the circle's arc)
 *  @throws RangeError if they are fewer than one, stand in one another, or do not go evenly round a square */
export function rodsResistance_ohm(
  count: number,
  spacing_m: number,
  arrangement: Arrangement,
  length_m: number,
  radius_m: number,
  soil_ohm_m: number,
): number {
  const own = rodResistance_ohm(length_m, radius_m, soil_ohm_m);
  const places = rodPlaces(count, spacing_m, arrangement);
  if (spacing_m <= 2 * radius_m) throw new RangeError(`Rods ${spacing_m} m apart stand in one another`);
  const n = places.length;
  const resistance = new Float64Array(n * n);
  places.forEach((one, i) =>
    places.forEach((other, j) => {
      const apart = Math.hypot(one.x - other.x, one.y - other.y);
      resistance[i * n + j] = i === j ? own : mutualResistance_ohm(length_m, apart, soil_ohm_m);
    }),
  );
  const amperes = new Float64Array(n).fill(1);
  solveSymmetric(resistance, n, [amperes]);
  return 1 / amperes.reduce((sum, each) => sum + each, 0);
}

/** Several rods as wires. */
export function rodsWires(
  count: number,
  spacing_m: number,
  arrangement: Arrangement,
  length_m: number,
  radius_m: number,
  pieces: number = Math.max(1, Math.min(12, Math.floor(200 / count))),
): readonly Segment[] {
  checkRod(length_m, radius_m);
  return rodPlaces(count, spacing_m, arrangement).flatMap((place) =>
    moved(rodWires(length_m, radius_m, { pieces }), place),
  );
}

/** Where several rods stand, m; the middle of them all is 0, 0. */
function rodPlaces(
  count: number,
  spacing_m: number,
  arrangement: Arrangement,
): readonly { readonly x: number; readonly y: number }[] {
  if (!(Number.isInteger(count) && count >= 1)) throw new RangeError(`${count} rods: write a whole number above zero`);
  if (arrangement === 'square' && count % 4 !== 0)
    throw new RangeError(`${count} rods round a square: write 4, 8, 12, …`);
  checkSizes('row of rods', { spacing: spacing_m });
  return Array.from({ length: count }, (_, at) => {
    if (count === 1) return { x: 0, y: 0 };
    if (arrangement === 'line') return { x: (at - (count - 1) / 2) * spacing_m, y: 0 };
    if (arrangement === 'circle') {
      const radius = spacing_m / (2 * Math.sin(Math.PI / count));
      const angle = (2 * Math.PI * at) / count;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    }
    return onSquare(at / count, (count * spacing_m) / 4);
  });
}

/** The place a share of the way round a square. */
function onSquare(share: number, side: number): { readonly x: number; readonly y: number } {
  const edge = Math.floor(4 * share);
  const on = (4 * share - edge - 0.5) * side;
  const out = side / 2;
  const corners = [
    { x: on, y: -out },
    { x: out, y: on },
    { x: -on, y: out },
  ];
  return corners[edge] ?? { x: -out, y: -on };
}
