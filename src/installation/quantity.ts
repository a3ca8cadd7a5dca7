import { z } from 'zod';
import { soils } from '../earth/index.ts';

/** Limits keep every branch inside the solver's range; they are far outside anything built. */
export const LARGEST_OHM = 1e10;

/** Name of a part, core or condition: it appears in words and pictures, so plain words only. */
export const nameSchema = z
  .string()
  .regex(/^(?=.*\p{L})[\p{L}\p{N}](?:[\p{L}\p{N} '’/-]{0,58}[\p{L}\p{N}])?$/u)
  .describe('plain words: letters (at least one), digits, blanks, hyphens; no dot');

/** `<part>.<terminal>`, `<part>` alone if it has one terminal, or `earth`. */
export const terminalSchema = z
  .string()
  .min(1)
  .max(200)
  .meta({ description: '<part>.<terminal>, or earth', examples: ['panel.neutral bar'] });

/** Two terminals; their order does not matter. */
export const pairSchema = z
  .tuple([terminalSchema, terminalSchema])
  .meta({ examples: [['panel.neutral bar', 'service rod']] });

/** Two terminals. */
export type TerminalPair = Readonly<z.output<typeof pairSchema>>;

/** A measured resistance, Ω. */
export const resistance_ohm = z
  .number()
  .min(0)
  .max(LARGEST_OHM)
  .meta({ examples: [0.35] });

/** A measured reactance at the installation's frequency, Ω; below zero for a capacitor. */
export const reactance_ohm = z.number().min(-LARGEST_OHM).max(LARGEST_OHM);

/** A capacitance of a metre of cable, nF/m. */
export const capacitance_nF_m = z
  .number()
  .gt(0)
  .max(1000)
  .meta({ examples: [0.15] });

/** A length, m. */
export const length_m = z
  .number()
  .gt(0)
  .max(1e6)
  .meta({ examples: [12] });

/** A temperature of a conductor, °C. */
export const temperature_C = z.number().min(-60).max(250);

/** A resistivity of soil or floor, Ω·m. */
export const soil_ohm_m = z
  .number()
  .gt(0)
  .max(1e6)
  .meta({ examples: [100] });

type SoilName = keyof typeof soils;

/** A soil or floor from the table of the earth room, instead of a measured resistivity. */
export const soilName = z.enum(Object.keys(soils) as [SoilName, ...SoilName[]]);

/** The resistivity written in one way or the other, Ω·m; undefined if in neither. */
export function resistivity_ohm_m(measured_ohm_m: number | undefined, named: SoilName | undefined): number | undefined {
  return measured_ohm_m ?? (named === undefined ? undefined : soils[named].typical_ohm_m);
}
