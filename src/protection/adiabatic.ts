/** What a conductor is made of, for its heating. */
export type Metal = 'Cu' | 'Al' | 'steel' | 'Pb';

/** Leading factor √(Qc·(β + 20) / ρ20), A·√s/mm², and β, °C; melting point, °C (handbooks, from memory).
 *  IEC 60364-5-54:2011 annex A, table A.54.1, seen second-hand. */
const METALS: Readonly<Record<Metal, { readonly factor: number; readonly beta_C: number; readonly melts_C: number }>> =
  {
    Cu: { factor: 226, beta_C: 234.5, melts_C: 1083 },
    Al: { factor: 148, beta_C: 228, melts_C: 660 },
    steel: { factor: 78, beta_C: 202, melts_C: 1500 },
    Pb: { factor: 41, beta_C: 230, melts_C: 327 },
  };

/** Longest time for which heating counts as without loss, s. IEC 60364-4-43 434.5.2, from memory. */
export const ADIABATIC_S = 5;

/** k of a conductor that heats without loss between two temperatures, A·√s/mm².
 *  @throws RangeError unless the end is above the start
 *  @see IEC 60364-5-54:2011 annex A: k = √(Qc(β+20)/ρ20 · ln((β+θf)/(β+θi))) */
export function adiabaticFactor(metal: Metal, from_C: number, to_C: number): number {
  if (!(to_C > from_C))
    throw new RangeError(`A conductor heats from ${from_C} °C to ${to_C} °C: write more than it starts at`);
  const { factor, beta_C } = METALS[metal];
  return factor * Math.sqrt(Math.log((beta_C + to_C) / (beta_C + from_C)));
}

/** k from this temperature to where the metal melts and the wire burns open, A·√s/mm²: the heat of melting itself is left
 *  out, so the wire is open no sooner than this says of a wire without any loss. */
export function meltingFactor(metal: Metal, from_C: number): number {
  return adiabaticFactor(metal, from_C, METALS[metal].melts_C);
}

/** ICEA P-32-382: I·√t of a conductor between two temperatures, A·√s/mm²; constants from memory.
 *  (I/A)²·t = 0.0297·log10((T2 + 234.5)/(T1 + 234.5)) for copper, 0.0125 and 228.1 for aluminium, A in circular mils. */
export function iceaFactor(metal: 'Cu' | 'Al', from_C: number, to_C: number): number {
  const { constant, beta_C } =
    metal === 'Cu' ? { constant: 0.0297, beta_C: 234.5 } : { constant: 0.0125, beta_C: 228.1 };
  return Math.sqrt(constant * Math.log10((to_C + beta_C) / (from_C + beta_C))) * CMIL_PER_MM2;
}

/** Circular mils in a square millimetre. */
const CMIL_PER_MM2 = 1973.525;

/** How long a conductor of this k (A·√s/mm²) and size carries this current until it is at its end temperature, s: k²S²/I².
 *  True up to about 5 s; after that it lasts longer, because it loses heat.
 *  @see IEC 60364-4-43 434.5.2 and IEC 60364-5-54 543.1.2, seen second-hand */
export function adiabaticLimit_s(
  conductor: { readonly k: number; readonly size_mm2: number },
  amperes: number,
): number {
  return ((conductor.k * conductor.size_mm2) / amperes) ** 2;
}
