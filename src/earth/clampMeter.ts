import { readingOf, type Reading } from './reading.ts';

/** What the jaws of a clamp embrace: the conductor of one electrode. */
export interface ClampedLoop {
  /** The electrode to be known, Ω. */
  readonly electrode_ohm: number;
  /** All other ways from the metal to remote earth: other electrodes, the neutral of the network, Ω each. None: no loop. */
  readonly returns_ohm?: readonly number[];
  /** Metal of the loop itself, Ω. */
  readonly conductor_ohm?: number;
  /** A second bond from the electrode's head back to the same metal, that closes a loop without any soil, Ω. */
  readonly metal_ohm?: number;
}

/** Reading of an earth clamp, Ω: it induces a voltage in the loop it embraces and divides it by the current. That is the electrode
 *  in series with all others in parallel: nearly right where these are many, too high by what they are otherwise. With no other
 *  way to earth there is no loop and it reads without end; with a loop of metal it reads the metal, next to nothing. */
export function clampReading({
  electrode_ohm,
  returns_ohm = [],
  conductor_ohm = 0,
  metal_ohm = Infinity,
}: ClampedLoop): Reading {
  const others = 1 / returns_ohm.reduce((sum, ohm) => sum + 1 / ohm, 0);
  const soil = electrode_ohm + others;
  return readingOf(conductor_ohm + 1 / (1 / soil + 1 / metal_ohm), electrode_ohm);
}
