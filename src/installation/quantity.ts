import { z } from 'zod';

// Limits keep every branch inside the solver's range; they are far outside anything built.
const LARGEST_OHM = 1e10;

/** Name of a part, core or condition: it appears in words and pictures, so plain words only. */
export const nameSchema = z
  .string()
  .regex(/^(?=.*\p{L})[\p{L}\p{N}](?:[\p{L}\p{N} '’/-]{0,58}[\p{L}\p{N}])?$/u)
  .describe('plain words: letters (at least one), digits, blanks, hyphens; no dot');

/** `<part>.<terminal>`, `<part>` alone if it has one terminal, or `earth`. */
export const terminalSchema = z.string().min(1).max(200).describe('<part>.<terminal>, or earth');

/** Two terminals; their order does not matter. */
export const pairSchema = z.tuple([terminalSchema, terminalSchema]);

/** Two terminals. */
export type TerminalPair = Readonly<z.output<typeof pairSchema>>;

/** A measured resistance, Ω. */
export const resistance_ohm = z.number().min(0).max(LARGEST_OHM);

/** A measured reactance at the installation's frequency, Ω; below zero for a capacitor. */
export const reactance_ohm = z.number().min(-LARGEST_OHM).max(LARGEST_OHM);

/** A length, m. */
export const length_m = z.number().gt(0).max(1e6);

/** A temperature of a conductor, °C. */
export const temperature_C = z.number().min(-60).max(250);

/** A resistivity of soil or floor, Ω·m. */
export const soil_ohm_m = z.number().gt(0).max(1e6);
